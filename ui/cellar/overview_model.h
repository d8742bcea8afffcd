// SPDX-License-Identifier: GPL-3.0-or-later
// All vessels as a table: what is due, what is held, how each stands to its target, and the year ahead. Rows are those
// of the cellar; what a vessel tastes like is worked out by and by, when the rows are known.
#pragma once

#include "estimate/estimates.h"
#include "ui/present/cellar_model.h"

#include <QAbstractTableModel>

#include <map>
#include <optional>
#include <set>
#include <vector>

namespace staveline::ui {

class PlanScout;

class OverviewModel : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column { due, name, level, acidity, funk, body, plan, age, year };
    static constexpr int columns = year + 1;
    enum Role { sortRole = Qt::UserRole, glyphRole, shareRole }; ///< a number; a Glyph or none; a part, 0..1

    OverviewModel(CellarModel& cellar, Session& session, QObject* parent = nullptr);
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

    [[nodiscard]] const CellarModel& cellar() const { return cellar_; }
    /// Null: not read yet.
    [[nodiscard]] const desk::VesselSummary* at(int row) const { return cellar_.known(row); }
    void workOut(bool wanted); ///< whether the estimates are wanted: while the page is in front
    [[nodiscard]] bool isWorkedOut() const;
    [[nodiscard]] bool knowsPlans() const;         ///< what the adviser says is known too
    [[nodiscard]] bool isOffTarget(int row) const; ///< in any dimension; also while it is not known
    [[nodiscard]] std::vector<desk::VesselSummary> allKnown() const;

private:
    void forget();
    void workOutSome();
    void askForPlans();
    [[nodiscard]] const estimate::Estimates* estimatesOf(int row) const;
    [[nodiscard]] QVariant shown(int row, const desk::VesselSummary& vessel, int column) const;
    [[nodiscard]] QVariant sorted(int row, const desk::VesselSummary& vessel, int column) const;
    [[nodiscard]] QVariant glyph(int row, const desk::VesselSummary& vessel, int column) const;
    [[nodiscard]] QString tip(int row, const desk::VesselSummary& vessel, int column) const;
    [[nodiscard]] QString heard(const QModelIndex& index) const;

    CellarModel& cellar_;
    std::map<facts::VesselName, std::optional<estimate::Estimates>> estimates_; ///< none: cannot be said
    std::set<facts::VesselName> workedOut_;                                     ///< since the last change
    QTimer* worker_;
    PlanScout* scout_;
    bool wanted_ = false;
};

/// "0.9 above ±0.5", "on target", "wait": how a dimension stands.
[[nodiscard]] QString standingWords(const tasting::Verdict& verdict);

} // namespace staveline::ui
