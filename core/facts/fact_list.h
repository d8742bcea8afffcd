// SPDX-License-Identifier: GPL-3.0-or-later
// The one list of facts. From it follow the variant, the tables, what is loaded with a vessel, what can be amended, the
// forms, and the kinds of record files.
#pragma once

#include "facts/facts.h"
#include "vessel/entry_kind.h"

#include <optional>
#include <string_view>
#include <tuple>
#include <type_traits>
#include <utility>
#include <variant>

namespace staveline::facts {

/// Where a fact is kept.
enum class Kept {
    asVessel,  ///< the row of a vessel itself
    inVessel,  ///< as a change of that row; it has no table of its own
    byVessel,  ///< in a list of its vessel
    inSitting, ///< as a change of one in the list of sittings; it has no table of its own
    byAll      ///< what all vessels share
};
/// Whether its fields are flat, so that a form shows them as they stand.
enum class Form { flat, own };

struct FactTraits {
    std::string_view kind; ///< in record files, as its table and in the keys of its texts
    Kept kept = Kept::byVessel;
    Form form = Form::own;
    std::optional<vessel::EntryKind> entry = {}; ///< of the ledger
    [[nodiscard]] constexpr bool stored() const { return kept != Kept::inVessel && kept != Kept::inSitting; }
    /// A vessel is changed by a fact of its own.
    [[nodiscard]] constexpr bool amendable() const { return kept == Kept::byVessel || kept == Kept::byAll; }
};

// clang-format off
#define STAVELINE_FACTS(FACT)                                                          \
    FACT(RoomFact,         "room",         Kept::byAll,    Form::flat)                 \
    FACT(VesselFact,       "vessel",       Kept::asVessel, Form::flat)                 \
    FACT(VesselEditFact,   "vessel_edit",  Kept::inVessel, Form::own)                  \
    FACT(RefitFact,        "refit",        Kept::byVessel, Form::own)                  \
    FACT(RetireFact,       "retire",       Kept::inVessel, Form::own)                  \
    FACT(BringBackFact,    "bring_back",   Kept::inVessel, Form::own)                  \
    FACT(OwnGrainFact,     "own_grain",    Kept::byAll,    Form::flat)                 \
    FACT(OwnYeastFact,     "own_yeast",    Kept::byAll,    Form::flat)                 \
    FACT(OwnHopFact,       "own_hop",      Kept::byAll,    Form::flat)                 \
    FACT(BrewFact,         "brew",         Kept::byAll,    Form::own)                  \
    FACT(CultureFact,      "culture",      Kept::byVessel, Form::flat)                 \
    FACT(EquipmentFact,    "equipment",    Kept::byAll,    Form::flat)                 \
    FACT(BaseRecipeFact,   "base_recipe",  Kept::byVessel, Form::own)                  \
    FACT(TargetFact,       "target",       Kept::byVessel, Form::own)                  \
    FACT(OpeningFact,      "opening",      Kept::byVessel, Form::flat, vessel::EntryKind::opening) \
    FACT(SittingFact,      "sitting",      Kept::byVessel, Form::own)                  \
    FACT(SittingUseFact,   "sitting_use",  Kept::inSitting, Form::own)                 \
    FACT(ReadingFact,      "reading",      Kept::byVessel, Form::flat, vessel::EntryKind::reading) \
    FACT(SampleFact,       "sample",       Kept::byVessel, Form::flat, vessel::EntryKind::sample)  \
    FACT(DipFact,          "dip",          Kept::byVessel, Form::flat, vessel::EntryKind::dip)     \
    FACT(DrawOffFact,      "draw_off",     Kept::byVessel, Form::flat, vessel::EntryKind::drawOff) \
    FACT(RefillFact,       "refill",       Kept::byVessel, Form::flat, vessel::EntryKind::refill)  \
    FACT(TopUpFact,        "top_up",       Kept::byVessel, Form::flat, vessel::EntryKind::topUp)   \
    FACT(EventFact,        "event",        Kept::byVessel, Form::flat, vessel::EntryKind::event)   \
    FACT(LotReadingFact,   "lot_reading",  Kept::byAll,    Form::flat)                 \
    FACT(LotAdditionFact,  "lot_addition", Kept::byAll,    Form::flat)                 \
    FACT(LotMoveFact,      "lot_move",     Kept::byAll,    Form::flat)                 \
    FACT(PackagingFact,    "packaging",    Kept::byAll,    Form::flat)                 \
    FACT(OpenedFact,       "opened",       Kept::byAll,    Form::flat)                 \
    FACT(RoundFact,        "round",        Kept::byVessel, Form::flat)                 \
    FACT(DrawDateFact,     "draw_date",    Kept::byVessel, Form::flat)                 \
    FACT(WorkDateFact,     "work_date",    Kept::byVessel, Form::flat)                 \
    FACT(LockFact,         "lock",         Kept::byVessel, Form::own)                  \
    FACT(AvailabilityFact, "availability", Kept::byAll,    Form::own)                  \
    FACT(ChoiceFact,       "choice",       Kept::byVessel, Form::own)
// clang-format on

/// Of the book's tables, which follow from this list and from fields.h: raised with every kind and field that is added.
inline constexpr int tablesMinor = 12;

template <class F> inline constexpr FactTraits factTraits{};
#define STAVELINE_TRAITS(Type, ...) template <> inline constexpr FactTraits factTraits<Type>{__VA_ARGS__};
STAVELINE_FACTS(STAVELINE_TRAITS)
#undef STAVELINE_TRAITS

template <class None, class... F> struct VariantOf { using Type = std::variant<F...>; };
#define STAVELINE_TYPE(Type, ...) , Type
using Fact = VariantOf<void STAVELINE_FACTS(STAVELINE_TYPE)>::Type;
#undef STAVELINE_TYPE

template <class F> inline constexpr std::string_view kindOf = factTraits<F>.kind;
/// Of facts that are stored; specialised for what else has a table.
template <class F> inline constexpr std::string_view tableOf = factTraits<F>.kind;
template <class F>
inline constexpr bool perVessel = !factTraits<F>.kind.empty() && factTraits<F>.kept == Kept::byVessel;

/// Calls `then` with a std::type_identity of each kind of fact, in the order of the list.
template <class Then> constexpr void forEachFact(Then&& then) {
    [&]<class... F>(std::type_identity<std::variant<F...>>) {
        (then(std::type_identity<F>{}), ...);
    }(std::type_identity<Fact>{});
}

/// std::tuple of an `Of<F>` for each kind of fact that is kept by vessel.
template <template <class> class Of, class AnyFact> struct PerVesselOf;
template <template <class> class Of, class... F> struct PerVesselOf<Of, std::variant<F...>> {
    using Type =
        decltype(std::tuple_cat(std::declval<std::conditional_t<perVessel<F>, std::tuple<Of<F>>, std::tuple<>>>()...));
};
template <template <class> class Of> using PerVessel = typename PerVesselOf<Of, Fact>::Type;

[[nodiscard]] inline const FactTraits& traitsOf(const Fact& fact) {
    return std::visit([]<class F>(const F&) -> const FactTraits& { return factTraits<F>; }, fact);
}
/// Calls `then` with the std::type_identity of the fact behind an entry.
template <class Then> void withEntry(vessel::EntryKind kind, Then&& then) {
    forEachFact([&]<class F>(std::type_identity<F> type) {
        if constexpr (factTraits<F>.entry)
            if (factTraits<F>.entry == kind)
                then(type);
    });
}

constexpr bool entriesAgree() {
    std::size_t entries = 0;
    bool agree = true;
    forEachFact([&]<class F>(std::type_identity<F>) {
        if constexpr (factTraits<F>.entry) {
            ++entries;
            agree = agree && traitsOf(*factTraits<F>.entry).word == kindOf<F>;
        }
    });
    return agree && entries == vessel::entryKinds.size();
}
static_assert(entriesAgree(), "a fact for each kind of entry, with its word");

} // namespace staveline::facts
