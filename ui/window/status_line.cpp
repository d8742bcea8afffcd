// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/status_line.h"

#include "ui/present/session.h"
#include "ui/widgets/theme.h"

#include <QAction>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>

namespace staveline::ui {
namespace {

constexpr int longestUndo = 22; // lines of text wide

} // namespace

QString withoutKeys(QString words) {
    return words.replace(QLatin1Char('&'), QLatin1String("&&"));
}

QString shownWords(QString words) {
    const QLatin1Char ampersand('&');
    for (qsizetype at = words.indexOf(ampersand); at >= 0; at = words.indexOf(ampersand, at + 1))
        words.remove(at, 1); // of two, the second stays and is passed over
    return words;
}

QString shortened(const QString& text, const QFont& font, int width) {
    return QFontMetrics(font).elidedText(text, Qt::ElideRight, width);
}

StatusLine::StatusLine(QAction& undo, QAction& redo, QAction& help, QWidget* parent)
    : QWidget(parent), stored_(new QLabel(this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(lines(*this, .6), 0, lines(*this, .6), lines(*this, .2));
    row->setSpacing(lines(*this, .5));
    stored_->setTextFormat(Qt::PlainText);
    stored_->setWordWrap(true);
    row->addWidget(stored_, 1);
    row->addWidget(buttonFor(undo));
    row->addWidget(buttonFor(redo));
    row->addWidget(buttonFor(help, tr("F1 help")));
    setAccessibleName(tr("Status"));
}

QPushButton* StatusLine::buttonFor(QAction& action, const QString& fixedWords) {
    auto* button = new QPushButton(this);
    button->setFlat(true);
    const auto mirror = [this, button, fixedWords, &action] {
        QString words = fixedWords.isEmpty() ? action.text() : fixedWords;
        words = shownWords(words);
        button->setText(withoutKeys(shortened(words, button->font(), lines(*this, longestUndo))));
        button->setAccessibleName(words);
        button->setToolTip(words + QStringLiteral(" (") + action.shortcut().toString(QKeySequence::NativeText) +
                           QLatin1Char(')'));
        button->setEnabled(action.isEnabled());
        button->setVisible(action.isEnabled());
    };
    mirror();
    connect(&action, &QAction::changed, button, mirror);
    connect(button, &QPushButton::clicked, &action, &QAction::trigger);
    return button;
}

void StatusLine::follow(Session* session) {
    session_ = session;
    said_.clear();
    if (session) {
        connect(session, &Session::changed, this, &StatusLine::refresh);
        connect(session, &Session::said, this, &StatusLine::say);
        connect(session, &Session::unstoredChanged, this, &StatusLine::refresh);
    }
    refresh();
}

void StatusLine::say(const QString& words) {
    said_ = words;
    refresh();
}

void StatusLine::refresh() {
    QStringList parts;
    if (session_ && session_->desk().readOnly())
        parts << tr("this book is open for reading only");
    if (session_ && !session_->unstored().isEmpty())
        parts << tr("not stored yet: %1").arg(session_->unstored().join(QStringLiteral(", ")));
    else if (session_ && !session_->desk().readOnly())
        parts << tr("all changes stored %1").arg(session_->storedAt().toString(QStringLiteral("HH:mm")));
    if (!said_.isEmpty())
        parts << said_;
    stored_->setText(parts.join(QStringLiteral("  \u00b7  ")));
}

QString StatusLine::words() const {
    return stored_->text();
}

} // namespace staveline::ui
