// SPDX-License-Identifier: GPL-3.0-or-later
// The vessels of the book as a list: name, one line, state. Each is read when it is looked at, so that a change costs
// what is on screen, not what is in the book.
#pragma once

#include "desk/ledger.h"
#include "ui/present/session.h"

#include <QAbstractListModel>

class QTimer;

namespace staveline::ui {

enum class VesselMood {
    calm,    ///< nothing due for a while
    soon,    ///< due within ten days
    overdue, ///< due before today
    fault    ///< an unwanted fault was tasted
};
/// Shape, word and colour of the line under a vessel.
[[nodiscard]] VesselMood moodOf(const desk::VesselSummary& vessel);
/// Within ten days, or overdue; whatever else is said of it.
[[nodiscard]] bool isSoon(const desk::VesselSummary& vessel);

class CellarModel : public QAbstractListModel {
    Q_OBJECT
public:
    explicit CellarModel(Session& session, QObject* parent = nullptr);
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] const desk::VesselSummary* at(int row) const;   ///< null: no such row; good until the next change
    [[nodiscard]] int rowOf(const facts::VesselName& name) const; ///< -1: not there
    /// What is due, or the verdict, or the fault: one line.
    [[nodiscard]] QString headline(const desk::VesselSummary& vessel) const;
    [[nodiscard]] const Session& session() const { return session_; }
    /// What is read of it, perhaps of before the last change until it is read anew; null: nothing yet.
    [[nodiscard]] const desk::VesselSummary* known(int row) const;
    /// More than can be seen at once: the rail is compact then and stands by what is due.
    [[nodiscard]] bool crowded() const { return rowCount() > roomy; }
    static constexpr int roomy = 6;
    /// Every row is read by and by, while the window is idle; `allRead` when none is left, after each change again.
    void readAll();
    [[nodiscard]] bool isAllRead() const;

Q_SIGNALS:
    void allRead();

public Q_SLOTS:
    /// The vessels are read anew; the selection stays while the same vessels are there.
    void refresh();

private:
    struct Row {
        facts::VesselName name;
        mutable std::optional<desk::VesselSummary> read{}; ///< none: never looked at
        mutable bool stale = true;                         ///< the book has changed since
    };
    void take(std::vector<Row> fresh);
    void readSome();
    void sortByDue();
    [[nodiscard]] QString held(const desk::VesselSummary& vessel) const; ///< "61.0 L of 225.0 L"
    Session& session_;
    std::vector<Row> rows_;
    QTimer* reader_;
    bool wanted_ = false; ///< all of them
};

} // namespace staveline::ui
