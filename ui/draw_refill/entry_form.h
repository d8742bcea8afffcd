// SPDX-License-Identifier: GPL-3.0-or-later
// One entry of the ledger, new or amended: fields, what it would do before it is recorded, and what speaks against it.
#pragma once

#include "ui/widgets/entry_frame.h"

namespace staveline::ui {

class EntryForm : public EntryFrame {
    Q_OBJECT
public:
    explicit EntryForm(Session& session, QWidget* parent = nullptr);
    /// A new entry of this kind for a vessel. One that is begun already goes on; one of another kind that is begun is
    /// asked about first.
    void begin(vessel::EntryKind kind, const facts::VesselName& vessel);
    /// An entry that is recorded already; one that is begun is asked about first.
    void amend(const std::string& table, std::int64_t id);
    void refresh(); ///< the ledger changed under an entry in hand

Q_SIGNALS:
    /// What the entry would do; none while it cannot be said.
    void previewed(const std::optional<staveline::desk::LedgerPreview>& preview);

protected:
    [[nodiscard]] QString inWords() const override;
    [[nodiscard]] std::string unstoredKey() const override;
    void opened() override;
    void edited() override;
    [[nodiscard]] bool mayRecord() override;
    void stored(const facts::Fact& fact) override;
    void left() override;
    void unitsChanged() override { addHint(); }

private:
    void open(const facts::Fact& fact, vessel::EntryKind kind, const QString& title,
              const std::optional<Amended>& recorded);
    void openRecorded(const Amended& entry);
    [[nodiscard]] Day dayFor(const facts::VesselName& vessel) const;
    void rememberDay(const facts::Fact& fact);
    void preview();
    void addHint();
    void askForEvent();
    [[nodiscard]] std::vector<Offer> lotOffers(vessel::EntryKind kind, const facts::VesselName& vessel) const;
    [[nodiscard]] FormContext context(vessel::EntryKind kind, const facts::VesselName& vessel, bool recorded) const;

    vessel::EntryKind kind_ = vessel::EntryKind::reading;
    facts::VesselName vessel_;
    std::optional<std::pair<facts::VesselName, Day>> dayTyped_; ///< for what else of that day is entered
};

} // namespace staveline::ui
