// SPDX-License-Identifier: GPL-3.0-or-later
// What the desk keeps in memory: the facts of the vessels looked at, each loaded once and dropped when it changes.
#pragma once

#include "desk/seen_entries.h"
#include "facts/codec.h"
#include "facts/fields.h"
#include "vessel/room.h"

#include <concepts>
#include <memory>
#include <set>
#include <tuple>

namespace staveline::desk {

struct CurrentVessel;
struct LotFacts;

template <class F> struct Stored {
    book::RowId id = 0;
    F fact;
};
template <class F> using Facts = std::vector<Stored<F>>;

/// Everything recorded about one vessel, each list by day, then id.
struct VesselRecord {
    book::RowId id = 0;
    facts::VesselFact made;  ///< as its row has it
    facts::VesselFact facts; ///< with all that it became
    std::shared_ptr<const Facts<facts::RoomFact>> rooms = std::make_shared<Facts<facts::RoomFact>>(); ///< all there are
    facts::PerVessel<Facts> lists;
    /// What left for another vessel: refills and top-ups there that name this one as their source.
    Facts<facts::RefillFact> refillsElsewhere;
    Facts<facts::TopUpFact> topUpsElsewhere;
    SeenEntries seen; ///< of days that were added to

    template <class F> Facts<F>& elsewhere() {
        if constexpr (std::is_same_v<F, facts::RefillFact>)
            return refillsElsewhere;
        else
            return topUpsElsewhere;
    }
    template <class F> Facts<F>& of() { return std::get<Facts<F>>(lists); }
    template <class F> const Facts<F>& of() const { return std::get<Facts<F>>(lists); }
    /// The latest of a kind on or before `day`; none: nullptr.
    template <class F> const F* latest(Day day) const {
        const F* found = nullptr;
        for (const auto& stored : of<F>())
            if (dayOf(stored.fact) <= day)
                found = &stored.fact;
        return found;
    }
};

/// Ingredients of the brewer's own, each list by day.
struct OwnIngredients {
    Facts<facts::OwnGrainFact> grains;
    Facts<facts::OwnYeastFact> yeasts;
    Facts<facts::OwnHopFact> hops;
    template <class F> Facts<F>& of() {
        if constexpr (std::is_same_v<F, facts::OwnGrainFact>)
            return grains;
        else if constexpr (std::is_same_v<F, facts::OwnYeastFact>)
            return yeasts;
        else
            return hops;
    }
};

/// What all vessels share.
struct SharedFacts {
    facts::Names names;
    Facts<facts::VesselFact> vessels; ///< as they stand
    Facts<facts::BrewFact> brews;     ///< by id
    Facts<facts::EquipmentFact> equipment;
    Facts<facts::AvailabilityFact> availability;
    std::shared_ptr<const Facts<facts::RoomFact>> rooms = std::make_shared<Facts<facts::RoomFact>>(); ///< by day
    std::set<std::string, std::less<>> kept; ///< ingredients copied into the book
    OwnIngredients own;
    ingredient::Pantry builtIn; ///< with those copied into the book in their place
    ingredient::Pantry pantry;  ///< with one's own, as they are now
    /// As of a day: what a brew of that day is made of. With one's own as they were by then, later ones as they began.
    [[nodiscard]] const ingredient::Pantry& pantryOn(Day day) const;
    [[nodiscard]] bool isOwn(std::string_view id) const; ///< the id is one's own
    void mixPantries();                                  ///< after `own` or `builtIn` changed

    [[nodiscard]] const facts::BrewFact* brew(std::string_view name) const;
    /// What brews for a vessel are made on: its own kit where it has one by then, else the latest of all vessels; the
    /// default kit when none is recorded.
    [[nodiscard]] facts::EquipmentFact kit(Day day, std::string_view vessel = {}) const;
    [[nodiscard]] bool kitKnown(Day day, std::string_view vessel) const; ///< one is recorded by then: not the default

private:
    /// From the day of each change on. Copies of these facts share them.
    std::vector<std::pair<Day, std::shared_ptr<const ingredient::Pantry>>> pantries_;
};

/// What a vessel took of a brew, in a refill or a top-up.
struct Poured {
    std::string brew;
    facts::VesselName into;
    Day on{};
    Litres volume{0};
};

/// A view of the book that can be changed in memory: the cache, or a working copy while a batch is validated.
/// Copies are cheap: records are shared until one is touched.
class Cellar {
public:
    explicit Cellar(const book::Book& book) : book_(&book) {}
    Cellar(const Cellar& other);
    Cellar& operator=(const Cellar&) = delete;
    ~Cellar() = default;

    Result<void> loadShared();
    /// Only after loadShared().
    [[nodiscard]] const SharedFacts& shared() const { return *shared_; }
    SharedFacts& changeShared();
    /// Other rooms; the vessels are read again.
    void changeRooms(Facts<facts::RoomFact> rooms);
    /// Loads on first use. Unknown name: fault at "/vessel".
    Result<VesselRecord*> vessel(const facts::VesselName& name);
    Result<VesselRecord*> vesselById(book::RowId id);
    Result<void> loadAll();
    /// What any vessel took of a brew, or of all of them; read from the book, so that no vessel is loaded.
    [[nodiscard]] Result<std::vector<Poured>> pourings(const std::optional<std::string>& brew = {}) const;
    /// A brew as the book has it, also while a working copy is without it.
    [[nodiscard]] std::optional<facts::BrewFact> brewOnRecord(const std::string& name) const;
    /// Where a brew went first.
    [[nodiscard]] std::optional<Poured> poured(const std::string& brew) const;
    /// All of drawn beer (desk/lot_facts.h), read on first use.
    Result<const LotFacts*> lots();
    LotFacts* changeLots(); ///< none: not read yet
    void dropLots() { lots_.reset(); }
    /// Takes one fact out of a working copy, as if it were not there.
    template <class F> void without(const std::set<book::RowId>& vessels, book::RowId row);
    void drop(book::RowId id);
    void dropShared(); ///< read again on next use; vessels stay
    void clear();
    /// A working copy becomes the cache: nothing is shared with another copy any more.
    void adopt();

    /// The vessel worked out last; gone with any fact. Never of a working copy.
    [[nodiscard]] const std::shared_ptr<const CurrentVessel>& current() const { return current_; }
    void keep(std::shared_ptr<const CurrentVessel> current) { current_ = std::move(current); }
    /// What was worked out of a room; gone with any fact, never of a working copy. None: nullptr.
    [[nodiscard]] const vessel::RoomOffset* roomOffset(const std::string& room, Day today) const;
    void keepRoomOffset(const std::string& room, Day today, const vessel::RoomOffset& offset);

private:
    Result<VesselRecord> load(book::RowId id) const;
    void forgetWorkedOut();
    const book::Book* book_;
    std::shared_ptr<SharedFacts> shared_;
    std::map<book::RowId, std::shared_ptr<VesselRecord>> records_;
    std::set<std::pair<std::string_view, book::RowId>> takenOut_; ///< by without(): still in the book
    bool copied_ = false;                                         ///< what is not in own_ belongs to the original too
    std::set<book::RowId> own_;
    bool ownShared_ = true;
    std::shared_ptr<LotFacts> lots_;
    bool ownLots_ = true;
    std::shared_ptr<const CurrentVessel> current_;
    std::map<std::pair<std::string, Day>, vessel::RoomOffset> roomOffsets_;
};

} // namespace staveline::desk
