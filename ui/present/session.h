// SPDX-License-Identifier: GPL-3.0-or-later
// The open book as the window sees it: the desk, the units in use, and one signal for each kind of change. Nothing in
// the window writes but through it.
#pragma once

#include "desk/desk.h"
#include "ui/present/text.h"

#include <QDateTime>
#include <QObject>
#include <QStringList>

#include <map>

namespace staveline::ui {

class Session : public QObject {
    Q_OBJECT
public:
    explicit Session(std::unique_ptr<desk::Desk> desk, QObject* parent = nullptr);

    [[nodiscard]] const desk::Desk& desk() const { return *desk_; }
    [[nodiscard]] const DisplayUnits& units() const { return units_; }
    void setUnits(const DisplayUnits& units);
    [[nodiscard]] QString words(const Message& message) const { return text(message, units_); }
    [[nodiscard]] QString words(const Fault& fault) const { return text(fault, units_); }
    template <class Q> [[nodiscard]] QString amount(const Q& quantity) const { return qs(show(quantity, units_)); }

    // Each says by `said` what it did; of one fact the edit is named by it.
    Result<desk::Recorded> record(const facts::Fact& fact);
    Result<desk::Recorded> record(const std::vector<facts::Fact>& facts);
    Result<desk::Recorded> amend(const std::string& table, std::int64_t id, const facts::Fact& fact);
    Result<desk::Recorded> remove(const std::string& table, std::int64_t id);
    // As the desk does; who asks says what was done.
    Result<desk::Recorded> record(const facts::Fact& fact, const desk::EditNote& note);
    Result<desk::Recorded> amend(const std::string& table, std::int64_t id, const facts::Fact& fact,
                                 const desk::EditNote& note);
    Result<desk::Recorded> remove(const std::string& table, std::int64_t id, const desk::EditNote& note);
    Result<desk::Recorded> setToday(const facts::Fact& fact, const desk::EditNote& note);
    Result<desk::Recorded> revise(const facts::VesselName& vessel, const advice::Setting& setting,
                                  const desk::EditNote& note);
    Result<desk::Chosen> choose(const desk::AdviceJob& job, const advice::Advice& advice, int number);
    Result<desk::Chosen> adopt(const desk::AdviceJob& job, const advice::Setting& setting);
    /// `changed` waits until it ends: whoever writes has taken in what came of it then.
    [[nodiscard]] desk::Desk::Batch batch() { return desk_->batch(); }
    // Where the edit was another vessel's than `inHand`, `ledTo` says whose.
    void undo(const facts::VesselName& inHand = {});
    void redo(const facts::VesselName& inHand = {});
    /// Looks for what happens without the brewer: another program's edits, midnight, damage met while reading.
    void poll();
    [[nodiscard]] QDateTime storedAt() const { return storedAt_; }
    /// While observers are told of it: the change is another program's, or the day's, not the brewer's.
    [[nodiscard]] bool changedElsewhere() const { return elsewhere_; }
    /// While observers are told of it: the rows that the brewer's edit stored, or that undo and redo changed.
    [[nodiscard]] const std::vector<book::RowKey>& stored() const { return stored_; }

    /// What is typed and not in the book: begun, or refused by the book. `what` in words, empty when it is stored or
    /// left; whoever holds it says so under a `key` of its own.
    void setUnstored(const std::string& key, const QStringList& what);
    [[nodiscard]] QStringList unstored() const;
    [[nodiscard]] bool isUnstored(const std::string& key) const { return unstored_.contains(key); }
    void storeAll(); ///< asks all who hold something to try again

Q_SIGNALS:
    void changed();
    void unitsChanged();
    void said(const QString& words);
    void failed(const staveline::Fault& fault);
    void unstoredChanged();
    void storeAsked();
    void ledTo(const QString& vessel);

private:
    /// Writes, and keeps the rows for who is told of it.
    template <class Write> auto write(Write&& write);
    Result<desk::Recorded> spoken(Result<desk::Recorded> edit, const QString& sentence);
    void lead(const Result<desk::Recorded>& travelled, const facts::VesselName& inHand);

    std::unique_ptr<desk::Desk> desk_;
    Day day_;
    bool readOnly_;
    DisplayUnits units_;
    QDateTime storedAt_;
    bool elsewhere_ = false;
    std::vector<book::RowKey> stored_;
    std::map<std::string, QStringList> unstored_;
};

} // namespace staveline::ui
