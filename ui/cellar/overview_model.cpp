// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cellar/overview_model.h"

#include "ui/cellar/mood_glyph.h"
#include "ui/cellar/plan_scout.h"
#include "ui/present/score_words.h"
#include "ui/present/verdict_words.h"

#include <QElapsedTimer>
#include <QTimer>

#include <algorithm>
#include <cmath>
#include <limits>

namespace staveline::ui {

using desk::VesselSummary;
using tasting::VerdictKind;
using vessel::DueKind;

namespace {

constexpr int restMs = 250; // after a change, before anything is worked out again
constexpr int sliceMs = 12;

std::optional<Dimension> dimensionOf(int column) {
    if (column < OverviewModel::acidity || column > OverviewModel::body)
        return std::nullopt;
    return allDimensions[static_cast<std::size_t>(column - OverviewModel::acidity)];
}

double partHeld(const VesselSummary& vessel) {
    return vessel.facts.capacity.l > 0 ? vessel.now.volume.l / vessel.facts.capacity.l : 0;
}

QString ageOf(const VesselSummary& vessel) {
    return vessel.opened && vessel.now.volume.l > 0 ? spanWords(vessel.now.meanAge) : QString();
}

} // namespace

QString standingWords(const tasting::Verdict& verdict) {
    switch (verdict.kind) {
    case VerdictKind::hold:
        return OverviewModel::tr("on target");
    case VerdictKind::faultFirst:
    case VerdictKind::neverTasted:
    case VerdictKind::waitUntil:
        return wordOf(verdict.kind);
    default:
        break;
    }
    const QString by = scoreWords(std::abs(verdict.gap)), error = scoreWords(tasting::z80 * verdict.sd);
    return verdict.gap < 0 ? OverviewModel::tr("%1 above \u00b1%2").arg(by, error)
                           : OverviewModel::tr("%1 below \u00b1%2").arg(by, error);
}

OverviewModel::OverviewModel(CellarModel& cellar, Session& session, QObject* parent)
    : QAbstractTableModel(parent), cellar_(cellar), worker_(new QTimer(this)), scout_(new PlanScout(session, this)) {
    connect(scout_, &PlanScout::known, this, [this](const QString& vessel) {
        if (const int row = cellar_.rowOf(toStd(vessel)); row >= 0)
            Q_EMIT dataChanged(index(row, plan), index(row, plan));
    });
    connect(worker_, &QTimer::timeout, this, &OverviewModel::workOutSome);
    connect(&cellar, &CellarModel::modelAboutToBeReset, this, &OverviewModel::beginResetModel);
    connect(&cellar, &CellarModel::modelReset, this, [this] {
        endResetModel();
        forget();
    });
    connect(&cellar, &CellarModel::layoutAboutToBeChanged, this, [this] { Q_EMIT layoutAboutToBeChanged(); });
    connect(&cellar, &CellarModel::layoutChanged, this, [this] { Q_EMIT layoutChanged(); });
    connect(&cellar, &CellarModel::dataChanged, this, [this](const QModelIndex& from, const QModelIndex& to) {
        Q_EMIT dataChanged(index(from.row(), 0), index(to.row(), columns - 1));
    });
    connect(&cellar.session(), &Session::changed, this, &OverviewModel::forget);
    connect(&cellar, &CellarModel::allRead, this, [this] {
        if (wanted_ && !isWorkedOut())
            worker_->start(restMs);
    });
}

int OverviewModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : cellar_.rowCount();
}
int OverviewModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columns;
}

void OverviewModel::forget() {
    workedOut_.clear();
    scout_->forget();
    worker_->stop();
}

void OverviewModel::workOut(bool wanted) {
    wanted_ = wanted;
    if (wanted) {
        cellar_.readAll();
    } else {
        worker_->stop();
        scout_->forget();
    }
}

bool OverviewModel::isWorkedOut() const {
    return cellar_.isAllRead() && static_cast<int>(workedOut_.size()) >= rowCount();
}

/// What can be seen first: rows stand in that order.
void OverviewModel::workOutSome() {
    worker_->setInterval(0);
    QElapsedTimer sliced;
    sliced.start();
    for (int row = 0; row < rowCount() && sliced.elapsed() < sliceMs; ++row) {
        const VesselSummary* vessel = at(row);
        if (!vessel || workedOut_.contains(vessel->name))
            continue;
        auto estimates = vessel->opened && !vessel->toFill ? cellar_.session().desk().estimates(vessel->name)
                                                           : Result<desk::EstimatesView>(fail(Fault{}));
        estimates_[vessel->name] =
            estimates ? std::optional(std::move(*estimates)) : std::optional<estimate::Estimates>();
        workedOut_.insert(vessel->name);
        Q_EMIT dataChanged(index(row, acidity), index(row, body));
    }
    if (!isWorkedOut())
        return;
    worker_->stop();
    askForPlans();
}

