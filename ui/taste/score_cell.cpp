// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/taste/score_cell.h"

#include "quantity/parse.h"
#include "ui/present/text.h"
#include "ui/widgets/theme.h"

#include <QCoreApplication>
#include <QKeyEvent>
#include <QTimer>

#include <algorithm>
#include <chrono>
#include <cmath>

namespace staveline::ui {

using tasting::anchorScores;

namespace {

constexpr Range scoreRange{0, 10};
constexpr double halfStep = .5;
constexpr double middle = 5; ///< where stepping starts
constexpr std::chrono::milliseconds pauseAfterKey{600};

Result<double> parsed(const QString& typed) {
    const std::string text = toStd(typed);
    auto number = parseNumber(text, scoreRange);
    if (!number)
        number.error().remedy = say("ui.taste.score_range");
    else if (std::abs(*number / halfStep - std::round(*number / halfStep)) > 1e-9)
        return badInput({}, say("desk.half_steps").with("value", shortest(*number)), say("ui.taste.score_range"));
    return number;
}

} // namespace

QString scoreText(std::optional<double> score) {
    return score ? numberWords(*score, 1) : QString();
}
QString anchorText(const tasting::Attribute& attribute, double score) {
    const auto above = std::lower_bound(anchorScores.begin(), anchorScores.end(), score);
    if (above == anchorScores.end() || *above == score)
        return qs(anchorFor(attribute, score));
    const auto next = static_cast<std::size_t>(above - anchorScores.begin());
    return text(
        say("ui.taste.between").with("less", attribute.anchors[next - 1]).with("more", attribute.anchors[next]));
}
QString glassWord(Glass glass) {
    return glass == Glass::cold ? QCoreApplication::translate("Glass", "cold")
                                : QCoreApplication::translate("Glass", "cellar");
}

ScoreCell::ScoreCell(const tasting::Attribute& attribute, Glass glass, QWidget* parent)
    : QLineEdit(parent), attribute_(attribute), glass_(glass), pause_(new QTimer(this)), message_(*this) {
    setAlignment(Qt::AlignRight);
    setFixedWidth(sizeHint().width());
    setAccessibleName(attribute.bothTemperatures ? tr("%1, %2").arg(qs(attribute.name), glassWord(glass))
                                                 : qs(attribute.name));
    setObjectName(qs(attribute.code) + QLatin1Char(' ') + glassWord(glass));
    pause_->setSingleShot(true);
    pause_->setInterval(pauseAfterKey);
    connect(pause_, &QTimer::timeout, this, &ScoreCell::finish);
    connect(this, &QLineEdit::textEdited, this, [this] {
        read();
        pending_ = true;
        pause_->start();
        Q_EMIT typed();
    });
    describe();
}

QSize ScoreCell::sizeHint() const {
    return {fontMetrics().horizontalAdvance(QStringLiteral("00.00")) + lines(*this, .9),
            QLineEdit::sizeHint().height()};
}

void ScoreCell::showScore(std::optional<double> score) {
    shown_ = score;
    if (fault_ || (hasFocus() && score == score_))
        return;
    resetScore(score);
}

void ScoreCell::resetScore(std::optional<double> score) {
    pause_->stop();
    pending_ = false;
    fault_.reset();
    shown_ = score_ = score;
    if (text() != scoreText(score))
        setText(scoreText(score));
    describe();
}

void ScoreCell::read() {
    fault_.reset();
    score_.reset();
    if (const QString typed = text().trimmed(); !typed.isEmpty()) {
        if (const auto value = parsed(typed))
            score_ = *value;
        else
            fault_ = value.error();
    }
    describe();
}

void ScoreCell::describe() {
    if (fault_)
        message_.say(ui::text(*fault_));
    else
        message_.clear();
    if (fault_)
        setAccessibleDescription(ui::text(*fault_));
    else if (score_)
        setAccessibleDescription(anchorText(attribute_, *score_));
    else
        setAccessibleDescription(
            tr("not scored; 0 %1, 10 %2").arg(qs(attribute_.anchors.front()), qs(attribute_.anchors.back())));
}

void ScoreCell::finish() {
    pause_->stop();
    if (!pending_ || fault_)
        return;
    pending_ = false;
    Q_EMIT finished();
}

void ScoreCell::step(double by, bool repeated) {
    const double from = score_.value_or(shown_.value_or(middle - by));
    setText(scoreText(std::clamp(from + by, scoreRange.low, scoreRange.high)));
    read();
    selectAll();
    pending_ = true;
    Q_EMIT typed();
    if (repeated)
        pause_->start(); // a held key is one edit
    else
        finish();
}

void ScoreCell::clearScore() {
    if (text().isEmpty())
        return;
    clear();
    read();
    pending_ = true;
    Q_EMIT typed();
    finish();
}

/// Undo belongs to the book: typing ends here first, and a slip is taken back in place.
bool ScoreCell::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo)) {
            finish();
            event->setAccepted(fault_.has_value());
            return true;
        }
    }
    return QLineEdit::event(event);
}

bool ScoreCell::moves(const QKeyEvent& event) {
    switch (event.key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        finish();
        Q_EMIT moved(event.modifiers() & Qt::ShiftModifier ? -1 : 1);
        return true;
    case Qt::Key_Left:
    case Qt::Key_Right:
        if (event.modifiers() != Qt::NoModifier && event.modifiers() != Qt::KeypadModifier)
            return false;
        finish();
        Q_EMIT crossed(event.key() == Qt::Key_Right);
        return true;
    default:
        return false;
    }
}

void ScoreCell::keyPressEvent(QKeyEvent* event) {
    if (event->matches(QKeySequence::Undo) || event->matches(QKeySequence::Redo)) {
        event->setAccepted(fault_.has_value());
        if (fault_) {
            resetScore(shown_);
            Q_EMIT typed();
        }
        return;
    }
    if (moves(*event))
        return;
    if (isReadOnly()) {
        QLineEdit::keyPressEvent(event);
        return;
    }
    if (event->key() == Qt::Key_Up || event->key() == Qt::Key_Down)
        step(event->key() == Qt::Key_Up ? halfStep : -halfStep, event->isAutoRepeat());
    else if (event->key() == Qt::Key_Delete && event->modifiers() == Qt::NoModifier)
        clearScore();
    else if (event->text() == QLatin1String("="))
        Q_EMIT sameAgain();
    else
        QLineEdit::keyPressEvent(event);
}

/// What is there is selected, so that the next number replaces it, also after a click.
void ScoreCell::focusInEvent(QFocusEvent* event) {
    QLineEdit::focusInEvent(event);
    const bool back = event->reason() == Qt::PopupFocusReason || event->reason() == Qt::ActiveWindowFocusReason;
    if (!back && (!pending_ || fault_)) {
        if (event->reason() == Qt::MouseFocusReason)
            QTimer::singleShot(0, this, &QLineEdit::selectAll);
        else
            selectAll();
    }
    Q_EMIT entered();
}

void ScoreCell::focusOutEvent(QFocusEvent* event) {
    QLineEdit::focusOutEvent(event);
    finish();
    if (!fault_ && text() != scoreText(score_))
        setText(scoreText(score_)); // "6" is read back as "6.0"
}

} // namespace staveline::ui
