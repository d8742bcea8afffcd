// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cellar/room_page.h"

#include "quantity/constants.h"
#include "tasting/verdict.h"
#include "ui/present/text.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/fact_form.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/panes.h"
#include "ui/widgets/quiet_table.h"
#include "ui/widgets/steady_scroll.h"
#include "ui/widgets/table_copy.h"
#include "ui/widgets/theme.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace staveline::ui {

using facts::RoomFact;
using vessel::RoomReading;

namespace {

enum YearColumn { monthColumn, toldColumn, readColumn, reckonedColumn, yearColumns };

/// Mean of what was read in one month of any year, and how often.
struct MonthRead {
    double sum = 0;
    int count = 0;
};
MonthRead readIn(std::size_t month, const std::vector<RoomReading>& readings) {
    MonthRead read;
    for (const RoomReading& reading : readings)
        if (vessel::monthOf(reading.on) == month) {
            read.sum += reading.read.c;
            ++read.count;
        }
    return read;
}

void put(QTableWidget& table, std::size_t month, YearColumn column, const QString& words) {
    auto* item = new QTableWidgetItem(words);
    item->setTextAlignment(Qt::AlignVCenter | (column == monthColumn ? Qt::AlignLeft : Qt::AlignRight));
    table.setItem(static_cast<int>(month), column, item);
}

} // namespace

RoomPage::RoomPage(Session& session, QWidget* parent)
    : AsidePage(parent), session_(session), which_(new ChoiceField(this)), form_(new FactForm(this)),
      offset_(new QLabel(this)), year_(new QTableWidget(12, yearColumns, this)), message_(new MessageLabel(this)),
      keep_(new QPushButton(this)), anew_(new QPushButton(tr("So from &today on"), this)),
      remove_(new QPushButton(tr("Remove the &room"), this)) {
    auto* title = new QLabel(tr("Rooms"), this);
    setType(*title, Type::title);
    auto* intro = new QLabel(own("ui.room.words"), this);
    intro->setWordWrap(true);
    which_->setAccessibleName(tr("Room"));
    message_->keepRoom(1.1);
    auto* page = new QWidget(this);
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(0, 0, lines(*this, 1), 0);
    column->setSpacing(lines(*this, .6));
    for (QWidget* part : std::initializer_list<QWidget*>{title, intro, which_, form_, message_})
        column->addWidget(part);
    column->addLayout(makeButtons());
    column->addStretch(1);
    auto* scroll = new SteadyScroll(page, this);
    auto* panes = new Panes(QStringLiteral("rooms"), this);
    panes->addPane(scroll, 44, 26);
    panes->addPane(makeYear(), 36, 18);
    auto* outer = new QHBoxLayout(this);
    outer->addWidget(panes);
    connect(which_, &ChoiceField::activated, this, [this] { show(which_->word()); });
    connect(form_, &FactForm::edited, this, [this] {
        message_->clear();
        tell();
        showYear();
    });
    connect(&session, &Session::storeAsked, this, [this] {
        if (started())
            finish();
    });
    connect(&session, &Session::unitsChanged, this, [this] {
        form_->setUnits(session_.units());
        showYear();
    });
    connect(&session, &Session::changed, this, &RoomPage::follow);
}

QWidget* RoomPage::makeYear() {
    auto* part = new QWidget(this);
    auto* column = new QVBoxLayout(part);
    column->setContentsMargins(lines(*this, 1), 0, 0, 0);
    offset_->setWordWrap(true);
    makeQuiet(*year_, tr("The year of the room"));
    new TableCopy(*year_);
    year_->setHorizontalHeaderLabels({tr("Month"), tr("Told"), tr("Read"), tr("Reckoned")});
    for (std::size_t month = 0; month < facts::factWords::months.size(); ++month)
        put(*year_, month, monthColumn, own("ui.word." + std::string(facts::factWords::months[month])));
    year_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    year_->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
    column->addWidget(offset_);
    column->addWidget(year_, 1);
    return part;
}

QLayout* RoomPage::makeButtons() {
    auto* leave = new QPushButton(tr("Back (Esc)"), this);
    leave->setFlat(true);
    anew_->setToolTip(tr("A heater, a wall, another season of use: until today it was as told before."));
    auto* buttons = new QHBoxLayout;
    for (QPushButton* button : {keep_, anew_, remove_, leave}) {
        button->setAutoDefault(true);
        buttons->addWidget(button);
    }
    buttons->addStretch(1);
    connect(keep_, &QPushButton::clicked, this, &RoomPage::finish);
    connect(anew_, &QPushButton::clicked, this, &RoomPage::tellAnew);
    connect(remove_, &QPushButton::clicked, this, &RoomPage::removeRoom);
    connect(leave, &QPushButton::clicked, this, &RoomPage::left);
    return buttons;
}

bool RoomPage::started() const {
    return active_ && form_->touched();
}

void RoomPage::tell() {
    const QString what = shown_.empty() ? tr("the new room") : tr("changes of %1").arg(qs(shown_));
    session_.setUnstored("room", started() ? QStringList{what} : QStringList());
}

