// SPDX-License-Identifier: GPL-3.0-or-later
// Help for the page in hand, beside it: what it is for, then every key that works here.
#pragma once

#include <QWidget>

class QAction;
class QLabel;
class QTextBrowser;

namespace staveline::ui {

class HelpPanel : public QWidget {
    Q_OBJECT
public:
    explicit HelpPanel(QWidget* parent = nullptr);
    /// `page`: paragraphs "ui.help.<page>.1", ".2", ...
    void showPage(const QString& page, const QList<QAction*>& actions);
    [[nodiscard]] QString words() const;
    void focusText();

Q_SIGNALS:
    void closed();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    QLabel* title_;
    QTextBrowser* text_;
};

/// Paragraphs of a page; the first is its title.
[[nodiscard]] QStringList helpFor(const QString& page);

} // namespace staveline::ui
