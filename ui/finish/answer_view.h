// SPDX-License-Identifier: GPL-3.0-or-later
// The answer to what is being typed: what matters first in a sentence, then part after part, each with the cautions
// that belong there.
#pragma once

#include "ui/widgets/message_label.h"

#include <optional>
#include <vector>

class QVBoxLayout;

namespace staveline::ui {

struct AnswerLine {
    std::optional<MessageLabel::Weight> weight; ///< none: plain words
    QString words;
};
struct AnswerPart {
    QString heading;
    QString number; ///< what to read from afar; may be empty
    std::vector<AnswerLine> lines;
};
struct FinishAnswer {
    AnswerLine first;
    std::vector<AnswerPart> parts;
};

class AnswerView : public QWidget {
    Q_OBJECT
public:
    explicit AnswerView(QWidget* parent = nullptr);
    void show(const FinishAnswer& answer);
    /// There is no answer, and why.
    void wait(MessageLabel::Weight weight, const QString& words);
    [[nodiscard]] QStringList words() const;

private:
    void add(QVBoxLayout& column, const AnswerPart& part);
    void addLine(QVBoxLayout& column, const AnswerLine& line);

    MessageLabel* first_;
    QVBoxLayout* column_;
    QWidget* page_ = nullptr;
};

} // namespace staveline::ui
