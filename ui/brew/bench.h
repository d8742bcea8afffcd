// SPDX-License-Identifier: GPL-3.0-or-later
// The setting and the kit in hand: each edit is recalculated at once and stored when it is finished.
#pragma once

#include "advice/advise.h"
#include "desk/brew.h"
#include "desk/measured_brew.h"
#include "ui/present/session.h"

#include <functional>
#include <optional>
#include <vector>

namespace staveline::ui {

class BrewBench : public QObject {
    Q_OBJECT
public:
    using Change = std::function<void(Setting&)>;
    /// Writes the setting to the book. Without one, what is in hand stays in hand.
    using Store = std::function<Result<Recorded>(const Setting&, const EditNote&)>;

    explicit BrewBench(Session& session, QObject* parent = nullptr);
    void setStore(Store store) { store_ = std::move(store); }
    /// Starts anew; edits in hand are left.
    void begin(const VesselName& vessel, const Setting& setting, const EquipmentFact& kit,
               const BrewMeasures& measured = {});
    /// The book changed: edits that are not stored yet are made again on what it says now.
    void rebase(const Setting& setting, const EquipmentFact& kit);
    /// What the brew in hand came out as: the draft follows it, the recipe does not.
    void setMeasured(const BrewMeasures& measured);
    void setLocked(bool locked) { locked_ = locked; }
    [[nodiscard]] bool locked() const { return locked_; }

    /// `name`: of what is edited, for undo. The same `field` within 2 s is one edit.
    void change(const Change& change, const QString& name, const std::string& field);
    /// What the field holds now is no value: what it held on the way there is not to be stored.
    void takeBack(const std::string& field);
    void changeKit(const EquipmentFact& kit);
    /// Stores what is in hand when it can be brewed; what cannot, or what the book refuses, stays in hand for the next
    /// call.
    void finish();

    [[nodiscard]] const VesselName& vessel() const { return vessel_; }
    [[nodiscard]] const Setting& setting() const { return setting_; }
    [[nodiscard]] const Recipe& recipe() const { return setting_.recipe; }
    [[nodiscard]] const EquipmentFact& kit() const { return kit_; }
    [[nodiscard]] const BrewMeasures& measured() const { return measured_; }
    [[nodiscard]] Session& session() const { return session_; }
    /// Of the last setting that can be brewed.
    [[nodiscard]] const std::optional<BrewDraft>& draft() const { return draft_; }
    [[nodiscard]] const std::optional<Fault>& fault() const { return fault_; }
    /// The fault is the book's (a full disk), not the recipe's: finishing again tries again.
    [[nodiscard]] bool refused() const { return refused_; }
    [[nodiscard]] bool pending() const { return !pending_.empty(); }

Q_SIGNALS:
    /// After each edit, whether it can be brewed or not (see `fault`). `anew`: another setting, half-typed text goes.
    void recalculated(bool anew);

private:
    void recalculate(bool anew = false);
    void tellUnstored();

    struct Pending {
        std::string field;
        Change change;
    };
    Session& session_;
    Store store_;
    VesselName vessel_;
    Setting base_, setting_;
    EquipmentFact kit_;
    BrewMeasures measured_;
    std::vector<Pending> pending_; ///< not stored, in the order they were made
    EditNote note_;
    bool locked_ = false;
    std::optional<BrewDraft> draft_;
    std::optional<Fault> fault_;
    bool refused_ = false;
};

} // namespace staveline::ui
