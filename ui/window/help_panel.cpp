// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/help_panel.h"

#include "ui/present/text.h"
#include "ui/widgets/theme.h"
#include "ui/window/status_line.h"

#include <QAction>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QTextBrowser>
#include <QToolButton>
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

QStringList numbered(const std::string& start) {
    QStringList found;
    for (int i = 1; builtInTexts().has(start + std::to_string(i)); ++i)
        found << own(start + std::to_string(i));
    return found;
}

} // namespace

QStringList helpFor(const QString& page) {
    return numbered("ui.help." + toStd(page) + ".");
}

QStringList keysOf(const QString& page) {
    return numbered("ui.keys." + toStd(page) + ".");
}

HelpPanel::HelpPanel(QWidget* parent) : QWidget(parent), title_(new QLabel(this)), text_(new QTextBrowser(this)) {
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
    auto* column = new QVBoxLayout(this);
    column->addLayout(head);
    column->addWidget(text_, 1);
    connect(close, &QToolButton::clicked, this, &HelpPanel::closed);
    setMinimumWidth(lines(*this, 17));
}

void HelpPanel::fill(QStringList paragraphs, const QString& below) {
    title_->setText(paragraphs.isEmpty() ? tr("Help") : paragraphs.takeFirst());
    QString html;
    for (const QString& paragraph : std::as_const(paragraphs))
        html += QStringLiteral("<p>%1</p>").arg(paragraph.toHtmlEscaped());
    text_->setHtml(html + below);
}

void HelpPanel::showPage(const QString& page, const QList<QAction*>& actions) {
    fill(helpFor(page),
         keyTable(tr("Keys on this page"), keysHere(page)) + keyTable(tr("Keys everywhere"), keysEverywhere(actions)));
}

void HelpPanel::showAbout() {
    QStringList paragraphs = helpFor(QStringLiteral("about"));
    paragraphs.insert(1, text(say("ui.about.version").with("version", std::string(STAVELINE_VERSION))));
    fill(paragraphs, {});
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
