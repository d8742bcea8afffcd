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

QString keyTable(const QList<QAction*>& actions) {
    QString rows;
    for (const QAction* action : actions) {
        if (action->shortcut().isEmpty())
            continue;
        const QString words = shownWords(action->text());
        rows += QStringLiteral("<tr><td style=\"padding-right:12px\"><b>%1</b></td><td>%2</td></tr>")
                    .arg(action->shortcut().toString(QKeySequence::NativeText).toHtmlEscaped(), words.toHtmlEscaped());
    }
    return rows.isEmpty() ? QString() : QStringLiteral("<table>%1</table>").arg(rows);
}

} // namespace

QStringList helpFor(const QString& page) {
    QStringList paragraphs;
    for (int i = 1;; ++i) {
        const std::string key = "ui.help." + toStd(page) + "." + std::to_string(i);
        if (!builtInTexts().has(key))
            return paragraphs;
        paragraphs << own(key);
    }
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

void HelpPanel::showPage(const QString& page, const QList<QAction*>& actions) {
    QStringList paragraphs = helpFor(page);
    title_->setText(paragraphs.isEmpty() ? tr("Help") : paragraphs.takeFirst());
    QString html;
    for (const QString& paragraph : std::as_const(paragraphs))
        html += QStringLiteral("<p>%1</p>").arg(paragraph.toHtmlEscaped());
    html += QStringLiteral("<p><b>%1</b></p>").arg(tr("Keys")) + keyTable(actions);
    text_->setHtml(html);
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
