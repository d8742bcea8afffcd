// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/lever_board.h"

#include "advice/advise.h"
#include "advice/board.h"
#include "ui/present/verdict_words.h"
#include "ui/widgets/theme.h"

#include <QCheckBox>
#include <QGridLayout>
#include <QLabel>

#include <algorithm>

namespace staveline::ui {
namespace {

/// "/sacch_temperature" or "/sacch_temperature/..." names its lever.
std::string leverAt(const std::string& path) {
    const auto start = path.find_first_not_of('/');
    return start == std::string::npos ? std::string() : path.substr(start, path.find('/', start) - start);
}

} // namespace

QString priceSentence(const advice::RestrictionPrice& price, const DisplayUnits& units) {
    return text(
        say("ui.adjust.price").with("price", Number{price.cost, 1}).with("plan", render(price.withoutIt, units)),
        units);
}

LeverBoard::LeverBoard(Session& session, QWidget* parent) : QWidget(parent), session_(session), grid_(new QGridLayout) {
    setLayout(grid_);
    grid_->setContentsMargins(0, 0, 0, 0);
    grid_->setHorizontalSpacing(lines(*this, .7));
    grid_->setVerticalSpacing(lines(*this, .25));
    grid_->setColumnStretch(0, 4);
    grid_->setColumnStretch(1, 2);
    grid_->setColumnStretch(3, 3);
    grid_->setColumnStretch(4, 3);
    addHead();
    addLines();
}

void LeverBoard::addHead() {
    int column = 0;
    for (const QString& words :
         {tr("Try board"), tr("now"), tr("try"), tr("at the next draw"), tr("if repeated"), tr("lock")}) {
        auto* label = new QLabel(words, this);
        setType(*label, column == 0 ? Type::strong : Type::small);
        if (column > 0)
            label->setForegroundRole(QPalette::PlaceholderText);
        grid_->addWidget(label, 0, column++, Qt::AlignLeft | Qt::AlignBottom);
    }
    hint_ = new QLabel(own("ui.adjust.board_hint"), this);
    hint_->setForegroundRole(QPalette::PlaceholderText);
    hint_->setWordWrap(true);
    grid_->addWidget(hint_, 1, 3, 1, 2, Qt::AlignTop);
}

void LeverBoard::addLines() {
    int row = 1;
    for (const advice::LeverRow& lever : advice::builtInLevers()) {
        auto* line = new LeverLine(lever, *this, *grid_, row);
        row += LeverLine::rows;
        lines_.push_back(line);
        connect(line, &LeverLine::triedChanged, this, &LeverBoard::triedChanged);
        connect(line, &LeverLine::halfTyped, this, &LeverBoard::halfTyped);
        connect(line, &LeverLine::lockAsked, this, [this, line](bool locked) { lock(*line, locked); });
        connect(line, &LeverLine::missingAsked, this, [this, line](bool missing) { setMissing(*line, missing); });
    }
    order_ = lines_;
    chainTabs();
}

void LeverBoard::chainTabs() {
    QWidget* before = nullptr;
    for (const LeverLine* line : order_)
        for (QWidget* stop : line->tabStops()) {
            if (before)
                setTabOrder(before, stop);
            before = stop;
        }
}

void LeverBoard::movedFirst() {
    auto order = lines_;
    std::stable_partition(order.begin(), order.end(), [](const LeverLine* line) { return line->moved(); });
    if (order == order_)
        return;
    order_ = order;
    int row = 1;
    for (LeverLine* line : order_) {
        line->place(*grid_, row);
        row += LeverLine::rows;
    }
    chainTabs();
}

void LeverBoard::setJob(const JobPtr& job, bool writable) {
    const bool same = job_ && job_->vessel == job->vessel;
    const TriedValues kept = same ? tried() : TriedValues{};
    job_ = job;
    for (const advice::BoardLine& each : boardOf(job->input))
        if (LeverLine* at = line(each.row.id))
            at->setLine(each, session_, writable);
    for (LeverLine* each : lines_)
        each->setPlanLocked(job->brewed.has_value());
    for (LeverLine* each : lines_)
        same ? each->follow(valueAt(*each, kept)) : each->setTried(valueAt(*each, kept));
    if (!same)
        movedFirst();
}

void LeverBoard::leave() {
    job_.reset();
}

void LeverBoard::setPrices(const std::vector<advice::RestrictionPrice>& prices) {
    prices_ = prices;
    for (LeverLine* each : lines_)
        showNotesAt(*each);
}

void LeverBoard::setTried(const TriedValues& values) {
    for (LeverLine* each : lines_)
        each->setTried(valueAt(*each, values));
    movedFirst();
}

advice::LeverValue LeverBoard::valueAt(const LeverLine& line, const TriedValues& values) {
    if (line.line().lockedAt)
        return *line.line().lockedAt;
    const auto found = std::find_if(values.begin(), values.end(),
                                    [&](const advice::TriedValue& value) { return value.lever == line.line().row.id; });
    return found == values.end() ? line.line().now : found->to;
}

TriedValues LeverBoard::tried() const {
    TriedValues values;
    for (const LeverLine* each : lines_)
        if (each->moved())
            values.push_back({each->line().row.id, each->tried()});
    return values;
}

TriedValues LeverBoard::forced() const {
    TriedValues values;
    for (const LeverLine* each : lines_)
        if (each->line().lockedAt && each->moved())
            values.push_back({each->line().row.id, *each->line().lockedAt});
    return values;
}

std::vector<advice::Move> LeverBoard::movesOf(const advice::Trial& trial) const {
    std::vector<advice::Move> moves;
    for (const LeverLine* each : lines_) {
        if (!each->moved())
            continue;
        advice::Move move{each->line().row.id, each->line().now, each->tried(), {}, {}, {}, {}};
        for (const advice::Trial::Part& part : trial.parts)
            if (part.lever == move.lever) {
                move.next = part.next;
                move.settled = part.settled;
            }
        moves.push_back(std::move(move));
    }
    return moves;
}

void LeverBoard::showTrial(const advice::Trial& trial) {
    hint_->setVisible(trial.parts.empty());
    for (LeverLine* each : lines_) {
        const auto part = std::find_if(trial.parts.begin(), trial.parts.end(), [&](const advice::Trial::Part& one) {
            return one.lever == each->line().row.id;
        });
        each->showPart(part == trial.parts.end() ? nullptr : &*part, trial.depth);
        if (part == trial.parts.end() && notes_.erase(each->line().row.id) > 0)
            showNotesAt(*each);
    }
}

void LeverBoard::showNotes(const DeepTrial& deep) {
    notes_ = deep.atLever;
    for (LeverLine* each : lines_)
        showNotesAt(*each);
}

void LeverBoard::showNotesAt(LeverLine& line) {
    QStringList words;
    if (const auto found = notes_.find(line.line().row.id); found != notes_.end())
        for (const Message& message : found->second)
            words << session_.words(message);
    line.showNotes(words, priceWords(line));
}

QString LeverBoard::priceWords(const LeverLine& line) const {
    for (const advice::RestrictionPrice& price : prices_)
        if (price.lock && price.id == line.line().row.id)
            return priceSentence(price, session_.units());
    return {};
}

bool LeverBoard::showFault(const Fault& fault) {
    LeverLine* at = line(leverAt(fault.path));
    if (at)
        at->showFault(fault, session_.units());
    return at != nullptr;
}

void LeverBoard::clearFaults() {
    for (LeverLine* each : lines_)
        each->clearFault();
}

LeverLine* LeverBoard::unusable() const {
    const auto found =
        std::find_if(lines_.begin(), lines_.end(), [](const LeverLine* each) { return each->unusable(); });
    return found == lines_.end() ? nullptr : *found;
}

LeverLine* LeverBoard::line(const std::string& lever) const {
    const auto found =
        std::find_if(lines_.begin(), lines_.end(), [&](const LeverLine* each) { return each->line().row.id == lever; });
    return found == lines_.end() ? nullptr : *found;
}

void LeverBoard::focusFirst() {
    for (const LeverLine* each : order_)
        if (each->firstStop()->isEnabled()) {
            each->firstStop()->setFocus(Qt::OtherFocusReason);
            return;
        }
}

void LeverBoard::record(const facts::Fact& fact, QCheckBox& box) {
    if (const auto done = session_.record(fact); !done) {
        box.setChecked(!box.isChecked()); // as the book has it
        Q_EMIT failed(done.error());
    }
}

void LeverBoard::lock(LeverLine& line, bool locked) {
    if (locked && line.unusable()) {
        line.lock()->setChecked(false); // there is no number to lock it at
        line.complain();
        return;
    }
    facts::LockFact fact{job_->vessel, session_.desk().today(), line.line().row.id, {}, {}, locked};
    const advice::LeverValue value = locked ? line.toLock() : line.line().lockedAt.value_or(line.line().now);
    if (const auto* number = std::get_if<double>(&value))
        fact.value = *number;
    else
        fact.choice = std::get<std::string>(value);
    record(fact, *line.lock());
}

void LeverBoard::setMissing(LeverLine& line, bool missing) {
    if (const auto* id = std::get_if<std::string>(&line.tried()))
        record(facts::AvailabilityFact{session_.desk().today(), *id, !missing, {}}, *line.missing());
}

} // namespace staveline::ui
