// SPDX-License-Identifier: GPL-3.0-or-later
// Every action of the window with its words and key, in one place; a test finds clashes.
#pragma once

#include "ui/window/settings.h"
#include "vessel/ledger.h"

#include <QKeySequence>
#include <QList>
#include <QMap>

class QAction;
class QObject;

namespace staveline::ui {

struct Actions {
    explicit Actions(QObject& owner);

    QAction *newBook, *sampleBook, *openBook, *copyBook, *calendar, *checkBook, *closeBook, *quit;
    QAction *exportBook, *bookFromFolder, *importNotes;
    QAction *undo, *redo, *find, *findNext, *findPrevious, *preferences;
    QAction *addVessel, *changeVessel, *round, *rooms, *ingredients, *nextVessel, *previousVessel;
    QMap<vessel::EntryKind, QAction*> entries;
    QAction *amend, *remove, *storedAlready;
    QAction *print, *savePdf, *saveHtml, *saveMarkdown, *saveCsv;
    QAction* allVessels;
    QAction *printCards, *saveCards, *saveLabels;
    QMap<PageId, QAction*> workPages;
    QAction* brewSheet;
    QAction *sameAgain, *newSitting, *adopt, *asNow;
    QAction *nextPlace, *previousPlace;
    QAction *help, *firstSteps, *news, *report, *about;

    /// All of them, in the order of the menus.
    QList<QAction*> all;
    /// Those that need an open book, and of them those that write to it.
    QList<QAction*> needBook, needWriting;

private:
    QAction* add(const QString& words, const QKeySequence& key = {});
    void tellNeeds();
    QObject& owner_;
};

} // namespace staveline::ui
