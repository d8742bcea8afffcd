// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/offered_line.h"

#include "ui/present/text.h"

#include <QAbstractItemView>
#include <QCompleter>
#include <QKeyEvent>
#include <QStringListModel>

#include <algorithm>

namespace staveline::ui {

OfferedLine::OfferedLine(std::vector<Offer> offers, QWidget* parent)
    : QLineEdit(parent), offers_(std::move(offers)), completer_(new QCompleter(this)) {
    QStringList shown;
    for (const Offer& offer : offers_)
        shown << offer.shown;
    completer_->setModel(new QStringListModel(shown, completer_));
    completer_->setCompletionMode(QCompleter::UnfilteredPopupCompletion);
    completer_->setWidget(this); // not as the line's own completer: Enter records, it does not pick
    if (!shown.isEmpty())
        setPlaceholderText(shown.front());
    setToolTip(shown.isEmpty() ? QString() : tr("Down offers: %1").arg(shown.join(QStringLiteral("; "))));
    connect(completer_, qOverload<const QString&>(&QCompleter::activated), this, [this](const QString& chosen) {
        setText(chosen);
        Q_EMIT taken();
    });
}

std::string OfferedLine::word() const {
    const QString typed = text().trimmed();
    const auto at =
        std::find_if(offers_.begin(), offers_.end(), [&](const Offer& offer) { return offer.shown == typed; });
    return at != offers_.end() ? at->word : toStd(typed);
}

void OfferedLine::setWord(const std::string& word) {
    const auto at =
        std::find_if(offers_.begin(), offers_.end(), [&](const Offer& offer) { return offer.word == word; });
    setText(at != offers_.end() ? at->shown : qs(word));
}

void OfferedLine::showOffers() {
    if (offers_.empty())
        return;
    completer_->complete();
    completer_->popup()->setCurrentIndex(completer_->completionModel()->index(0, 0));
}

void OfferedLine::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Down)
        showOffers();
    else
        QLineEdit::keyPressEvent(event);
}

void OfferedLine::mouseDoubleClickEvent(QMouseEvent* event) {
    if (text().isEmpty())
        showOffers();
    else
        QLineEdit::mouseDoubleClickEvent(event);
}

} // namespace staveline::ui