void RoomPage::begin() {
    if (started())
        return form_->focusFirst();
    read();
    const bool there = std::any_of(rooms_.begin(), rooms_.end(),
                                   [this](const desk::RoomView& room) { return room.told.fact.name == shown_; });
    show(there ? shown_ : rooms_.empty() ? std::string() : rooms_.front().told.fact.name);
}

/// What is begun stays in hand; the room it is of may be gone.
void RoomPage::follow() {
    if (!isVisible())
        return;
    if (!started())
        return begin();
    read();
    showYear();
}

void RoomPage::read() {
    auto rooms = session_.desk().rooms();
    if (!rooms) {
        Q_EMIT session_.failed(rooms.error());
        return;
    }
    rooms_ = *std::move(rooms);
}

void RoomPage::show(const std::string& name) {
    shown_ = name;
    which_->clear();
    for (const desk::RoomView& room : rooms_)
        which_->add(qs(room.told.fact.name), room.told.fact.name);
    which_->add(tr("A new room"), {});
    which_->setWord(name);
    const desk::RoomView* room = inHand();
    FormContext context;
    context.today = session_.desk().today();
    context.units = session_.units();
    context.labels = "room";
    context.hidden = {"on"};
    RoomFact start;
    start.on = context.today;
    form_->build(room ? room->told.fact : start, context);
    keep_->setText(room ? tr("&Keep the changes") : tr("&Add the room"));
    anew_->setVisible(room && room->told.fact.on != context.today);
    remove_->setVisible(room);
    message_->clear();
    active_ = true;
    tell();
    showYear();
    form_->focusFirst();
}

const desk::RoomView* RoomPage::inHand() const {
    const auto at = std::find_if(rooms_.begin(), rooms_.end(),
                                 [this](const desk::RoomView& room) { return room.told.fact.name == shown_; });
    return at == rooms_.end() ? nullptr : &*at;
}

/// As it is typed, with what was read.
void RoomPage::showYear() {
    const desk::RoomView* room = inHand();
    const auto typed = std::get<RoomFact>(form_->fact());
    const bool told = desk::tellsYear(typed);
    const vessel::ByMonth year = told ? desk::yearOf(typed) : vessel::ByMonth{};
    const vessel::RoomOffset offset = room ? room->offset : vessel::RoomOffset{};
    for (std::size_t month = 0; month < year.size(); ++month) {
        const MonthRead read = room ? readIn(month, room->readings) : MonthRead{};
        put(*year_, month, toldColumn, told ? session_.amount(Celsius{year[month]}) : QString());
        put(*year_, month, readColumn,
            read.count ? tr("%1 (%2)").arg(session_.amount(Celsius{read.sum / read.count})).arg(read.count)
                       : QString());
        put(*year_, month, reckonedColumn, told ? session_.amount(Celsius{year[month] + offset.value}) : QString());
    }
    if (!room)
        return offset_->clear();
    Message words = say(!offset.months       ? "ui.room.unread"
                        : offset.months == 1 ? "ui.room.read.once"
                                             : "ui.room.read")
                        .with("months", static_cast<std::int64_t>(offset.months))
                        .with("above", Number{offset.value, 1})
                        .with("error", Number{offset.sd * tasting::z80, 1});
    QString leftOut;
    if (offset.leftOut > 0)
        leftOut = QLatin1Char(' ') + session_.words(say("ui.room.left_out")
                                                        .with("far", Number{constants::room::slip, 0})
                                                        .with("count", static_cast<std::int64_t>(offset.leftOut)));
    QStringList vessels;
    for (const std::string& vessel : room->vessels)
        vessels << qs(vessel);
    const QString stands = vessels.isEmpty() ? own("ui.room.empty") : tr("In it: %1.").arg(vessels.join(tr(", ")));
    offset_->setText(session_.words(words) + leftOut + QLatin1Char(' ') + stands);
}

bool RoomPage::usable() {
    form_->recheck(); // what the book refused may be mended by another field
    if (form_->usable())
        return true;
    form_->complain();
    return false;
}

void RoomPage::took(const Result<desk::Recorded>& done, const std::string& name) {
    active_ = !done;
    if (done) {
        read();
        show(name);
    } else if (!form_->showFault(done.error(), true)) {
        message_->say(MessageLabel::Weight::fault, session_.words(done.error()));
    }
    tell();
}

void RoomPage::finish() {
    if (!usable())
        return;
    const auto typed = std::get<RoomFact>(form_->fact());
    const desk::RoomView* room = inHand();
    took(room ? session_.amend("room", room->told.id, typed) : session_.record(facts::Fact{typed}), typed.name);
}

void RoomPage::tellAnew() {
    if (!usable())
        return;
    auto typed = std::get<RoomFact>(form_->fact());
    typed.on = session_.desk().today();
    took(session_.record(facts::Fact{typed}), typed.name);
}

void RoomPage::removeRoom() {
    if (const desk::RoomView* room = inHand())
        took(session_.remove("room", room->told.id), {});
}

QString RoomPage::words() const {
    return message_->words();
}

} // namespace staveline::ui
