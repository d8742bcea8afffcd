// SPDX-License-Identifier: GPL-3.0-or-later
// What the window remembers between starts. A damaged or foreign value is as good as none.
#pragma once

#include "quantity/constants.h"
#include "quantity/text.h"
#include "ui/brew/page.h"
#include "ui/history/page.h"
#include "ui/print/paper.h"
#include "ui/widgets/theme.h"

#include <QByteArray>
#include <QMap>
#include <QString>
#include <QStringList>

class QSettings;

namespace staveline::ui {

/// In the order of the bar and of a cycle.
enum class PageId { taste, adjust, brew, drawRefill, finish, history };
[[nodiscard]] QString idOf(PageId workPage);

struct WindowSettings {
    DisplayUnits units;
    Appearance appearance = Appearance::system;
    PaperSize paper = PaperSize::a4;
    QString language;   ///< code of one of languages(); empty: as the desktop
    QStringList recent; ///< newest first
    QString lastBook, lastVessel;
    PageId lastPage = PageId::drawRefill;
    bool atAll = false; ///< all vessels were in front
    BrewPage::Part brewPart = BrewPage::Part::plan;
    HistoryPage::Face historyFace = HistoryPage::Face::charts;
    bool firstStepsAway = false; ///< put away, until they are asked for
    QString seenVersion;         ///< of the program, when it was used last; empty: never
    int mostMoved = static_cast<int>(constants::advice::mostMoved); ///< changes in one plan
    QByteArray geometry;
    QMap<QString, QList<int>> splits; ///< sizes of the parts of each splitter, by its name

    void use(const QString& book); ///< to the front of the recent books
};

[[nodiscard]] WindowSettings load(const QSettings& from);
void save(const WindowSettings& settings, QSettings& to);

} // namespace staveline::ui
