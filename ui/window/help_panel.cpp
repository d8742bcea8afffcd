// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/help_panel.h"

#include "ui/present/text.h"
#include "ui/widgets/theme.h"
#include "ui/window/help_search.h"
#include "ui/window/news.h"
#include "ui/window/status_line.h"

#include <QAction>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QRegularExpression>
#include <QTextBrowser>
#include <QToolButton>
#include <QUrl>
#include <QVBoxLayout>

namespace staveline::ui {
namespace {

using Keys = QList<std::pair<QString, QString>>; ///< and what they do

QString keyTable(const QString& title, const Keys& keys) {
    if (keys.isEmpty())
        return {};
    QString rows;
    for (const auto& [key, words] : keys)
        rows += QStringLiteral("<tr><td style=\"padding-right:12px\"><b>%1</b></td><td>%2</td></tr>")
                    .arg(key.toHtmlEscaped(), words.toHtmlEscaped());
    return QStringLiteral("<p><b>%1</b></p><table>%2</table>").arg(title.toHtmlEscaped(), rows);
}

Keys keysEverywhere(const QList<QAction*>& actions) {
    Keys keys;
    for (const QAction* action : actions) {
        QStringList each;
        for (const QKeySequence& key : action->shortcuts())
            each << key.toString(QKeySequence::NativeText);
        if (!each.isEmpty())
            keys.append({each.join(QStringLiteral(", ")), shownWords(action->text())});
    }
    return keys;
}

Keys keysHere(const QString& page) {
    Keys keys;
    for (const QString& line : keysOf(page)) {
        const qsizetype colon = line.indexOf(QLatin1String(": "));
        keys.append({line.left(colon), line.mid(colon + 2)});
    }
    return keys;
}

/// What is looked for, in bold.
QString marked(const QString& words, const QString& sought) {
    QString html = words.toHtmlEscaped();
    for (const QString& word : sought.split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
        const QRegularExpression found(QRegularExpression::escape(word.toHtmlEscaped()) + QStringLiteral("(?![^<]*>)"),
                                       QRegularExpression::CaseInsensitiveOption);
        html.replace(found, QStringLiteral("<b>\\0</b>"));
    }
    return html;
}

QString foundInMenus(const QList<QAction*>& actions, const QString& sought) {
    QString rows;
    for (const QAction* action : actions)
        if (const QString words = shownWords(action->text()); tells(words, sought))
            rows +=
                QStringLiteral("<tr><td style=\"padding-right:12px\">%1</td><td>%2</td></tr>")
                    .arg(marked(words, sought), action->shortcut().toString(QKeySequence::NativeText).toHtmlEscaped());
    return rows.isEmpty() ? QString()
                          : QStringLiteral("<p><b>%1</b></p><table>%2</table>")
                                .arg(HelpPanel::tr("In the menus").toHtmlEscaped(), rows);
}

} // namespace

HelpPanel::HelpPanel(const QList<QAction*>& actions, QWidget* parent)
    : QWidget(parent), actions_(actions), find_(new QLineEdit(this)), title_(new QLabel(this)),
      text_(new QTextBrowser(this)) {
    setAccessibleName(tr("Help"));
    setType(*title_, Type::strong);
    title_->setWordWrap(true);
    text_->setAccessibleName(tr("Help text"));
    text_->setFrameShape(QFrame::NoFrame);
    text_->setOpenLinks(false);
    auto* close = new QToolButton(this);
    close->setText(tr("Close"));
    close->setAccessibleName(tr("Close help"));
    close->setAutoRaise(true);
    close->setFocusPolicy(Qt::StrongFocus);
    auto* head = new QHBoxLayout;
    head->addWidget(title_, 1);
    head->addWidget(close, 0, Qt::AlignTop);
    find_->setPlaceholderText(tr("Find in all help"));
    find_->setAccessibleName(tr("Find in all help"));
    find_->setClearButtonEnabled(true);
    auto* column = new QVBoxLayout(this);
    column->addLayout(head);
    column->addWidget(find_);
    column->addWidget(text_, 1);
    connect(close, &QToolButton::clicked, this, &HelpPanel::closed);
    connect(find_, &QLineEdit::textChanged, this, &HelpPanel::find);
    connect(text_, &QTextBrowser::anchorClicked, this, [this](const QUrl& page) { showPage(page.toString()); });
    setMinimumWidth(lines(*this, 17));
}

void HelpPanel::fill(QStringList paragraphs, const QString& below) {
    title_->setText(paragraphs.isEmpty() ? tr("Help") : paragraphs.takeFirst());
    QString html;
    for (const QString& paragraph : std::as_const(paragraphs))
        html += QStringLiteral("<p>%1</p>").arg(paragraph.toHtmlEscaped());
    text_->setHtml(html + below);
}

/// It stays until something else is shown; what is looked for is forgotten.
void HelpPanel::show(std::function<void()> content) {
    content_ = std::move(content);
    showsPage_ = false;
    const QSignalBlocker quiet(find_);
    find_->clear();
    content_();
}

void HelpPanel::showPage(const QString& page) {
    show([this, page] {
        fill(helpFor(page), keyTable(tr("Keys on this page"), keysHere(page)) +
                                keyTable(tr("Keys everywhere"), keysEverywhere(actions_)));
    });
    showsPage_ = true;
}

void HelpPanel::showAbout() {
    show([this] {
        QStringList paragraphs = helpFor(QStringLiteral("about"));
        paragraphs.insert(1, text(say("ui.about.version").with("version", toStd(programVersion()))));
        fill(paragraphs, {});
    });
}

void HelpPanel::showNews(const QString& since) {
    show([this, since] {
        title_->setText(since.isEmpty() ? tr("What is new") : text(say("ui.news.since").with("version", toStd(since))));
        text_->setMarkdown(newsSince(since, changesFile()));
    });
}

void HelpPanel::find(const QString& words) {
    if (words.trimmed().isEmpty() && content_)
        content_();
    else if (!words.trimmed().isEmpty())
        showFound(words);
}

/// Each page that tells of it once, with what it says; its title leads to it.
void HelpPanel::showFound(const QString& sought) {
    title_->setText(tr("Found in all help"));
    QString html, last;
    for (const HelpHit& hit : findInHelp(sought)) {
        if (hit.page != last)
            html += QStringLiteral("<p><a href=\"%1\">%2</a></p>")
                        .arg(hit.page, marked(helpFor(hit.page).value(0), sought));
        last = hit.page;
        html += QStringLiteral("<p>%1</p>").arg(marked(hit.words, sought));
    }
    html += foundInMenus(actions_, sought);
    text_->setHtml(html.isEmpty() ? own("ui.help_found_none").toHtmlEscaped() : html);
}

QString HelpPanel::words() const {
    return title_->text() + QLatin1Char('\n') + text_->toPlainText();
}

void HelpPanel::focusText() {
    text_->setFocus(Qt::OtherFocusReason);
}

void HelpPanel::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        Q_EMIT closed();
    else
        QWidget::keyPressEvent(event);
}

} // namespace staveline::ui
