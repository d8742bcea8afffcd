// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/brew/as_brewed_page.h"

#include "advice/advise.h"
#include "desk/brew.h"
#include "desk/filed.h"
#include "ui/brew/flow_diagram.h"
#include "ui/brew/meaning_view.h"
#include "ui/brew/row_list.h"
#include "ui/brew/step_section.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/number_field.h"
#include "ui/widgets/steady_scroll.h"
#include "ui/widgets/theme.h"

#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QTimer>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace staveline::ui {

using facts::BrewFact;

namespace {

constexpr int pause = 300; // ms without a keystroke before the meaning is told

constexpr double leastBeside = 62; // lines of text wide

constexpr Range gravities{.98, 1.2}, litres{.1, 100'000};

std::optional<desk::Filed<BrewFact>> findBrew(const std::vector<desk::Filed<BrewFact>>& brews,
                                              const std::string& name) {
    const auto at =
        std::find_if(brews.begin(), brews.end(), [&](const auto& filed) { return filed.fact.name == name; });
    return at == brews.end() ? std::nullopt : std::optional(*at);
}

} // namespace

AsBrewedPage::AsBrewedPage(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), model_(new RecipeEditorModel(session, this)), list_(new QListWidget),
      form_(new QWidget), name_(new QLineEdit(form_)), date_(new DateField(session.desk().today(), form_)),
      original_(new NumberField(UnitKind::gravity, gravities, false, form_)),
      final_(new NumberField(UnitKind::gravity, gravities, false, form_)),
      litres_(new NumberField(UnitKind::volume, litres, false, form_)), note_(new QLineEdit(form_)),
      message_(new MessageLabel), record_(new QPushButton(tr("Record the brew"))),
      refill_(new QPushButton(tr("Go to the refill"))), takeOut_(new QPushButton(tr("Take the brew out"))),
      efficiency_(new QLabel), useEfficiency_(new QPushButton), meaning_(new MeaningView(session)),
      scroll_(new SteadyScroll(nullptr, this)), flow_(new FlowPage(*model_, FlowPage::Purpose::brewed)),
      weigh_(new QTimer(this)) {
    message_->keepRoom(1.1);
    efficiency_->setObjectName("efficiency");
    efficiency_->setWordWrap(true);
    efficiency_->setMinimumHeight(lines(*this, 2.2));
    for (QWidget* told : std::initializer_list<QWidget*>{efficiency_, useEfficiency_}) {
        QSizePolicy policy = told->sizePolicy();
        policy.setRetainSizeWhenHidden(true); // the buttons below do not move while figures are typed
        told->setSizePolicy(policy);
    }
    useEfficiency_->setObjectName("use efficiency");
    fitList();
    addFields(*form_);
    layOut();
    weigh_->setSingleShot(true);
    weigh_->setInterval(pause);
    connect(weigh_, &QTimer::timeout, this, &AsBrewedPage::weighNow);
    connect(model_, &RecipeEditorModel::recalculated, this, &AsBrewedPage::edited);
    connect(&session, &Session::storeAsked, this, [this] {
        storeInHand();
        storeAside();
    });
    connect(record_, &QPushButton::clicked, this, &AsBrewedPage::record);
    connect(refill_, &QPushButton::clicked, this, &AsBrewedPage::refillAsked);
    connect(takeOut_, &QPushButton::clicked, this, &AsBrewedPage::takeOut);
    connect(useEfficiency_, &QPushButton::clicked, this, &AsBrewedPage::useEfficiency);
    connect(&session, &Session::unitsChanged, this, &AsBrewedPage::sayEfficiency);
    refill_->setVisible(false);
}

/// What is said and done about a brew stands below its fields.
void AsBrewedPage::layOut() {
    auto* buttons = new QHBoxLayout;
    for (QPushButton* button : {record_, refill_, takeOut_})
        buttons->addWidget(button);
    buttons->addStretch(1);
    auto* middle = new QVBoxLayout;
    middle->addWidget(form_);
    middle->addWidget(efficiency_);
    middle->addWidget(useEfficiency_, 0, Qt::AlignLeft);
    middle->addWidget(message_);
    middle->addLayout(buttons);
    middle->addStretch(1);
    top_ = new QBoxLayout(QBoxLayout::LeftToRight);
    top_->setSpacing(lines(*this, 1.4));
    top_->addWidget(list_, 0, Qt::AlignTop);
    top_->addLayout(middle, 3);
    top_->addWidget(meaning_, 2);
    auto* page = new QWidget;
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(0, lines(*this, .4), lines(*this, .6), 0);
    column->addLayout(top_);
    column->addWidget(&flow_->diagram());
    column->addWidget(flow_);
    column->addStretch(1);
    scroll_->setWidget(page);
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(scroll_);
}

/// List, form and meaning stand one above the other where the page is too narrow for all.
void AsBrewedPage::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    const bool narrow = width() < lines(*this, leastBeside);
    top_->setDirection(narrow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
}

QSize AsBrewedPage::minimumSizeHint() const {
    return {form_->minimumSizeHint().width() + lines(*this, 2), scroll_->minimumSizeHint().height()};
}

void AsBrewedPage::fitList() {
    list_->setAccessibleName(tr("Brews for this vessel"));
    list_->setFrameShape(QFrame::NoFrame);
    list_->setFixedWidth(lines(*this, 12));
    list_->setFixedHeight(lines(*this, 11));
    list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list_->setWordWrap(true);
    connect(list_, &QListWidget::currentItemChanged, this, [this](const QListWidgetItem* item) {
        if (!item || filling_)
            return;
        const std::string brew = toStd(item->data(Qt::UserRole).toString());
        if (brew.empty())
            begin();
        else
            open(brew);
    });
}

void AsBrewedPage::addFields(QWidget& panel) {
    auto* grid = new QGridLayout(&panel);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(lines(*this, 1));
    grid->setVerticalSpacing(lines(*this, .4));
    const auto place = [&](const QString& caption, QWidget* field, QLineEdit* edit, int row, int column, int width) {
        grid->addWidget(captioned(caption, field, edit, &panel), row, column, 1, width, Qt::AlignTop);
    };
    name_->setAccessibleName(tr("Name of the brew"));
    date_->setName(tr("Brewed on"));
    original_->setName(tr("Original gravity, measured"));
    final_->setName(tr("Final gravity, measured"));
    litres_->setName(tr("Into the fermenter"));
    note_->setAccessibleName(tr("Note"));
    place(tr("Name"), name_, name_, 0, 0, 1);
    place(tr("Brewed on"), date_, date_->edit(), 0, 1, 2);
    place(tr("Original gravity, measured"), original_, original_->edit(), 1, 0, 1);
    place(tr("Final gravity, measured"), final_, final_->edit(), 1, 1, 1);
    place(tr("Into the fermenter"), litres_, litres_->edit(), 1, 2, 1);
    place(tr("Note"), note_, note_, 2, 0, 3);
    grid->setRowStretch(3, 1);
    for (NumberField* field : {original_, final_, litres_}) {
        connect(field, &NumberField::edited, this, &AsBrewedPage::edited);
        connect(&session_, &Session::unitsChanged, field, [this, field] { field->setUnits(session_.units()); });
    }
    connect(date_, &DateField::edited, this, &AsBrewedPage::edited);
    for (QLineEdit* line : {name_, note_})
        connect(line, &QLineEdit::textEdited, this, &AsBrewedPage::edited);
}

void AsBrewedPage::showVessel(const facts::VesselName& vessel) {
    if (vessel == vessel_)
        return;
    putAside();
    vessel_ = vessel;
    start_.reset();
    kept_.reset();
    amended_.reset();
    scroll_->toTop();
    refill_->setVisible(false);
    sayUnstored();
}

bool AsBrewedPage::touched() const {
    return start_ && brew() != *start_;
}

void AsBrewedPage::putAside() {
    if (touched() || kept_)
        aside_[vessel_] = {*start_, brew(), kept_, amended_};
}

void AsBrewedPage::takeUp(const InHand& hand) {
    amended_ = hand.amended;
    kept_ = hand.kept;
    fill(hand.made);
    start_ = hand.start;
    edited();
}

/// Under another name where a brew has taken its own meanwhile.
bool AsBrewedPage::recordNew(BrewFact made) {
    const auto brews = session_.desk().brews();
    if (std::any_of(brews.begin(), brews.end(), [&](const BrewFact& brew) { return brew.name == made.name; }))
        made.name = session_.desk().nextBrewName();
    return session_.record(facts::Fact{made}).has_value();
}

/// What is on the page, and the new brew that was begun before another was looked at.
void AsBrewedPage::storeInHand() {
    if (touched())
        record();
    if (kept_ && recordNew(*kept_))
        kept_.reset();
    sayUnstored();
}

void AsBrewedPage::storeAside() {
    const auto batch = session_.batch(); // what is told then finds them gone
    for (auto& [vessel, hand] : aside_) {
        if (hand.made != hand.start &&
            (hand.amended ? session_.amend("brew", *hand.amended, facts::Fact{hand.made}).has_value()
                          : recordNew(hand.made)))
            hand.start = hand.made;
        if (hand.kept && recordNew(*hand.kept))
            hand.kept.reset();
    }
    std::erase_if(aside_, [](const auto& each) { return each.second.made == each.second.start && !each.second.kept; });
    sayUnstored();
}

void AsBrewedPage::sayUnstored() {
    QStringList words;
    const auto name = [&](const facts::VesselName& vessel) { words << tr("brew of %1").arg(qs(vessel)); };
    if (touched() || kept_)
        name(vessel_);
    for (const auto& [vessel, hand] : aside_)
        name(vessel);
    session_.setUnstored("brew", words);
}

/// By the kilograms of the sheet, to a gram: what was weighed otherwise is typed over them.
std::optional<BrewFact> AsBrewedPage::planned() const {
    const auto planned = session_.desk().planned(vessel_);
    if (!planned)
        return std::nullopt;
    BrewFact fact;
    fact.name = session_.desk().nextBrewName();
    fact.vessel = vessel_;
    fact.on = session_.desk().today();
    fact.recipe = planned->setting.recipe;
    if (const auto plan = session_.desk().brewPlan(vessel_))
        for (std::size_t i = 0; i < fact.recipe.grist.size(); ++i)
            fact.recipe.grist[i].mass = brewing::asScaleReads(plan->grist[i].mass);
    return fact;
}

/// The brew made for the coming refill; without one the newest, if its final gravity is to come.
std::optional<std::string> AsBrewedPage::waiting() const {
    if (const auto planned = session_.desk().planned(vessel_); planned && planned->brewed)
        return planned->brewed->name;
    const auto brews = session_.desk().brewsFor(vessel_);
    const bool unended = !brews.empty() && !brews.front().fact.finalGravity;
    return unended ? std::optional(brews.front().fact.name) : std::nullopt;
}

void AsBrewedPage::openFirst() {
    const auto hand = aside_.extract(vessel_);
    const auto waits = waiting();
    if (!hand.empty())
        takeUp(hand.mapped());
    else if (waits)
        open(*waits);
    else
        begin();
}

void AsBrewedPage::begin() {
    amended_.reset();
    const auto fresh = kept_ ? std::exchange(kept_, std::nullopt) : planned();
    scroll_->setVisible(fresh.has_value());
    if (fresh)
        fill(*fresh);
}

void AsBrewedPage::open(const std::string& brew) {
    const auto filed = findBrew(session_.desk().brewsFor(vessel_), brew);
    if (!filed)
        return;
    if (!amended_ && touched())
        kept_ = this->brew();
    amended_ = filed->id;
    fill(filed->fact);
}

void AsBrewedPage::fill(const BrewFact& brew) {
    filling_ = true;
    start_ = brew;
    record_->setText(amended_ ? tr("Amend the brew") : tr("Record the brew"));
    takeOut_->setVisible(amended_.has_value());
    takeOut_->setEnabled(!session_.desk().readOnly());
    name_->setText(qs(brew.name));
    date_->setToday(session_.desk().today());
    date_->setDay(brew.on);
    const auto number = [this](NumberField* field, std::optional<double> value) {
        field->setUnits(session_.units());
        field->setStored(value);
    };
    number(original_, brew.originalGravity ? std::optional(brew.originalGravity->sg) : std::nullopt);
    number(final_, brew.finalGravity ? std::optional(brew.finalGravity->sg) : std::nullopt);
    number(litres_, brew.intoFermenter ? std::optional(brew.intoFermenter->l) : std::nullopt);
    note_->setText(qs(brew.note));
    advice::Setting setting;
    if (const auto planned = session_.desk().planned(vessel_))
        setting = planned->setting;
    setting.recipe = brew.recipe;
    model_->setLocked(session_.desk().readOnly());
    model_->begin(vessel_, setting, session_.desk().kit(vessel_), desk::measuresOf(brew));
    record_->setEnabled(!session_.desk().readOnly());
    filling_ = false;
    edited();
    weighNow();
}

BrewFact AsBrewedPage::brew() const {
    BrewFact made = start_.value_or(BrewFact{});
    made.name = toStd(name_->text().trimmed());
    made.vessel = vessel_;
    made.on = date_->day().value_or(made.on);
    made.recipe = model_->recipe();
    made.originalGravity.reset();
    made.finalGravity.reset();
    made.intoFermenter.reset();
    if (original_->stored())
        made.originalGravity = SpecificGravity{*original_->stored()};
    if (final_->stored())
        made.finalGravity = SpecificGravity{*final_->stored()};
    if (litres_->stored())
        made.intoFermenter = Litres{*litres_->stored()};
    made.note = toStd(note_->text());
    return made;
}

bool AsBrewedPage::usable() const {
    return date_->day() && original_->usable() && final_->usable() && litres_->usable() && !model_->fault();
}

void AsBrewedPage::edited() {
    if (filling_ || !start_)
        return;
    message_->clear();
    for (NumberField* field : {original_, final_, litres_})
        field->recheck();
    date_->recheck();
    model_->setMeasured(desk::measuresOf(brew()));
    sayUnstored();
    sayEfficiency();
    weigh_->start();
}

void AsBrewedPage::sayEfficiency() {
    const auto day = start_ ? session_.desk().efficiency(brew()) : std::nullopt;
    efficiency_->setVisible(day.has_value());
    useEfficiency_->setVisible(day && day->offer);
    useEfficiency_->setEnabled(!session_.desk().readOnly());
    if (!day)
        return;
    efficiency_->setText(session_.words(day->words));
    if (day->offer)
        useEfficiency_->setText(tr("Use %1 for this kit").arg(session_.amount(*day->offer)));
}

void AsBrewedPage::useEfficiency() {
    const auto day = session_.desk().efficiency(brew());
    if (!day || !day->offer)
        return;
    facts::EquipmentFact kit = day->kit;
    kit.on = session_.desk().today();
    kit.equipment.efficiency = *day->offer;
    const QString name =
        tr("efficiency of %1 for the kit %2").arg(session_.amount(*day->offer), qs(kit.equipment.name));
    if (const auto done = session_.setToday(facts::Fact{kit}, {toStd(name), {}}); !done)
        showFault(done.error());
    else
        Q_EMIT session_.said(tr("Recorded: %1").arg(name));
    sayEfficiency();
}

void AsBrewedPage::takeOut() {
    if (!amended_)
        return;
    const auto batch = session_.batch(); // the page is read anew when it is out of hand
    if (const auto done = session_.remove("brew", *amended_); !done)
        showFault(done.error());
    else
        begin();
}

void AsBrewedPage::weighNow() {
    weigh_->stop();
    if (start_ && !model_->fault())
        meaning_->show(session_.desk().meaning(brew()));
}

void AsBrewedPage::record() {
    if (!start_ || session_.desk().readOnly())
        return;
    if (model_->fault()) {
        showFault(*model_->fault());
        return;
    }
    if (!usable())
        return; // what is wrong stands beside its field
    const BrewFact made = brew();
    const bool fresh = !amended_;
    if (!store(made))
        return;
    if (fresh) {
        refill_->setVisible(true);
        message_->say(
            MessageLabel::Weight::note,
            text(say(made.finalGravity ? "ui.brew.recorded.ended" : "ui.brew.recorded").with("brew", made.name)));
    }
}

/// What was recorded is in hand to be amended before the page is read anew.
bool AsBrewedPage::store(const BrewFact& made) {
    const auto batch = session_.batch();
    const auto done =
        amended_ ? session_.amend("brew", *amended_, facts::Fact{made}) : session_.record(facts::Fact{made});
    if (!done) {
        showFault(done.error());
        return false;
    }
    amended_ = done->rows.front().id;
    start_ = made;
    if (!isVisible()) // else it follows when the batch ends
        refresh();
    return true;
}

void AsBrewedPage::showFault(const Fault& fault) {
    const std::array<std::pair<std::string_view, NumberField*>, 3> numbers = {
        {{"/measured_original_gravity", original_},
         {"/measured_final_gravity", final_},
         {"/into_fermenter_l", litres_}}};
    for (const auto& [path, field] : numbers)
        if (fault.path.starts_with(path)) {
            field->showFault(fault);
            field->edit()->setFocus(Qt::OtherFocusReason);
            return;
        }
    if (NumberField* field = flow_->fields().numberAt(fault.path))
        field->showFault(fault);
    else if (fault.path == "/on")
        date_->showFault(fault);
    else
        message_->say(MessageLabel::Weight::fault, session_.words(fault));
    if (fault.path == "/name")
        name_->setFocus(Qt::OtherFocusReason);
}

void AsBrewedPage::refresh() {
    if (!start_)
        openFirst();
    const bool untouched = !touched();
    if (amended_ && untouched) {
        // It may have been amended or taken back elsewhere.
        const std::string name = start_->name;
        if (!findBrew(session_.desk().brewsFor(vessel_), name))
            begin();
        else
            open(name);
    } else if (untouched) {
        begin();
    } else if (!amended_ && start_->name == toStd(name_->text().trimmed())) {
        start_->name = session_.desk().nextBrewName(); // recorded or taken back meanwhile
        name_->setText(qs(start_->name));
    }
    sayEfficiency(); // of the kit in use now
    fillList();
}

void AsBrewedPage::fillList() {
    filling_ = true;
    list_->clear();
    const std::string next = session_.desk().nextBrewName();
    auto* fresh = new QListWidgetItem(tr("New: %1").arg(qs(next)), list_);
    fresh->setData(Qt::UserRole, QString());
    list_->setCurrentItem(fresh);
    for (const auto& [id, brew] : session_.desk().brewsFor(vessel_)) {
        QString words = tr("%1, %2").arg(qs(brew.name), dayWords(brew.on));
        if (!brew.finalGravity)
            words += tr("; final gravity to come");
        auto* item = new QListWidgetItem(words, list_);
        item->setData(Qt::UserRole, qs(brew.name));
        if (amended_ && start_ && brew.name == start_->name)
            list_->setCurrentItem(item);
    }
    filling_ = false;
}

void AsBrewedPage::focusFirst() {
    name_->setFocus(Qt::OtherFocusReason);
}

QString AsBrewedPage::words() const {
    return message_->words();
}

} // namespace staveline::ui
