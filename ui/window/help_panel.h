// SPDX-License-Identifier: GPL-3.0-or-later
// Help for the page in hand, beside it: what it is for, the keys of this page, then those that work everywhere; and a
// field that looks for words in the help of all pages and in the menus.
#pragma once

#include <QList>
#include <QWidget>

#include <functional>

class QAction;
class QLabel;
class QLineEdit;
class QTextBrowser;

namespace staveline::ui {

class HelpPanel : public QWidget {
    Q_OBJECT
public:
    /// `actions`: of the menus, which can be looked for as well.
    explicit HelpPanel(const QList<QAction*>& actions, QWidget* parent = nullptr);
    /// `page`: paragraphs "ui.help.<page>.1", ".2", ... and keys "ui.keys.<page>.1", ...
    void showPage(const QString& page);
    void showAbout(); ///< the program, its version, and under which licences it and its libraries stand
    void showNews(const QString& since = {}); ///< what came later than that version; empty: everything
    void find(const QString& words);          ///< empty: what stood there before
    [[nodiscard]] bool showsPage() const { return showsPage_; } ///< and nothing else, so that it follows the page
    [[nodiscard]] QString words() const;
    void focusText();

Q_SIGNALS:
    void closed();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void show(std::function<void()> content);
    void fill(QStringList paragraphs, const QString& below);
    void showFound(const QString& sought);
    QList<QAction*> actions_;
    std::function<void()> content_; ///< what stands there while nothing is looked for
    bool showsPage_ = false;
    QLineEdit* find_;
    QLabel* title_;
    QTextBrowser* text_;
};

} // namespace staveline::ui
