// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cellar/round_page.h"

#include "desk/brew.h"
#include "ui/draw_refill/brew_offers.h"
#include "ui/present/fact_fields.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/held_column.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/number_field.h"
#include "ui/widgets/theme.h"

#include <QCheckBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QTimer>

#include <algorithm>
#include <span>
#include <utility>

namespace staveline::ui {

using facts::RoundFact;
using sheet::PaperFormat;

namespace {

constexpr int nameColumn = 0, firstColumn = 1;
constexpr int atOnce = 12; ///< rows

/// Empty: not looked at.
ChoiceField* oneOf(std::span<const std::string_view> of, QWidget* parent) {
    auto* choice = new ChoiceField(parent);
    choice->add({}, {});
    for (const std::string_view word : of)
        choice->add(own("ui.word." + std::string(word)), std::string(word));
    choice->setMinimumWidth(lines(*parent, 5));
    return choice;
}

template <class Enum> std::optional<Enum> seen(const ChoiceField& choice, std::span<const std::string_view> of) {
    const auto at = std::find(of.begin(), of.end(), choice.word());
    return at == of.end() ? std::nullopt : std::optional(static_cast<Enum>(at - of.begin()));
}

QStringList headings() {
    return {RoundPage::tr("Level"),  RoundPage::tr("Bung"), RoundPage::tr("Weep"),   RoundPage::tr("Pellicle"),
            RoundPage::tr("Smell"),  RoundPage::tr("Room"), RoundPage::tr("Topped"), RoundPage::tr("With"),
            RoundPage::tr("Purged"), RoundPage::tr("Note")};
}

bool filled(const RoundRow& row) {
    const auto typed = [](const NumberField* field) { return !field->edit()->text().trimmed().isEmpty(); };
    const auto chosen = [](const ChoiceField* choice) { return !choice->word().empty(); };
    return typed(row.level) || typed(row.room) || typed(row.topped) || chosen(row.bung) || chosen(row.weep) ||
           chosen(row.pellicle) || chosen(row.smell) || row.purged->isChecked() ||
           !row.note->text().trimmed().isEmpty();
}

} // namespace

RoundPage::RoundPage(Session& session, Prompt& prompt, QWidget* parent)
    : AsidePage(parent), session_(session),
      printout_(session, prompt, tr("walk sheet"), {PaperFormat::pdf, PaperFormat::html},
                [this] {
                    return std::optional(Printout::Made{session_.desk().walkSheet(session_.units()),
                                                        tr("round %1").arg(qs(isoDay(session_.desk().today())))});
                }),
      on_(new DateField(session.desk().today(), this)), next_(new DateField(session.desk().today(), this)),
      table_(new QWidget(this)), grid_(new QGridLayout(table_)), message_(new MessageLabel(this)),
      finish_(new QPushButton(tr("&Keep the round"), this)) {
    auto* title = new QLabel(tr("The round"), this);
    setType(*title, Type::title);
    auto* intro = new QLabel(own("ui.round.words"), this);
    intro->setWordWrap(true);
    on_->setName(tr("Day of the round"));
    on_->setRequired(true);
    next_->setName(tr("Next look"));
    grid_->setContentsMargins(0, 0, 0, 0);
    grid_->setHorizontalSpacing(lines(*this, .5));
    auto* scroll = new QScrollArea(this);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setWidgetResizable(true);
    scroll->setWidget(table_);
    new HeldColumn(*scroll, *grid_); // whose row it is
    auto* leave = new QPushButton(tr("Later (Esc)"), this);
    leave->setToolTip(tr("What is entered stays here until it is kept or thrown away."));
    auto* throwAway = new QPushButton(tr("Throw it away"), this);
    for (QPushButton* quiet : {leave, throwAway})
        quiet->setFlat(true);
    auto* look = new QHBoxLayout;
    for (const auto& [words, field] : {std::pair(tr("Day of the round"), on_), std::pair(tr("Next look"), next_)}) {
        look->addWidget(new QLabel(words, this));
        look->addWidget(field);
    }
    look->addStretch(1);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(finish_);
    buttons->addWidget(leave);
    buttons->addWidget(throwAway);
    buttons->addStretch(1);
    message_->keepRoom(1.1);
    auto* column = new QVBoxLayout(this);
    column->setSpacing(lines(*this, .6));
    column->addWidget(title);
    column->addWidget(intro);
    column->addWidget(scroll, 1);
    column->addLayout(look);
    column->addWidget(message_);
    column->addLayout(buttons);
    connect(finish_, &QPushButton::clicked, this, &RoundPage::finish);
    connect(leave, &QPushButton::clicked, this, &RoundPage::left);
    connect(throwAway, &QPushButton::clicked, this, [this] {
        active_ = false;
        tell();
        Q_EMIT left();
    });
    connect(&session, &Session::storeAsked, this, [this] {
        if (started())
            finish();
    });
    connect(&session, &Session::unitsChanged, this, [this] {
        for (const RoundRow& row : rows_)
            for (NumberField* field : {row.level, row.room, row.topped})
                field->setUnits(session_.units());
    });
}

bool RoundPage::started() const {
    return active_ && std::any_of(rows_.begin(), rows_.end(), filled);
}

void RoundPage::tell() {
    message_->clear();
    session_.setUnstored("round", started() ? QStringList{tr("the round")} : QStringList());
}

void RoundPage::begin() {
    if (started())
        return;
    const auto all = session_.desk().cellar();
    if (!all) {
        Q_EMIT session_.failed(all.error());
        return;
    }
    build(*all);
    for (DateField* field : {on_, next_})
        field->setToday(session_.desk().today());
    on_->setDay(session_.desk().today());
    next_->setDay(addMonths(session_.desk().today(), 1));
    active_ = true;
    tell();
}

void RoundPage::build(const std::vector<desk::VesselSummary>& vessels) {
    for (const RoundRow& row : rows_)
        for (QWidget* cell : row.cells)
            delete cell;
    rows_.clear();
    if (!grid_->itemAtPosition(0, firstColumn))
        for (int i = 0; i < headings().size(); ++i) {
            auto* heading = new QLabel(headings()[i], table_);
            setType(*heading, Type::strong);
            grid_->addWidget(heading, 0, firstColumn + i);
        }
    grid_->setColumnStretch(firstColumn + static_cast<int>(headings().size()) - 1, 1);
    waiting_.clear();
    for (const desk::VesselSummary& vessel : vessels)
        if (!vessel.retired)
            waiting_.push_back(vessel);
    addSome(atOnce);
}

/// What is first seen comes at once, the rest while nothing else is to do.
void RoundPage::addSome(int rows) {
    for (; rows > 0 && !waiting_.empty(); --rows) {
        addRow(waiting_.front(), static_cast<int>(rows_.size()) + 1);
        waiting_.pop_front();
    }
    if (waiting_.empty())
        grid_->setRowStretch(static_cast<int>(rows_.size()) + 1, 1);
    else
        QTimer::singleShot(0, this, [this] { addSome(1); });
}

void RoundPage::addRow(const desk::VesselSummary& vessel, int at) {
    using namespace facts::factWords;
    RoundRow row;
    row.vessel = vessel.name;
    row.level = new NumberField(UnitKind::volume, {0, vessel.facts.capacity.l}, false, table_);
    row.bung = oneOf(bungs, table_);
    row.weep = oneOf(weeps, table_);
    row.pellicle = oneOf(pellicles, table_);
    row.smell = oneOf(smells, table_);
    row.room = new NumberField(UnitKind::temperature, {-20, 45}, false, table_);
    row.topped = new NumberField(UnitKind::volume, {.001, vessel.facts.capacity.l}, false, table_);
    row.with = oneOf({}, table_);
    row.with->setItemText(0, own("ui.choice.usual_recipe"));
    if (const auto stock = session_.desk().brewsToPour(vessel.name))
        for (const Offer& brew : brewOffers(*stock, session_))
            row.with->add(brew.shown, brew.word);
    row.purged = new QCheckBox(table_);
    row.note = new QLineEdit(table_);
    row.with->setMaximumWidth(lines(*this, 10)); // its words end in dots there; the note needs the room
    row.note->setMinimumWidth(lines(*this, 9));
    auto* name = new QLabel(tr("%1, %2").arg(qs(vessel.name), session_.amount(vessel.now.volume)), table_);
    row.cells = {name,     row.level,  row.bung, row.weep,   row.pellicle, row.smell,
                 row.room, row.topped, row.with, row.purged, row.note};
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
        grid_->addWidget(row.cells[i], at, nameColumn + static_cast<int>(i));
        if (i == 0)
            continue;
        const QString called = tr("%1, %2").arg(qs(vessel.name), headings()[static_cast<qsizetype>(i) - 1]);
        row.cells[i]->setAccessibleName(called);
        if (auto* number = qobject_cast<NumberField*>(row.cells[i])) {
            number->setName(called);
            number->setUnits(session_.units());
            connect(number, &NumberField::edited, this, &RoundPage::tell);
        }
    }
    for (ChoiceField* choice : {row.bung, row.weep, row.pellicle, row.smell, row.with})
        connect(choice, &ChoiceField::activated, this, &RoundPage::tell);
    connect(row.purged, &QCheckBox::toggled, this, &RoundPage::tell);
    connect(row.note, &QLineEdit::textEdited, this, &RoundPage::tell);
    QWidget* before = rows_.empty() ? nullptr : static_cast<QWidget*>(rows_.back().note);
    for (std::size_t i = 1; i < row.cells.size(); ++i) { // along the row, then to the next
        auto* number = qobject_cast<NumberField*>(row.cells[i]);
        QWidget* stop = number ? static_cast<QWidget*>(number->edit()) : row.cells[i];
        if (before)
            QWidget::setTabOrder(before, stop);
        before = stop;
    }
    rows_.push_back(std::move(row));
}

