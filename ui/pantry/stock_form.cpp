// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pantry/stock_form.h"

#include "desk/stock.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/number_field.h"
#include "ui/widgets/theme.h"
#include "ui/widgets/wrap_layout.h"

#include <QCheckBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace staveline::ui {
namespace {

QLabel* captionOf(const QString& words, QWidget* buddy, QWidget* parent) {
    auto* label = new QLabel(words, parent);
    label->setBuddy(buddy);
    return label;
}

} // namespace

QString stockWords(std::span<const desk::AtHand> stock, const std::string& item, Day today, const DisplayUnits& units) {
    const auto found =
        std::find_if(stock.begin(), stock.end(), [&](const desk::AtHand& each) { return each.counted.item == item; });
    if (found == stock.end())
        return {};
    const facts::AvailabilityFact& counted = found->counted;
    Message words = say("ui.stock.some").with("on", counted.on);
    if (!counted.available)
        words = counted.readyOn ? say("ui.stock.none.ready").with("ready", *counted.readyOn) : say("ui.stock.none");
    else if (found->left)
        words = say(*found->left == *counted.mass ? "ui.stock.counted" : "ui.stock.left")
                    .with("left", *found->left)
                    .with("on", found->countedOn);
    else if (counted.packs)
        words = say("ui.stock.packs").with("packs", Number{*counted.packs, 0}).with("on", found->countedOn);
    QString all = text(words, units);
    if (counted.bestBefore)
        all += QLatin1Char(' ') + text(say(*counted.bestBefore < today ? "ui.stock.past" : "ui.stock.best_before")
                                           .with("day", *counted.bestBefore),
                                       units);
    return all;
}

StockForm::StockForm(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), now_(new QLabel(this)),
      mass_(new NumberField(UnitKind::mass, {0, 100000}, false, this)),
      packs_(new NumberField(UnitKind::none, {0, 10000}, false, this)),
      massLabel_(captionOf(tr("Weighs"), mass_->edit(), this)),
      packsLabel_(captionOf(tr("Packs"), packs_->edit(), this)), dated_(new QCheckBox(tr("best before"), this)),
      bestBefore_(new DateField(session.desk().today(), this)), count_(new QPushButton(tr("&Counted today"), this)),
      message_(new MessageLabel(this)) {
    auto* title = new QLabel(tr("At hand"), this);
    setType(*title, Type::strong);
    now_->setWordWrap(true);
    mass_->setName(tr("Weighs"));
    packs_->setName(tr("Packs"));
    bestBefore_->setName(tr("Best before"));
    bestBefore_->setDay(addMonths(session.desk().today(), 12));
    bestBefore_->setVisible(false);
    message_->keepRoom(1.1);
    auto* fields = new QWidget(this);
    auto* row = new WrapLayout(fields, lines(*this, .6));
    for (QWidget* part :
         std::initializer_list<QWidget*>{massLabel_, mass_, packsLabel_, packs_, dated_, bestBefore_, count_})
        row->addWidget(part);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(title);
    column->addWidget(now_);
    column->addWidget(fields);
    column->addWidget(message_);
    connect(dated_, &QCheckBox::toggled, bestBefore_, &QWidget::setVisible);
    connect(count_, &QPushButton::clicked, this, &StockForm::count);
    connect(&session, &Session::changed, this, &StockForm::tellStock);
    connect(&session, &Session::unitsChanged, this, &StockForm::tellStock);
}

void StockForm::show(const std::string& item, bool yeast) {
    if (item != item_) {
        mass_->setStored({});
        packs_->setStored({});
        dated_->setChecked(false);
        message_->clear();
    }
    item_ = item;
    yeast_ = yeast;
    for (QWidget* part : std::initializer_list<QWidget*>{massLabel_, mass_})
        part->setVisible(!yeast);
    for (QWidget* part : std::initializer_list<QWidget*>{packsLabel_, packs_})
        part->setVisible(yeast);
    setEnabled(!item.empty() && !session_.desk().readOnly());
    tellStock();
}

void StockForm::tellStock() {
    mass_->setUnits(session_.units());
    const QString words = stockWords(session_.desk().stock(), item_, session_.desk().today(), session_.units());
    now_->setText(words.isEmpty() ? own("ui.stock.unknown") : words);
}

void StockForm::count() {
    NumberField& amount = yeast_ ? *packs_ : *mass_;
    if (!amount.stored()) {
        amount.edit()->setFocus(Qt::OtherFocusReason);
        return message_->say(MessageLabel::Weight::warning,
                             own(yeast_ ? "ui.stock.enter_packs" : "ui.stock.enter_mass"));
    }
    if (dated_->isChecked() && !bestBefore_->day())
        return bestBefore_->edit()->setFocus(Qt::OtherFocusReason);
    facts::AvailabilityFact counted;
    counted.on = session_.desk().today();
    counted.item = item_;
    if (yeast_)
        counted.packs = amount.stored();
    else
        counted.mass = Kilograms{*amount.stored()};
    if (dated_->isChecked())
        counted.bestBefore = bestBefore_->day();
    message_->clear();
    if (const auto done = session_.record(facts::Fact{counted}); !done)
        message_->say(MessageLabel::Weight::fault, session_.words(done.error()));
    else
        amount.setStored({});
}

QString StockForm::words() const {
    return now_->text() + QLatin1Char('\n') + message_->words();
}

} // namespace staveline::ui
