// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/lot_lines.h"

#include "finishing/fruit.h"
#include "quantity/text.h"

#include <algorithm>

namespace staveline::desk {

using facts::DrawOffFact;
using facts::LotAdditionFact;
using facts::LotMoveFact;
using facts::LotReadingFact;
using facts::OpenedFact;
using facts::PackagingFact;
using facts::RefillFact;
using facts::TopUpFact;

namespace {

Message textOf(const DrawOffFact& fact, bool) {
    return say("desk.lot.line.drawn").with("volume", fact.volume).with("vessel", fact.vessel);
}
Message textOf(const LotMoveFact& fact, bool incoming) {
    return say(incoming ? "desk.lot.line.came" : "desk.lot.line." + std::string(wordOf(fact.why)))
        .with("volume", fact.volume)
        .with("lot", incoming ? fact.lot : fact.to);
}
Message textOf(const LotAdditionFact& fact, bool) {
    return say("desk.lot.line.added").with("what", render(additionWords(fact)));
}
Message textOf(const LotReadingFact& fact, bool) {
    std::string values;
    const auto add = [&](const char* label, const auto& value) {
        if (value)
            values += (values.empty() ? "" : ", ") + std::string(label) + show(Amount{*value});
    };
    add("", fact.measured.gravity);
    add("pH ", fact.measured.ph);
    add("TA ", fact.measured.ta);
    add("", fact.measured.temperature);
    add("", fact.measured.bitterness);
    if (values.empty())
        return say("desk.lot.line.looked");
    return say(fact.keptWarm ? "desk.lot.line.warm" : "desk.lot.line.read").with("values", values);
}
Message textOf(const PackagingFact& fact, bool) {
    return say("desk.lot.line." + std::string(wordOf(fact.kind)))
        .with("count", std::int64_t{fact.count})
        .with("size", fact.size)
        .with("name", fact.name);
}
template <class F> Message textOf(const F& fact, bool) {
    return say("desk.lot.line.poured").with("volume", fact.volume).with("vessel", fact.vessel);
}
Message openedText(const OpenedFact& fact) {
    const std::string key = "desk.lot.line." + std::string(wordOf(fact.what));
    Message text =
        say(fact.fizz ? key + ".fizz" : key).with("count", std::int64_t{fact.count}).with("name", fact.packaging);
    if (fact.fizz)
        text.arguments.push_back({"fizz", render(say("desk.fizz." + std::string(wordOf(*fact.fizz)))), {}});
    return text;
}

class Lines {
public:
    Lines(const std::string& lot, const LotBeers& beers) : lot_(lot), beers_(beers) {}

    std::vector<LotLine> all() {
        const LotFacts& facts = beers_.facts();
        addAll(facts.draws);
        addAll(facts.moves);
        addAll(facts.additions);
        addAll(facts.readings);
        addAll(facts.refills);
        addAll(facts.topUps);
        addAll(facts.packagings);
        addOpened(facts);
        std::stable_sort(lines_.begin(), lines_.end(), [](const auto& a, const auto& b) { return a.on < b.on; });
        return std::move(lines_);
    }

private:
    template <class F> void addAll(const Facts<F>& list) {
        for (const auto& stored : list) {
            const F& fact = stored.fact;
            bool incoming = false;
            if constexpr (requires { fact.to; })
                incoming = fact.to == lot_;
            if ((fact.lot == lot_ || incoming) && fact.on <= beers_.today())
                add(stored.id, fact, incoming, lotEntryId<F>(stored.id));
        }
    }
    template <class F> void add(book::RowId id, const F& fact, bool incoming, std::int64_t entry) {
        LotLine line;
        line.on = fact.on;
        line.text = textOf(fact, incoming);
        line.table = facts::tableOf<F>;
        line.id = id;
        if (const auto after = beers_.replay().after.find(entry); after != beers_.replay().after.end() && !incoming)
            line.after = after->second;
        else if (const auto taken = beers_.replay().received.find(entry); taken != beers_.replay().received.end())
            line.after = taken->second;
        if constexpr (requires { fact.measured; })
            line.measured = fact.measured;
        line.note = fact.note;
        lines_.push_back(std::move(line));
    }
    void addOpened(const LotFacts& facts) {
        for (const auto& [id, opened] : facts.opened)
            if (const PackagingFact* filled = facts.packaging(opened.packaging);
                filled && filled->lot == lot_ && opened.on <= beers_.today()) {
                LotLine line;
                line.on = opened.on;
                line.text = openedText(opened);
                line.table = facts::tableOf<OpenedFact>;
                line.id = id;
                line.note = opened.note;
                if (const auto lot = beers_.replay().lots.find(lot_); lot != beers_.replay().lots.end())
                    line.after = lot->second.volume();
                lines_.push_back(std::move(line));
            }
    }

    const std::string& lot_;
    const LotBeers& beers_;
    std::vector<LotLine> lines_;
};

} // namespace

Message additionWords(const LotAdditionFact& fact) {
    std::string what = fact.ingredient;
    if (fact.what == facts::Added::fruit)
        if (const auto fruit = finishing::fruit(fact.ingredient))
            what = fruit->name;
    if (what.empty())
        what = render(say("desk.added." + std::string(wordOf(fact.what))));
    if (fact.mass)
        return say("desk.lot.of").with("amount", *fact.mass).with("what", what);
    if (fact.volume)
        return say("desk.lot.of").with("amount", *fact.volume).with("what", what);
    return say("desk.plain").with("text", what);
}

std::vector<LotLine> lotLines(const std::string& lot, const LotBeers& beers) {
    return Lines(lot, beers).all();
}

PackageView packageOf(book::RowId id, const PackagingFact& filled, const LotFacts& lots) {
    PackageView view{filled.name,           filled.lot,     filled.on, filled.kind, filled.size, filled.count,
                     filled.count,          filled.planned, {},        {},          {},          filled.verdict,
                     filled.overrideReason, filled.until,   id};
    double found = 0;
    int measured = 0;
    std::optional<Day> told;
    for (const auto& [row, opened] : lots.opened) {
        if (opened.packaging != filled.name)
            continue;
        view.left -= opened.count;
        if (opened.what != facts::PackageUse::broken)
            view.firstOpened = std::min(view.firstOpened.value_or(opened.on), opened.on);
        if (opened.found) {
            found += opened.found->vol;
            ++measured;
        }
        if (opened.fizz && (!told || *told <= opened.on)) {
            view.fizz = opened.fizz;
            told = opened.on;
        }
    }
    if (measured > 0)
        view.found = Co2Volumes{found / measured};
    return view;
}

} // namespace staveline::desk