desk::RoundEntry RoundPage::entryOf(const RoundRow& row) const {
    using namespace facts::factWords;
    desk::RoundEntry entry;
    RoundFact& round = entry.seen;
    round.vessel = row.vessel;
    round.on = on_->day().value_or(session_.desk().today());
    round.bung = seen<facts::Bung>(*row.bung, bungs);
    round.weep = seen<facts::Weep>(*row.weep, weeps);
    round.pellicle = seen<facts::Pellicle>(*row.pellicle, pellicles);
    round.smell = seen<facts::Smell>(*row.smell, smells);
    if (row.room->stored())
        round.room = Celsius{*row.room->stored()};
    round.purged = row.purged->isChecked();
    round.nextLook = next_->day();
    round.note = toStd(row.note->text().trimmed());
    if (row.level->stored())
        entry.level = Litres{*row.level->stored()};
    if (row.topped->stored())
        entry.topped = Litres{*row.topped->stored()};
    entry.brew = row.with->word();
    return entry;
}

/// What is typed and no number or day has the focus then, and its message.
bool RoundPage::allUsable() {
    for (const RoundRow& row : rows_)
        for (const NumberField* field : {row.level, row.room, row.topped})
            if (!field->usable()) {
                field->edit()->setFocus(Qt::OtherFocusReason);
                return false;
            }
    for (const DateField* field : {on_, next_})
        if (!field->day()) {
            field->edit()->setFocus(Qt::OtherFocusReason);
            return false;
        }
    return true;
}