void OverviewModel::askForPlans() {
    std::deque<facts::VesselName> vessels;
    for (int row = 0; row < rowCount(); ++row)
        if (const VesselSummary* vessel = at(row); vessel && vessel->opened && !vessel->toFill)
            vessels.push_back(vessel->name);
    scout_->ask(std::move(vessels));
}

bool OverviewModel::knowsPlans() const {
    return isWorkedOut() && !scout_->busy();
}

const estimate::Estimates* OverviewModel::estimatesOf(int row) const {
    const VesselSummary* vessel = at(row);
    const auto found = vessel ? estimates_.find(vessel->name) : estimates_.end();
    return found != estimates_.end() && found->second ? &*found->second : nullptr;
}

bool OverviewModel::isOffTarget(int row) const {
    const auto* estimates = estimatesOf(row);
    return !estimates || std::ranges::any_of(allDimensions, [&](Dimension d) {
        return estimates->verdicts[d].kind == VerdictKind::open;
    });
}

std::vector<VesselSummary> OverviewModel::allKnown() const {
    std::vector<VesselSummary> all;
    for (int row = 0; row < rowCount(); ++row)
        if (const VesselSummary* vessel = at(row))
            all.push_back(*vessel);
    return all;
}

QVariant OverviewModel::shown(int row, const VesselSummary& vessel, int column) const {
    switch (column) {
    case due:
        return cellar_.headline(vessel);
    case OverviewModel::name:
        return qs(vessel.name);
    case level:
        return tr("%1 of %2")
            .arg(cellar_.session().amount(vessel.now.volume), cellar_.session().amount(vessel.facts.capacity));
    case age:
        return ageOf(vessel);
    case plan: {
        const auto state = scout_->of(vessel.name);
        return state ? wordsOf(*state) : QString();
    }
    case year:
        return {};
    default:
        break;
    }
    const auto* estimates = estimatesOf(row);
    return estimates ? standingWords(estimates->verdicts[*dimensionOf(column)]) : QString();
}

/// Numbers, so that ten days come after nine.
QVariant OverviewModel::sorted(int row, const VesselSummary& vessel, int column) const {
    constexpr double last = std::numeric_limits<double>::max();
    switch (column) {
    case due:
    case year:
        return vessel.dueIn().value_or(last);
    case OverviewModel::name:
        return qs(vessel.name).toLower();
    case level:
        return partHeld(vessel);
    case age:
        return vessel.now.meanAge.d;
    case plan:
        return static_cast<int>(scout_->of(vessel.name).value_or(desk::PlanState::unsaid));
    default:
        break;
    }
    const auto* estimates = estimatesOf(row);
    return estimates ? -std::abs(estimates->verdicts[*dimensionOf(column)].gap) : last;
}

QVariant OverviewModel::glyph(int row, const VesselSummary& vessel, int column) const {
    if (column == due)
        return static_cast<int>(ui::glyphOf(moodOf(vessel)));
    const auto dimension = dimensionOf(column);
    const auto* estimates = dimension ? estimatesOf(row) : nullptr;
    return estimates ? QVariant(static_cast<int>(ui::glyphOf(estimates->verdicts[*dimension]))) : QVariant();
}

QString OverviewModel::tip(int row, const VesselSummary& vessel, int column) const {
    if (const auto dimension = dimensionOf(column))
        if (const auto* estimates = estimatesOf(row))
            return cellar_.session().words(estimates->verdicts[*dimension].reason);
    return shown(row, vessel, column).toString();
}

/// A cell by itself says what it is of.
QString OverviewModel::heard(const QModelIndex& index) const {
    return tr("%1: %2").arg(headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString(),
                            index.data().toString());
}

QVariant OverviewModel::data(const QModelIndex& index, int role) const {
    const VesselSummary* vessel = at(index.row());
    if (!vessel)
        return role == Qt::DisplayRole && index.column() == OverviewModel::name ? QVariant(tr("reading")) : QVariant();
    switch (role) {
    case Qt::DisplayRole:
        return shown(index.row(), *vessel, index.column());
    case sortRole:
        return sorted(index.row(), *vessel, index.column());
    case glyphRole:
        return glyph(index.row(), *vessel, index.column());
    case shareRole:
        return index.column() == level ? QVariant(partHeld(*vessel)) : QVariant();
    case Qt::ToolTipRole:
        return tip(index.row(), *vessel, index.column());
    case Qt::AccessibleTextRole:
        return heard(index);
    default:
        return {};
    }
}

QVariant OverviewModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole)
        return {};
    switch (section) {
    case due:
        return tr("Due");
    case name:
        return tr("Vessel");
    case level:
        return tr("Level");
    case age:
        return tr("Mean age");
    case plan:
        return tr("Refill");
    case year:
        return tr("The year ahead");
    default:
        return nameOf(*dimensionOf(section));
    }
}

} // namespace staveline::ui
