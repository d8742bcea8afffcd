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

class RecipeEditorModel : public QObject {
    Q_OBJECT
public:
    using Change = std::function<void(advice::Setting&)>;
    /// Writes the setting to the book. Without one, what is in hand stays in hand.
    using Store = std::function<Result<desk::Recorded>(const advice::Setting&, const desk::EditNote&)>;

    explicit RecipeEditorModel(Session& session, QObject* parent = nullptr);
    void setStore(Store store) { store_ = std::move(store); }
    /// Starts anew; edits in hand are left.
    void begin(const facts::VesselName& vessel, const advice::Setting& setting, const facts::EquipmentFact& kit,
               const desk::BrewMeasures& measured = {});
    /// The book changed: edits that are not stored yet are made again on what it says now.
    void rebase(const advice::Setting& setting, const facts::EquipmentFact& kit);
    /// What the brew in hand came out as: the draft follows it, the recipe does not.
    void setMeasured(const desk::BrewMeasures& measured);
    void setLocked(bool locked) { locked_ = locked; }
    [[nodiscard]] bool locked() const { return locked_; }

    /// `name`: of what is edited, for undo. The same `field` within 2 s is one edit.
    void change(const Change& change, const QString& name, const std::string& field);
    /// What the field holds now is no value: what it held on the way there is not to be stored.
    void takeBack(const std::string& field);
    void changeKit(const facts::EquipmentFact& kit);
    /// Stores what is in hand when it can be brewed; what cannot, or what the book refuses, stays in hand for the next
    /// call.
    void finish();

    [[nodiscard]] const facts::VesselName& vessel() const { return vessel_; }
    [[nodiscard]] const advice::Setting& setting() const { return setting_; }
    [[nodiscard]] const brewing::Recipe& recipe() const { return setting_.recipe; }
    [[nodiscard]] const facts::EquipmentFact& kit() const { return kit_; }
    [[nodiscard]] const desk::BrewMeasures& measured() const { return measured_; }
    [[nodiscard]] Session& session() const { return session_; }
    /// Of the last setting that can be brewed.
    [[nodiscard]] const std::optional<desk::BrewDraft>& draft() const { return draft_; }
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
    facts::VesselName vessel_;
    advice::Setting base_, setting_;
    facts::EquipmentFact kit_;
    desk::BrewMeasures measured_;
    std::vector<Pending> pending_; ///< not stored, in the order they were made
    desk::EditNote note_;
    bool locked_ = false;
    std::optional<desk::BrewDraft> draft_;
    std::optional<Fault> fault_;
    bool refused_ = false;
};

} // namespace staveline::ui
