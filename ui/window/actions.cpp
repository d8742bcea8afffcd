// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/actions.h"

#include "ui/widgets/entry_look.h"

#include <QAction>
#include <QCoreApplication>

namespace staveline::ui {
namespace {

QString tr(const char* words) {
    return QCoreApplication::translate("Actions", words);
}
QKeySequence keys(const char* words) {
    return QKeySequence(QLatin1String(words));
}

struct PageWords {
    PageId page;
    const char *words, *key;
};
constexpr PageWords pageWords[] = {
    {PageId::taste, QT_TRANSLATE_NOOP("Actions", "&Taste"), "Ctrl+1"},
    {PageId::adjust, QT_TRANSLATE_NOOP("Actions", "&Adjust"), "Ctrl+2"},
    {PageId::brew, QT_TRANSLATE_NOOP("Actions", "&Brew"), "Ctrl+3"},
    {PageId::drawRefill, QT_TRANSLATE_NOOP("Actions", "&Draw && refill"), "Ctrl+4"},
    {PageId::finish, QT_TRANSLATE_NOOP("Actions", "&Finish"), "Ctrl+5"},
    {PageId::history, QT_TRANSLATE_NOOP("Actions", "H&istory"), "Ctrl+6"},
};

} // namespace

Actions::Actions(QObject& owner) : owner_(owner) {
    newBook = add(tr("&New cellar\u2026"), keys("Ctrl+N"));
    openBook = add(tr("&Open a book\u2026"), keys("Ctrl+O"));
    sampleBook = add(tr("&Sample cellar"));
    copyBook = add(tr("Save a &copy\u2026"), keys("Ctrl+Shift+S"));
    calendar = add(tr("Save the dates as a calen&dar file\u2026"));
    importNotes = add(tr("&Import notes\u2026"));
    exportBook = add(tr("&Export whole book\u2026"));
    bookFromFolder = add(tr("Ne&w cellar from an exported folder\u2026"));
    checkBook = add(tr("C&heck the book for damage"));
    closeBook = add(tr("C&lose book"), keys("Ctrl+W"));
    storedAlready = add(tr("Saved &automatically"), keys("Ctrl+S"));
    quit = add(tr("&Quit"), keys("Ctrl+Q"));
    undo = add(tr("&Undo"), keys("Ctrl+Z"));
    redo = add(tr("&Redo"), keys("Ctrl+Shift+Z"));
    redo->setShortcuts({keys("Ctrl+Shift+Z"), keys("Ctrl+Y")});
    find = add(tr("&Find"), keys("Ctrl+F"));
    findNext = add(tr("Find &next"), keys("F3"));
    findPrevious = add(tr("Find &previous"), keys("Shift+F3"));
    preferences = add(tr("Pr&eferences\u2026"), keys("Ctrl+,"));
    addVessel = add(tr("Add a &vessel"), keys("Ctrl+Shift+N"));
    changeVessel = add(tr("C&hange the vessel"), keys("Ctrl+Shift+E"));
    round = add(tr("The ro&und"), keys("Ctrl+Shift+R"));
    ingredients = add(tr("Ingredients and stoc&k"), keys("Ctrl+Shift+I"));
    rooms = add(tr("Roo&ms"), keys("Ctrl+Shift+M"));
    nextVessel = add(tr("Ne&xt vessel"), keys("Ctrl+PgDown"));
    previousVessel = add(tr("Pre&vious vessel"), keys("Ctrl+PgUp"));
    for (const EntryLook& entry : entryLooks())
        entries[entry.kind] = add(tr(entry.action), keys(entry.keys));
    amend = add(tr("A&mend the entry"), keys("Ctrl+E"));
    remove = add(tr("Remo&ve the entry"), keys("Del"));
    for (QAction* ofLedger : {amend, remove})
        ofLedger->setShortcutContext(Qt::WidgetShortcut); // where the ledger has the focus
    allVessels = add(tr("All vesse&ls"), keys("Ctrl+0"));
    for (const auto& [page, words, key] : pageWords)
        workPages[page] = add(tr(words), keys(key));
    brewSheet = add(tr("Brew &sheet"), keys("Ctrl+Shift+B"));
    newSitting = add(tr("Ne&w tasting"), keys("Ctrl+Shift+T"));
    sameAgain = add(tr("Copy last s&cores"), keys("Ctrl+="));
    adopt = add(tr("Ad&opt"), keys("Ctrl+Return"));
    asNow = add(tr("Reset to curre&nt settings"), keys("Ctrl+Shift+A"));
    nextPlace = add(tr("&Next part of the window"), keys("F6"));
    previousPlace = add(tr("&Previous part of the window"), keys("Shift+F6"));
    print = add(tr("&Print\u2026"), keys("Ctrl+P"));
    savePdf = add(tr("Save as P&DF\u2026"), keys("Ctrl+Shift+P"));
    saveHtml = add(tr("Save as &HTML\u2026"));
    saveMarkdown = add(tr("Save as &Markdown\u2026"));
    saveCsv = add(tr("Save as &CSV\u2026"));
    printCards = add(tr("Print the vessel ca&rds\u2026"));
    saveCards = add(tr("Save the &vessel cards as PDF\u2026"));
    saveLabels = add(tr("Save the bottle &labels as PDF\u2026"));
    help = add(tr("&Help for this page"), keys("F1"));
    firstSteps = add(tr("&First steps"));
    news = add(tr("What is &new"));
    report = add(tr("&Report a fault of the program\u2026"));
    about = add(tr("&About Staveline"));
    tellNeeds();
}

void Actions::tellNeeds() {
    needWriting = QList<QAction*>(entries.values())
                  << addVessel << changeVessel << round << rooms << importNotes << amend << remove << newSitting
                  << sameAgain << adopt << firstSteps;
    needBook = needWriting + workPages.values() +
               QList<QAction*>{allVessels, ingredients,    copyBook,     calendar,      checkBook, closeBook,
                               nextVessel, previousVessel, brewSheet,    storedAlready, nextPlace, previousPlace,
                               print,      savePdf,        saveHtml,     saveMarkdown,  saveCsv,   asNow,
                               find,       findNext,       findPrevious, printCards,    saveCards, exportBook};
}

QAction* Actions::add(const QString& words, const QKeySequence& key) {
    auto* action = new QAction(words, &owner_);
    action->setShortcut(key);
    all << action;
    return action;
}

} // namespace staveline::ui
