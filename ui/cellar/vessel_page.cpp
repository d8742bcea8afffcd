// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cellar/vessel_page.h"

#include "desk/advice.h"
#include "desk/ledger.h"
#include "ui/cellar/life_lines.h"
#include "ui/cellar/new_vessel_questions.h"
#include "ui/cellar/prospect_panel.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/fact_form.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/number_field.h"
#include "ui/widgets/panes.h"
#include "ui/widgets/steady_scroll.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include <memory>

namespace staveline::ui {

using facts::VesselFact;

namespace {

const std::set<std::string> retirement = {"retired_on", "retired_reason"};
/// Asked of a vessel that is changed; a new one has them by habit and material.
const std::set<std::string> byHabit = {"temperature_can_change",
                                       "sample_days_before_draw",
                                       "evaporation_per_year",
                                       "oxygen_mg_l_year",
                                       "culture_held_back",
                                       "draw_may_move",
                                       "interval_may_move",
                                       "fills_before",
                                       "note",
                                       "retired_on",
                                       "retired_reason"};

/// By the words of the form.
std::string usualMaterialOf(const std::string& shape) {
    const auto& shapes = facts::factWords::shapes;
    const auto at = std::find(shapes.begin(), shapes.end(), shape) - shapes.begin();
    return std::string(wordOf(facts::usualMaterial(static_cast<facts::VesselForm>(at))));
}

/// A new keg is no oak: the material follows the shape until it is chosen by hand.
void followShape(const FactForm& form) {
    ChoiceField* shape = form.choice("shape");
    ChoiceField* material = form.choice("material");
    const auto chosen = std::make_shared<bool>(false);
    QObject::connect(material, &ChoiceField::activated, material, [chosen] { *chosen = true; });
    QObject::connect(shape, &ChoiceField::activated, material, [=] {
        if (!*chosen)
            material->setWord(usualMaterialOf(shape->word()));
    });
}

template <class To, class From> void takeChange(std::optional<To>& to, const From& before, const From& after) {
    if (before != after)
        to = after;
}
/// An emptied field goes back to what the material says.
template <class T>
void takeOptional(facts::VesselEditFact& edit, std::optional<T>& to, const char* name, const std::optional<T>& before,
                  const std::optional<T>& after) {
    if (before == after)
        return;
    to = after;
    if (!after)
        edit.clear.emplace_back(name);
}

} // namespace

std::optional<facts::VesselEditFact> editOf(const VesselFact& before, const VesselFact& after) {
    facts::VesselEditFact edit;
    edit.vessel = before.name;
    takeChange(edit.name, before.name, after.name);
    takeChange(edit.shape, before.shape, after.shape);
    takeChange(edit.material, before.material, after.material);
    takeChange(edit.note, before.note, after.note);
    takeChange(edit.capacity, before.capacity, after.capacity);
    takeChange(edit.room, before.room, after.room);
    if (after.room.empty() && !before.room.empty()) // out of a room it has what is told of it, not what it was before
        edit.temperature = after.temperature;
    else if (after.room.empty())
        takeChange(edit.temperature, before.temperature, after.temperature);
    takeChange(edit.canChangeTemperature, before.canChangeTemperature, after.canChangeTemperature);
    takeChange(edit.interval, before.interval, after.interval);
    takeChange(edit.sampleBefore, before.sampleBefore, after.sampleBefore);
    takeChange(edit.drawShare, before.drawShare, after.drawShare);
    takeChange(edit.drawMayMove, before.drawMayMove, after.drawMayMove);
    takeChange(edit.intervalMayMove, before.intervalMayMove, after.intervalMayMove);
    takeChange(edit.fillsBefore, before.fillsBefore, after.fillsBefore);
    takeOptional(edit, edit.wantedAgeYears, facts::factWords::wantedAge.data(), before.wantedAgeYears,
                 after.wantedAgeYears);
    takeOptional(edit, edit.evaporationPerYear, "evaporation_per_year", before.evaporationPerYear,
                 after.evaporationPerYear);
    takeOptional(edit, edit.oxygenPerYear, "oxygen_mg_l_year", before.oxygenPerYear, after.oxygenPerYear);
    takeOptional(edit, edit.cultureHeldBack, "culture_held_back", before.cultureHeldBack, after.cultureHeldBack);
    facts::VesselEditFact none;
    none.vessel = before.name;
    return edit == none ? std::nullopt : std::optional(edit);
}

VesselPage::VesselPage(Session& session, QWidget* parent)
    : AsidePage(parent), session_(session), title_(new QLabel(this)), words_(new QLabel(this)),
      form_(new FactForm(this)), questions_(new NewVesselQuestions(this)), prospect_(new ProspectPanel(session, this)),
      message_(new MessageLabel(this)), finish_(new QPushButton(this)) {
    auto* page = new QWidget(this);
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(0, 0, lines(*this, 1), 0);
    column->setSpacing(lines(*this, .8));
    setType(*title_, Type::title);
    message_->keepRoom(1.1);
    words_->setWordWrap(true);
    column->addWidget(title_);
    column->addWidget(words_);
    column->addWidget(form_);
    column->addWidget(questions_);
    column->addWidget(changes_ = makeChanges());
    column->addWidget(message_);
    column->addLayout(makeButtons());
    column->addStretch(1);
    auto* panes = new Panes(QStringLiteral("vessel"), this);
    panes->addPane(new SteadyScroll(page, this), 44, 26);
    panes->addPane(new SteadyScroll(prospect_, this), 36, 18);
    auto* outer = new QHBoxLayout(this);
    outer->addWidget(panes);
    const auto edited = [this] {
        message_->clear();
        tell();
        showProspect();
    };
    for (const FactForm* form : {form_, culture_})
        connect(form, &FactForm::edited, this, edited);
    connect(questions_, &NewVesselQuestions::edited, this, edited);
    connect(&session, &Session::storeAsked, this, [this] {
        if (started())
            finish();
    });
    connect(&session, &Session::unitsChanged, this, [this] {
        form_->setUnits(session_.units());
        culture_->setUnits(session_.units());
        questions_->setUnits(session_.units());
    });
}

/// What only a vessel in use has: a culture, and an end.
QWidget* VesselPage::makeChanges() {
    auto* part = new QWidget(this);
    auto* column = new QVBoxLayout(part);
    column->setContentsMargins(0, 0, 0, 0);
    auto* heading = new QLabel(tr("What lives in it"), part);
    setType(*heading, Type::strong);
    culture_ = new FactForm(part);
    life_ = new LifeLines(session_, part);
    reason_ = new QLineEdit(part);
    reason_->setAccessibleName(tr("Why it is retired"));
    reason_->setPlaceholderText(tr("why, if you like"));
    retire_ = new QPushButton(tr("Re&tire the vessel"), part);
    retire_->setAutoDefault(true);
    auto* ending = new QLabel(tr("Out of use"), part);
    setType(*ending, Type::strong);
    auto* words = new QLabel(own("ui.vessel.retire"), part);
    words->setWordWrap(true);
    auto* row = new QHBoxLayout;
    row->addWidget(reason_, 1);
    row->addWidget(retire_);
    for (QWidget* widget : std::initializer_list<QWidget*>{heading, culture_, life_, ending, words})
        column->addWidget(widget);
    column->addLayout(row);
    connect(retire_, &QPushButton::clicked, this, &VesselPage::retire);
    return part;
}

QLayout* VesselPage::makeButtons() {
    auto* leave = new QPushButton(tr("Cancel (Esc)"), this);
    leave->setFlat(true);
    leave->setAutoDefault(true);
    finish_->setDefault(true);
    finish_->setAutoDefault(true);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(finish_);
    buttons->addWidget(leave);
    buttons->addStretch(1);
    connect(finish_, &QPushButton::clicked, this, &VesselPage::finish);
    connect(leave, &QPushButton::clicked, this, &VesselPage::leave);
    return buttons;
}

bool VesselPage::started() const {
    return active_ && (form_->touched() || (before_ ? culture_->touched() : questions_->touched()));
}

void VesselPage::tell() {
    const QString what = before_ ? tr("changes of %1").arg(qs(before_->name)) : tr("the new vessel");
    session_.setUnstored("vessel", started() ? QStringList{what} : QStringList());
}

void VesselPage::showProspect() {
    prospect_->showVessel(std::get<VesselFact>(form_->fact()));
}

bool VesselPage::goesOn(const std::optional<facts::VesselName>& wanted) {
    if (!started())
        return false;
    if (wanted != (before_ ? std::optional(before_->name) : std::nullopt))
        message_->say(MessageLabel::Weight::warning, own("ui.vessel.begun"));
    form_->focusFirst();
    return true;
}

void VesselPage::leave() {
    active_ = false;
    tell();
    Q_EMIT left();
}

void VesselPage::begin() {
    if (goesOn(std::nullopt))
        return;
    before_.reset();
    title_->setText(tr("A vessel for the cellar"));
    words_->setText(own("ui.vessel.words"));
    finish_->setText(tr("&Add the vessel"));
    show(VesselFact{}, true);
}

void VesselPage::change(const facts::VesselName& vessel) {
    if (goesOn(vessel))
        return;
    const auto found = session_.desk().vessel(vessel);
    if (!found) {
        Q_EMIT session_.failed(found.error());
        return;
    }
    before_ = found->facts;
    if (const auto inUse = session_.desk().setting(vessel)) { // a plan may have changed them since
        if (!before_->wantedAgeYears)                         // else it follows from the age
            before_->interval = inUse->interval;
        before_->temperature = inUse->temperature;
    }
    cultureBefore_ = lastCulture();
    title_->setText(tr("Change %1").arg(qs(vessel)));
    words_->setText(own("ui.vessel.change"));
    finish_->setText(tr("&Keep the changes"));
    retire_->setEnabled(!found->retired);
    reason_->setEnabled(!found->retired);
    reason_->clear();
    show(*before_, false);
}

void VesselPage::show(const VesselFact& facts, bool isNew) {
    FormContext context;
    context.today = session_.desk().today();
    context.units = session_.units();
    context.labels = "vessel";
    context.hidden = isNew ? byHabit : retirement;
    rooms_ = session_.desk().rooms().value_or(std::vector<desk::RoomView>{});
    for (const desk::RoomView& room : rooms_)
        context.rooms.push_back(room.told.fact.name);
    if (rooms_.empty())
        context.hidden.insert("room");
    form_->build(facts, context);
    followRoom();
    changes_->setVisible(!isNew);
    questions_->setVisible(isNew);
    if (isNew) {
        followShape(*form_);
        const auto kit = session_.desk().kit();
        questions_->begin(context.today, context.units,
                          kit.on == Day{} ? std::nullopt : std::optional(kit.equipment.name));
    } else {
        context.labels = "culture";
        context.hidden = {"on"};
        culture_->build(cultureBefore_, context);
        life_->showVessel(facts.name);
    }
    const auto start = isNew ? Result<desk::Start>(desk::Start{context.today}) : session_.desk().startOf(facts.name);
    prospect_->begin(start.value_or(desk::Start{context.today}));
    message_->clear();
    showProspect();
    form_->focusFirst();
    active_ = true;
}

/// A vessel in a room is as warm as the room: the mean of its year stands there, and cannot be typed.
void VesselPage::followRoom() {
    ChoiceField* choice = form_->choice("room");
    if (!choice)
        return;
    NumberField* temperature = form_->number("temperature_c");
    const auto follow = [this, choice, temperature] {
        const auto room = std::find_if(rooms_.begin(), rooms_.end(), [&](const desk::RoomView& each) {
            return each.told.fact.name == choice->word();
        });
        if (room != rooms_.end())
            temperature->setStored(vessel::meanOf(room->year));
        temperature->setEnabled(room == rooms_.end());
    };
    connect(choice, &ChoiceField::activated, temperature, follow);
    temperature->setEnabled(choice->word().empty());
}

facts::CultureFact VesselPage::lastCulture() const {
    auto culture = session_.desk().culture(before_->name).value_or(facts::CultureFact{});
    culture.vessel = before_->name;
    return culture;
}

bool VesselPage::usable() {
    for (FactForm* form : {form_, culture_}) {
        form->recheck(); // what the book refused may be mended by another field
        if ((form == form_ || before_) && !form->usable()) {
            form->complain();
            return false;
        }
    }
    if (before_ || questions_->usable())
        return true;
    questions_->complain();
    return false;
}

void VesselPage::finish() {
    if (!usable())
        return;
    const auto vessel = std::get<VesselFact>(form_->fact());
    if (before_)
        recordChanges(vessel);
    else
        add(vessel);
}

void VesselPage::add(const VesselFact& vessel) {
    std::vector<facts::Fact> facts = {vessel};
    const auto answers = questions_->answers(vessel.name);
    facts.insert(facts.end(), answers.begin(), answers.end());
    if (record(facts))
        Q_EMIT added(qs(vessel.name));
}

void VesselPage::recordChanges(const VesselFact& vessel) {
    std::vector<facts::Fact> facts;
    auto culture = std::get<facts::CultureFact>(culture_->fact());
    if (!(culture == cultureBefore_)) {
        culture.on = session_.desk().today();
        facts.emplace_back(culture);
    }
    if (const auto edit = editOf(*before_, vessel))
        facts.emplace_back(*edit); // last: it may rename the vessel
    if (!facts.empty() && !record(facts))
        return;
    active_ = false;
    tell();
    Q_EMIT changed(qs(vessel.name));
}

void VesselPage::retire() {
    if (!before_)
        return;
    const facts::RetireFact fact{before_->name, session_.desk().today(), toStd(reason_->text().trimmed())};
    if (record({fact}))
        Q_EMIT changed(qs(before_->name));
}

bool VesselPage::record(const std::vector<facts::Fact>& facts) {
    const auto recorded = session_.record(facts);
    active_ = !recorded;
    tell();
    if (!recorded)
        showFault(recorded.error());
    return recorded.has_value();
}

/// A fault in one of several facts is found at "/0/name".
void VesselPage::showFault(const Fault& fault) {
    Fault plain = fault;
    const auto second = plain.path.find('/', 1);
    const bool numbered = second == 2 && plain.path[1] >= '0' && plain.path[1] <= '9';
    if (numbered)
        plain.path = plain.path.substr(second);
    const bool ofVessel = !numbered || fault.path[1] == '0'; // which is recorded first
    if (ofVessel && form_->showFault(plain, true))
        return;
    if (!(before_ ? culture_->showFault(plain, true) : questions_->showFault(plain)))
        message_->say(MessageLabel::Weight::fault, session_.words(fault));
}

QString VesselPage::words() const {
    return message_->words();
}

} // namespace staveline::ui
