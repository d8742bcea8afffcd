// SPDX-License-Identifier: GPL-3.0-or-later
// A line to type a name into, which offers some: the first one as a hint, all of them with the key Down.
#pragma once

#include <QLineEdit>

#include <string>
#include <vector>

class QCompleter;

namespace staveline::ui {

/// A choice in words, and the word it stands for.
struct Offer {
    QString shown;
    std::string word;
};

class OfferedLine : public QLineEdit {
    Q_OBJECT
public:
    explicit OfferedLine(std::vector<Offer> offers, QWidget* parent = nullptr);
    /// What is offered under the words typed, else the words themselves.
    [[nodiscard]] std::string word() const;
    void setWord(const std::string& word);
    void showOffers();

Q_SIGNALS:
    void taken(); ///< one of them

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override; ///< on an empty line, as Down does

private:
    std::vector<Offer> offers_;
    QCompleter* completer_;
};

} // namespace staveline::ui
