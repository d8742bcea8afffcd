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
    explicit Session(std::unique_ptr<Desk> desk, QObject* parent = nullptr);

    [[nodiscard]] const Desk& desk() const { return *desk_; }
    [[nodiscard]] const DisplayUnits& units() const { return units_; }
    void setUnits(const DisplayUnits& units);
    [[nodiscard]] QString words(const Message& message) const { return text(message, units_); }
    [[nodiscard]] QString words(const Fault& fault) const { return text(fault, units_); }
    template <class Q> [[nodiscard]] QString amount(const Q& quantity) const { return qs(show(quantity, units_)); }

    // Each says by `said` what it did; of one fact the edit is named by it.
    Result<Recorded> record(const Fact& fact);
    Result<Recorded> record(const std::vector<Fact>& facts);
    Result<Recorded> amend(const std::string& table, std::int64_t id, const Fact& fact);
    Result<Recorded> remove(const std::string& table, std::int64_t id);
    // As the desk does; who asks says what was done.
    Result<Recorded> record(const Fact& fact, const EditNote& note);
    Result<Recorded> amend(const std::string& table, std::int64_t id, const Fact& fact, const EditNote& note);
    Result<Recorded> remove(const std::string& table, std::int64_t id, const EditNote& note);
    Result<Recorded> setToday(const Fact& fact, const EditNote& note);
    Result<Recorded> revise(const VesselName& vessel, const Setting& setting, const EditNote& note);
    Result<Chosen> choose(const AdviceJob& job, const Advice& advice, int number);
    Result<Chosen> adopt(const AdviceJob& job, const Trial& trial);
    /// `changed` waits until it ends: whoever writes has taken in what came of it then.
    [[nodiscard]] Desk::Batch batch() { return desk_->batch(); }
    void undo();
    void redo();
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
    void storeAll(); ///< asks all who hold something to try again

Q_SIGNALS:
    void changed();
    void unitsChanged();
    void said(const QString& words);
    void failed(const staveline::Fault& fault);
    void unstoredChanged();
    void storeAsked();

private:
    /// Writes, and keeps the rows for who is told of it.
    template <class Write> auto write(Write&& write);
    Result<Recorded> spoken(Result<Recorded> edit, const QString& sentence);

    std::unique_ptr<Desk> desk_;
    Day day_;
    bool readOnly_;
    DisplayUnits units_;
    QDateTime storedAt_;
    bool elsewhere_ = false;
    std::vector<book::RowKey> stored_;
    std::map<std::string, QStringList> unstored_;
};

} // namespace staveline::ui