void RoundPage::finish() {
    if (!allUsable())
        return;
    std::vector<facts::Fact> facts;
    std::vector<std::size_t> rowOfFact;
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        for (facts::Fact& fact : factsOf(entryOf(rows_[i]))) {
            facts.push_back(std::move(fact));
            rowOfFact.push_back(i);
        }
    }
    if (facts.empty())
        return message_->say(MessageLabel::Weight::warning, own("ui.round.nothing"));
    active_ = false;
    const auto done = session_.record(facts);
    active_ = !done;
    tell();
    if (done)
        Q_EMIT recorded();
    else
        showFault(done.error(), facts, rowOfFact);
}

/// Where it was typed.
QWidget* RoundPage::fieldOf(const Fault& fault, const facts::Fact& fact, const RoundRow& row) const {
    const std::string field = fieldAt(fault.path.substr(fault.path.find_last_of('/') + 1));
    if (field == "on")
        return on_->edit();
    if (field == "next_look")
        return next_->edit();
    if (std::holds_alternative<facts::DipFact>(fact))
        return row.level->edit();
    if (std::holds_alternative<facts::TopUpFact>(fact))
        return field == "brew" ? static_cast<QWidget*>(row.with) : row.topped->edit();
    return field == "room_c" ? row.room->edit() : row.note;
}

/// A fault in one of several facts is found at "/3/volume_l".
void RoundPage::showFault(const Fault& fault, const std::vector<facts::Fact>& facts,
                          const std::vector<std::size_t>& rowOfFact) {
    std::size_t fact = 0;
    if (fault.path.size() > 1 && fault.path[1] >= '0' && fault.path[1] <= '9')
        fact = static_cast<std::size_t>(std::stoi(fault.path.substr(1)));
    fact = std::min(fact, facts.size() - 1);
    const RoundRow& row = rows_[rowOfFact[fact]];
    message_->say(MessageLabel::Weight::fault, tr("%1: %2").arg(qs(row.vessel), session_.words(fault)));
    fieldOf(fault, facts[fact], row)->setFocus(Qt::OtherFocusReason);
}

QString RoundPage::words() const {
    return message_->words();
}

} // namespace staveline::ui
