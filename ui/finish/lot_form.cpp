// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/finish/lot_form.h"

#include "finishing/fruit.h"
#include "finishing/package.h"
#include "finishing/priming.h"
#include "ui/widgets/message_label.h"

namespace staveline::ui {
namespace {

template <class List> void offer(std::vector<Offer>& into, const List& list) {
    for (const auto& one : list)
        into.push_back({qs(one.name), one.id});
}

QString titleOf(const facts::Fact& fact) {
    return own("ui.lot." + std::string(facts::traitsOf(fact).kind));
}

} // namespace

LotForm::LotForm(Session& session, QWidget* parent) : EntryFrame(session, 1.1, parent) {}

void LotForm::knowLots(const std::vector<desk::LotView>& lots) {
    lots_ = lots;
}

FormContext LotForm::context(const facts::Fact& fact) const {
    FormContext made;
    made.today = session().desk().today();
    made.units = session().units();
    made.labels = facts::traitsOf(fact).kind;
    made.hidden = {"lot", "verdict", "until"};
    offer(made.offers["ingredient"], finishing::builtInFruits());
    offer(made.offers["ingredient"], finishing::builtInSugars());
    offer(made.offers["sugar"], finishing::builtInSugars());
    offer(made.offers["make"], finishing::builtInBottles());
    for (const desk::LotView& lot : lots_) {
        if (lot.name != lot_)
            made.offers["to"].push_back({qs(lot.name), lot.name});
        for (const desk::PackageView& package : lot.packages)
            if (lot.name == lot_ && package.left > 0)
                made.offers["packaging"].push_back({qs(package.name), package.name});
    }
    return made;
}

QString LotForm::inWords() const {
    return tr("%1 of %2").arg(titleOf(fields().fact()), qs(lot_));
}

void LotForm::open(const facts::Fact& fact, const facts::LotName& lot, const std::optional<Amended>& recorded) {
    lot_ = lot;
    EntryFrame::open(fact, context(fact), tr("%1, %2").arg(titleOf(fact), qs(lot)), recorded);
}

void LotForm::begin(const facts::Fact& fact, const facts::LotName& lot, const std::vector<facts::Fact>& before) {
    unlessStarted(titleOf(fact), [this, fact, lot, before] {
        before_ = before;
        open(fact, lot, std::nullopt);
    });
}

void LotForm::amend(const std::string& table, std::int64_t id, const facts::LotName& lot) {
    unlessStarted(tr("the entry selected"), [this, table, id, lot] {
        const auto fact = session().desk().fact(table, id);
        if (!fact)
            return void(Q_EMIT session().failed(fact.error()));
        before_.clear();
        open(*fact, lot, Amended{table, id});
    });
}

void LotForm::edited() {
    fields().recheck();
    message().clear();
}

/// In one edit, so that one undo takes all of it back. A fault of the entry itself goes to its field.
Result<desk::Recorded> LotForm::store(const facts::Fact& fact) {
    if (before_.empty())
        return EntryFrame::store(fact);
    std::vector<facts::Fact> all = before_;
    all.push_back(fact);
    auto done = session().record(all);
    const std::string own = "/" + std::to_string(before_.size());
    if (!done && done.error().path.starts_with(own + "/"))
        done.error().path.erase(0, own.size());
    return done;
}

void LotForm::stored(const facts::Fact&) {
    if (!before_.empty())
        Q_EMIT keptWith(qs(lot_));
}

void LotForm::left() {
    before_.clear();
}

} // namespace staveline::ui
