// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/finish/lot_form.h"

#include "finishing/fruit.h"
#include "finishing/package.h"
#include "finishing/priming.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/theme.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

namespace staveline::ui {
namespace {

template <class List> void offer(std::vector<Offer>& into, const List& list) {
    for (const auto& one : list)
        into.push_back({qs(one.name), one.id});
}

QString titleOf(const facts::Fact& fact) {
    return own("ui.lot." + std::string(facts::traitsOf(fact).kind));
}

} // namespace

LotForm::LotForm(Session& session, QWidget* parent)
    : QFrame(parent), session_(session), title_(new QLabel(this)), form_(new FactForm(this)),
      message_(new MessageLabel(this)), record_(new QPushButton(this)),
      leave_(new QPushButton(tr("Cancel (Esc)"), this)) {
    setAccessibleName(tr("Entry"));
    message_->keepRoom(1.1);
    setType(*title_, Type::strong);
    record_->setDefault(true);
    record_->setAutoDefault(true);
    leave_->setFlat(true);
    leave_->setAutoDefault(true);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(record_);
    buttons->addWidget(leave_);
    buttons->addStretch(1);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, lines(*this, .4), 0, 0);
    column->setSpacing(lines(*this, .4));
    column->addWidget(title_);
    column->addWidget(form_);
    column->addWidget(message_);
    column->addLayout(buttons);
    connect(form_, &FactForm::edited, this, [this] {
        form_->recheck();
        message_->clear();
        tell();
    });
    connect(record_, &QPushButton::clicked, this, &LotForm::record);
    connect(leave_, &QPushButton::clicked, this, &LotForm::leave);
    connect(&session, &Session::unitsChanged, this, [this] { form_->setUnits(session_.units()); });
    connect(&session, &Session::storeAsked, this, [this] {
        if (active_ && form_->touched())
            record();
    });
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Maximum);
    setVisible(false);
}

void LotForm::knowLots(const std::vector<desk::LotView>& lots) {
    lots_ = lots;
}

FormContext LotForm::context(const facts::Fact& fact) const {
    FormContext made;
    made.today = session_.desk().today();
    made.units = session_.units();
    made.labels = facts::traitsOf(fact).kind;
    made.hidden = {"lot", "verdict", "until"};
    offer(made.offers["ingredient"], finishing::builtInFruits());
    offer(made.offers["ingredient"], finishing::builtInSugars());
    offer(made.offers["sugar"], finishing::builtInSugars());
    offer(made.offers["make"], finishing::builtInBottles());
    for (const desk::LotView& lot : lots_) {
        if (lot.name != lot_)
            made.offers["to"].push_back({qs(lot.name), lot.name});
        for (const desk::PackageView& package : lot.packages)
            if (lot.name == lot_ && package.left > 0)
                made.offers["packaging"].push_back({qs(package.name), package.name});
    }
    return made;
}

void LotForm::open(const facts::Fact& fact) {
    title_->setText(tr("%1, %2").arg(titleOf(fact), qs(lot_)));
    record_->setText(amended_ ? tr("&Amend") : tr("&Record"));
    form_->build(fact, context(fact));
    message_->clear();
    active_ = true;
    setVisible(true);
    focusFirst();
    tell();
}

void LotForm::begin(const facts::Fact& fact, const facts::LotName& lot) {
    amended_.reset();
    lot_ = lot;
    open(fact);
}

void LotForm::amend(const std::string& table, std::int64_t id, const facts::LotName& lot) {
    const auto fact = session_.desk().fact(table, id);
    if (!fact) {
        Q_EMIT session_.failed(fact.error());
        return;
    }
    amended_ = Amended{table, id};
    lot_ = lot;
    open(*fact);
}

void LotForm::focusFirst() {
    form_->focusFirst();
}

void LotForm::tell() {
    const bool begun = active_ && form_->touched();
    session_.setUnstored("lot", begun ? QStringList{title_->text()} : QStringList());
}

void LotForm::record() {
    if (!form_->usable()) {
        form_->complain();
        return;
    }
    const auto batch = session_.batch(); // the lots are read anew when the form is closed
    const facts::Fact fact = form_->fact();
    const auto done = amended_ ? session_.amend(amended_->table, amended_->id, fact) : session_.record(fact);
    if (done)
        leave();
    else if (!form_->showFault(done.error(), true))
        message_->say(MessageLabel::Weight::fault, session_.words(done.error()));
}

void LotForm::leave() {
    if (!active_)
        return;
    active_ = false;
    tell();
    amended_.reset();
    setVisible(false);
    Q_EMIT closed();
}

void LotForm::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        leave();
    else if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        record();
    else
        QFrame::keyPressEvent(event);
}

} // namespace staveline::ui
