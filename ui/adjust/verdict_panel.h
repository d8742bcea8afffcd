// SPDX-License-Identifier: GPL-3.0-or-later
// The three dimensions side by side, with one legend; the same as a table one key away.
#pragma once

#include "ui/adjust/target_timeline_data.h"
#include "ui/present/session.h"

#include <QWidget>

class QStackedWidget;
class QTableWidget;

namespace staveline::ui {

class VerdictColumn;

class VerdictPanel : public QWidget {
    Q_OBJECT
public:
    explicit VerdictPanel(QWidget* parent = nullptr);
    void setVerdicts(const PerDimension<tasting::Verdict>& verdicts, const DisplayUnits& units);
    void setTimelines(const PerDimension<TargetTimelineData>& timelines);
    /// Height of the page they stand on: they grow with it, unless it scrolls as one.
    void setRoom(int height, bool scrolls);
    void showTable(bool table);
    [[nodiscard]] bool tableShown() const;
    [[nodiscard]] VerdictColumn& column(Dimension dimension) const { return *columns_[dimension]; }
    [[nodiscard]] QTableWidget& table() const { return *table_; }
    [[nodiscard]] QStringList words() const; ///< of the verdicts

Q_SIGNALS:
    void tableAsked(bool table);
    void asked(const Origin& origin);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void fillTable();

    QStackedWidget* pages_;
    QTableWidget* table_;
    PerDimension<VerdictColumn*> columns_{};
    PerDimension<TargetTimelineData> timelines_;
};

} // namespace staveline::ui
