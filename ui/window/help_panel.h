// SPDX-License-Identifier: GPL-3.0-or-later
// Help for the page in hand, beside it: what it is for, the keys of this page, then those that work everywhere.
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
    /// `page`: paragraphs "ui.help.<page>.1", ".2", ... and keys "ui.keys.<page>.1", ...
    void showPage(const QString& page, const QList<QAction*>& actions);
    void showAbout(); ///< the program, its version, and under which licences it and its libraries stand
    [[nodiscard]] QString words() const;
    void focusText();

Q_SIGNALS:
    void closed();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void fill(QStringList paragraphs, const QString& below);
    QLabel* title_;
    QTextBrowser* text_;
};

/// Paragraphs of a page; the first is its title.
[[nodiscard]] QStringList helpFor(const QString& page);
/// Keys of a page that no menu shows, each "key: what it does".
[[nodiscard]] QStringList keysOf(const QString& page);

} // namespace staveline::ui
