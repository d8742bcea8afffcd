// SPDX-License-Identifier: GPL-3.0-or-later
// A choice among words. The wheel changes nothing while scrolling past.
#pragma once

#include <QComboBox>

namespace staveline::ui {

class ChoiceField : public QComboBox {
    Q_OBJECT
public:
    explicit ChoiceField(QWidget* parent = nullptr);
    /// Adds what is shown and the word it stands for.
    void add(const QString& shown, const std::string& word);
    [[nodiscard]] std::string word() const;
    /// A word that is not offered yet is added, so that nothing recorded is lost.
    void setWord(const std::string& word);

protected:
    void wheelEvent(QWheelEvent* event) override;
};

} // namespace staveline::ui
