// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/taste/page.h"

#include "desk/ledger.h"
#include "desk/tasting.h"
#include "estimate/estimates.h"
#include "ui/present/funk_words.h"
#include "ui/taste/anchor_scale.h"
#include "ui/taste/blank_sheet.h"
#include "ui/taste/fault_list.h"
#include "ui/taste/learn_choice.h"
#include "ui/taste/sitting_header.h"
#include "ui/taste/sitting_summary.h"
#include "ui/taste/taster_grid.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/steady_scroll.h"
#include "ui/widgets/theme.h"

#include <QApplication>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QStackedWidget>
#include <QTimer>

#include <algorithm>

namespace staveline::ui {

using desk::Filed;
using desk::Recorded;
using facts::SittingFact;

namespace {

const std::string sittingTable = "sitting";

/// In hand and not in the book; a day alone is no tasting yet.
bool isUnstored(const SittingDraft& draft) {
    return draft.changed() && (draft.id() || draft.storable() || draft.waits());
}

/// As it is recorded from anywhere: a sitting is told by its day and its place among those of that day.
facts::SittingUseFact useOf(const SittingDraft& draft, const desk::Desk& desk) {
    const SittingFact& now = draft.now();
    facts::SittingUseFact use{now.vessel, now.sitting.on, 1, now.learn, now.learnReason};
    const auto sittings = desk.sittings(now.vessel).value_or(std::vector<Filed<SittingFact>>()); // latest first
    auto at = std::find_if(sittings.begin(), sittings.end(), [&](const auto& each) { return each.id == draft.id(); });
    while (at != sittings.end() && ++at != sittings.end())
        use.which += at->fact.sitting.on == use.sitting;
    return use;
}

std::string wordOf(std::optional<bool> drawIt) {
    return !drawIt ? "open" : *drawIt ? "yes" : "no";
}

} // namespace

// --- the sitting in hand -------------------------------------------------------------------------------------------

/// The focus leaves the fields while they are taken down: nobody scrolls to it then.
TastePage::~TastePage() {
    disconnect(qApp, nullptr, this, nullptr);
}

void TastePage::refresh() {
    if (blank_->isVisible())
        blank_->refresh();
    if (begun_ != vessel())
        beginVessel();
    else
        follow();
}

void TastePage::beginVessel() {
    begun_ = vessel();
    sittings_ = session().desk().sittings(vessel()).value_or(std::vector<Filed<SittingFact>>());
    refused_ = false;
    const auto kept =
        std::find_if(aside_.begin(), aside_.end(), [&](const auto& each) { return each.first.first == begun_; });
    const bool goesOn = !sittings_.empty() &&
                        (session().desk().readOnly() || sittings_.front().fact.sitting.on == session().desk().today());
    if (kept != aside_.end())
        openSitting(kept->first.second == 0 ? std::nullopt : std::optional(kept->first.second));
    else if (goesOn)
        take(SittingDraft(sittings_.front()));
    else
        take(freshDraft());
}

SittingDraft TastePage::freshDraft() const {
    return {vessel(), session().desk().today(),
            sittings_.empty() ? std::vector<std::string>() : tastersOf(sittings_.front().fact.sitting)};
}

void TastePage::take(const SittingDraft& draft) {
    draft_ = draft;
    follow();
    display(true);
}

void TastePage::follow() {
    sittings_ = session().desk().sittings(begun_).value_or(std::vector<Filed<SittingFact>>());
    const auto wanted = draft_.id() ? draft_.id() : draft_.gone();
    const auto found =
        std::find_if(sittings_.begin(), sittings_.end(), [&](const auto& filed) { return filed.id == wanted; });
    if (draft_.id())
        draft_.follow(found == sittings_.end() ? std::nullopt : std::optional(found->fact));
    else if (found != sittings_.end())
        draft_.comeBack(*found);
    if (!draft_.changed())
        refused_ = false;
    display(false);
}

void TastePage::putAside() {
    if (draft_.changed())
        aside_[{draft_.now().vessel, draft_.id().value_or(0)}] = draft_;
}

void TastePage::openSitting(std::optional<std::int64_t> id) {
    finish();
    if (id != draft_.id() || begun_ != draft_.now().vessel)
        putAside();
    refused_ = false;
    if (const auto kept = aside_.find({begun_, id.value_or(0)}); kept != aside_.end()) {
        const SittingDraft draft = kept->second;
        aside_.erase(kept);
        take(draft);
        return;
    }
    const auto found =
        std::find_if(sittings_.begin(), sittings_.end(), [&](const auto& filed) { return id && filed.id == *id; });
    take(found == sittings_.end() ? freshDraft() : SittingDraft(*found));
}

void TastePage::newSitting() {
    if (begun_.empty() || session().desk().readOnly())
        return;
    openSitting(std::nullopt);
    focusWork();
}

void TastePage::removeSitting() {
    const auto id = draft_.id();
    if (!id || session().desk().readOnly())
        return;
    finish();
    const SittingDraft before = draft_;
    const auto batch = session().batch(); // the page is read anew when there is another sitting in hand
    const auto removed = session().remove(sittingTable, *id);
    if (!removed) {
        refused_ = true;
        refuse(removed.error());
        return;
    }
    sittings_.clear();
    draft_ = SittingDraft(begun_, before.now().sitting.on, before.tasters());
    draft_.replaces(*id);
    take(draft_);
    focusWork();
}

/// Another page comes to the front, or the window closes: nothing waits for its pause.
void TastePage::hideEvent(QHideEvent* event) {
    WorkPage::hideEvent(event);
    if (!begun_.empty())
        finish();
}

void TastePage::leaveVessel() {
    if (begun_.empty())
        return;
    finish();
    putAside();
    draft_ = {}; // the next vessel's begins with its own
    begun_.clear();
    for (SteadyScroll* area : findChildren<SteadyScroll*>())
        area->toTop();
    tellUnstored();
    showBlankSheet(false);
}

void TastePage::finish() {
    sheet_->finish();
    header_->finish();
    learn_->finish();
    keepNote();
}

// --- storing -------------------------------------------------------------------------------------------------------

std::string TastePage::mergeKey(const std::string& what) const {
    return what.empty() ? what : "taste/" + begun_ + '/' + draft_.taster() + '/' + what;
}

void TastePage::store(const Message& text, const std::string& what) {
    if (session().desk().readOnly() || !draft_.changed())
        return;
    draft_.beginOn(session().desk().today()); // the page may have stood open overnight
    const auto batch = session().batch();     // the page is read anew when the sitting has its number
    const auto written = write(draft_, {toStd(session().words(text)), mergeKey(what)});
    refused_ = !written;
    if (written) {
        settle(*written);
        if (!written->edit.empty())
            Q_EMIT session().said(tr("Stored: %1").arg(qs(written->edit)));
    }
    if (!written || written->edit.empty() || !isVisible()) // else it follows when the batch ends
        follow();
    if (!written)
        refuse(written.error());
}

Result<Recorded> TastePage::write(const SittingDraft& draft, const desk::EditNote& note) {
    if (draft.id() && draft.storable() && draft.changedInUseAlone())
        return session().record(useOf(draft, session().desk()), note);
    if (draft.storable())
        return draft.id() ? session().amend(sittingTable, *draft.id(), draft.now(), note)
                          : session().record(draft.now(), note);
    return draft.id() ? session().remove(sittingTable, *draft.id(), {}) : Result<Recorded>(Recorded{});
}

void TastePage::storeAgain() {
    if (!begun_.empty()) {
        finish();
        store(say("ui.taste.edit.sitting").with("vessel", begun_), {});
    }
    const auto batch = session().batch(); // nobody looks at what is set aside while it goes
    std::erase_if(aside_, [this](const auto& each) { return storeAside(each.second); });
    tellUnstored();
}

bool TastePage::storeAside(SittingDraft draft) {
    const facts::VesselName vessel = draft.now().vessel;
    if (const auto id = draft.id()) {
        const auto sittings = session().desk().sittings(vessel).value_or(std::vector<Filed<SittingFact>>());
        const auto found =
            std::find_if(sittings.begin(), sittings.end(), [&](const auto& each) { return each.id == id; });
        draft.follow(found == sittings.end() ? std::nullopt : std::optional(found->fact));
    }
    if (!draft.storable() && !draft.id())
        return false;
    const Message name = say("ui.taste.edit.sitting").with("vessel", vessel);
    return write(draft, {toStd(session().words(name)), {}}).has_value();
}

void TastePage::tellUnstored() {
    QStringList what;
    const auto add = [&](const SittingDraft& draft) {
        if (isUnstored(draft))
            what << tr("tasting of %1").arg(qs(draft.now().vessel));
    };
    add(draft_);
    for (const auto& [key, draft] : aside_)
        add(draft);
    what.removeDuplicates();
    session().setUnstored("taste", what);
}

/// What was written has a number now, or no place in the book any more.
void TastePage::settle(const Recorded& written) {
    if (draft_.storable())
        draft_.settle(written.rows.front().id);
    else if (draft_.id())
        draft_.settleRemoved();
}

void TastePage::refuse(const Fault& fault) {
    message_->say(MessageLabel::Weight::fault, session().words(fault));
    if (fault.path == "/on")
        header_->showDayFault(fault);
}

void TastePage::typed(const ScoreCell& cell) {
    notice_.clear();
    sameOffered_ = false;
    if (cell.fault())
        draft_.restoreScore(cell.attribute(), cell.glass());
    else
        draft_.setScore(cell.attribute(), cell.glass(), cell.score());
    showScale();
    showSummary();
    showState();
}

void TastePage::keep(const ScoreCell& cell) {
    const std::string line = cell.attribute().name;
    const bool named = draft_.tasters().size() > 1 && !draft_.taster().empty();
    store(named
              ? say("ui.taste.edit.score_by").with("taster", draft_.taster()).with("line", line).with("vessel", begun_)
              : say("ui.taste.edit.score").with("line", line).with("vessel", begun_),
          cell.attribute().code + (cell.glass() == Glass::cold ? "/cold" : "/cellar"));
}

void TastePage::keepNote() {
    notePause_->stop();
    if (begun_.empty() || note_->isReadOnly())
        return;
    if (note_->document()->isModified()) {
        note_->document()->setModified(false);
        store(say("ui.taste.edit.note").with("vessel", begun_), "note");
    }
}

void TastePage::keepDay() {
    const auto day = header_->date().day();
    if (!day)
        return;
    draft_.setDay(*day);
    if (draft_.storable() || draft_.id()) {
        store(say("ui.taste.edit.day").with("vessel", begun_), "day");
        return;
    }
    // Nothing is written yet, but the desk knows whether the day can be.
    if (const auto seen = session().desk().preview(draft_.now()); !seen && seen.error().path == "/on")
        header_->showDayFault(seen.error());
}

void TastePage::nameTaster(const QString& name) {
    if (!draft_.renameTaster(toStd(name))) {
        header_->showNameFault(own("ui.taste.taster_twice"));
        return;
    }
    header_->showNameFault({});
    store(say("ui.taste.edit.taster").with("vessel", begun_), "taster");
    header_->showDraft(draft_, session().desk().today(), false);
}

void TastePage::anotherTaster() {
    finish();
    if (draft_.addTaster({})) {
        display(true);
        header_->focusName();
        return;
    }
    const auto& names = draft_.tasters();
    draft_.take(static_cast<std::size_t>(std::find(names.begin(), names.end(), std::string()) - names.begin()));
    display(true);
    header_->showNameFault(own("ui.taste.no_name"));
    header_->focusName();
}

// --- same again ----------------------------------------------------------------------------------------------------

const Filed<SittingFact>* TastePage::lastSitting() const {
    for (const Filed<SittingFact>& filed : sittings_) {
        const tasting::Sitting& sitting = filed.fact.sitting;
        const bool scored = std::any_of(sitting.scores.begin(), sitting.scores.end(),
                                        [&](const tasting::Score& score) { return score.taster == draft_.taster(); });
        if (filed.id != draft_.id() && sitting.on <= draft_.now().sitting.on && scored)
            return &filed;
    }
    return nullptr;
}

/// Says what a second press would do, or why there is nothing to do.
void TastePage::offerSameAgain() {
    if (sameOffered_) {
        sameAgain();
        return;
    }
    const Filed<SittingFact>* last = lastSitting();
    const int count = last ? draft_.fillable(last->fact.sitting) : 0;
    sameOffered_ = count > 0;
    if (!last)
        notice_ = own("ui.taste.same_none");
    else
        notice_ = text(
            count > 0 ? say("ui.taste.same_offer").with("count", std::int64_t{count}).with("on", last->fact.sitting.on)
                      : say("ui.taste.same_full").with("on", last->fact.sitting.on));
    showState();
}

void TastePage::sameAgain() {
    if (begun_.empty() || session().desk().readOnly())
        return;
    finish();
    sameOffered_ = false;
    const Filed<SittingFact>* last = lastSitting();
    const tasting::Sitting earlier = last ? last->fact.sitting : tasting::Sitting();
    if (const int count = draft_.fillFrom(earlier); count > 0) {
        store(say("ui.taste.edit.same").with("vessel", begun_), {});
        notice_ = text(say("ui.taste.same_done").with("count", std::int64_t{count}).with("on", earlier.on));
        showState();
    } else {
        offerSameAgain();
    }
}

// --- showing -------------------------------------------------------------------------------------------------------

void TastePage::display(bool anew) {
    const auto vessel = session().desk().vessel(begun_);
    if (vessel && vessel->toFill && sittings_.empty() && !draft_.storable()) {
        if (pages_->currentWidget() != blank_)
            pages_->setCurrentWidget(empty_);
        return;
    }
    if (pages_->currentWidget() == empty_)
        pages_->setCurrentWidget(work_);
    header_->showSittings(sittings_, draft_.id());
    header_->showDraft(draft_, session().desk().today(), anew);
    fitSheet();
    sheet_->showDraft(draft_, anew);
    faults_->showDraft(draft_);
    if (note_->toPlainText() != qs(draft_.now().sitting.note)) {
        const QSignalBlocker quiet(note_);
        note_->setPlainText(qs(draft_.now().sitting.note));
        note_->document()->setModified(false);
    }
    drawIt_->setWord(wordOf(draft_.now().sitting.drawIt));
    learn_->showUse(draft_.now().learn, draft_.now().learnReason, anew);
    if (grid_->isVisible())
        grid_->showDraft(draft_, longWanted_);
    showScale();
    showSummary();
    showKnown();
    showState();
}

void TastePage::fitSheet() {
    bool beyond = false, cold = false, cellar = false;
    for (const tasting::Score& score : draft_.now().sitting.scores) {
        const tasting::Attribute* attribute = tasting::builtInSheet().find(score.attribute);
        if (!attribute)
            continue;
        beyond = beyond || !attribute->shortSheet;
        const bool mine = attribute->bothTemperatures && score.taster == draft_.taster();
        cold = cold || (mine && score.cold);
        cellar = cellar || (mine && score.cellar);
    }
    sheet_->setLong(longWanted_ || beyond);
    const std::string wanted = glasses_->word();
    if ((wanted == "cold" && cellar) || (wanted == "cellar" && cold))
        glasses_->setWord("both");
    const std::string word = glasses_->word();
    sheet_->setGlasses(word == "cold"     ? GlassChoice::coldOnly
                       : word == "cellar" ? GlassChoice::cellarOnly
                                          : GlassChoice::both);
}

void TastePage::showScale() {
    scale_->showLine(cell_ ? &cell_->attribute() : nullptr, cell_ ? cell_->score() : std::nullopt);
}

void TastePage::showSummary() {
    if (const auto view = session().desk().taste(draft_.now()))
        summary_->showTaste(*view, funkSides(draft_.now().sitting, tasting::builtInSheet()));
}

void TastePage::showKnown() {
    const auto target = session().desk().target(begun_);
    summary_->showKnown(session().desk().estimates(begun_), target.value_or(std::nullopt));
}

void TastePage::showState() {
    const bool readOnly = session().desk().readOnly();
    sheet_->setReadOnly(readOnly);
    faults_->setReadOnly(readOnly);
    header_->setReadOnly(readOnly);
    note_->setReadOnly(readOnly);
    drawIt_->setEnabled(!readOnly);
    same_->setEnabled(!readOnly);
    remove_->setEnabled(!readOnly);
    remove_->setVisible(draft_.id().has_value());
    learn_->setReadOnly(readOnly);
    learn_->setVisible(draft_.id().has_value());
    if (draft_.waits() && !readOnly)
        noteWaits_->say(MessageLabel::Weight::note, own("ui.taste.waits"));
    else
        noteWaits_->clear();
    tellUnstored();
    if (refused_)
        return;
    if (readOnly)
        message_->say(MessageLabel::Weight::note, own("ui.taste.read_only"));
    else if (!notice_.isEmpty())
        message_->say(MessageLabel::Weight::note, notice_);
    else if (sittings_.empty() && !draft_.storable())
        message_->say(MessageLabel::Weight::note, own("ui.taste.first"));
    else
        message_->clear();
}

void TastePage::showBlankSheet(bool show) {
    if (show)
        blank_->showVessel(vessel(), !longWanted_);
    pages_->setCurrentWidget(show ? static_cast<QWidget*>(blank_) : work_);
    if (!begun_.empty())
        display(false);
    if (show)
        blank_->focusFirst();
    else if (isVisible() && !begun_.empty())
        focusWork();
    Q_EMIT blankSheetShown(show);
}

bool TastePage::atBlankSheet() const {
    return pages_->currentWidget() == blank_;
}

void TastePage::showAllTasters(bool all) {
    finish();
    notice_.clear();
    sameOffered_ = false;
    sideBySide_ = all;
    all_->setText(all ? tr("One taster") : tr("Side by side"));
    body_->setCurrentWidget(all ? static_cast<QWidget*>(grid_) : scroll_);
    scale_->setVisible(!all);
    if (all)
        grid_->showDraft(draft_, longWanted_);
    showState();
}

void TastePage::showLongSheet(bool all) {
    longWanted_ = all;
    long_->setText(all ? tr("Short sheet") : tr("Long sheet"));
    fitSheet();
    if (grid_->isVisible())
        grid_->showDraft(draft_, all);
}

void TastePage::focusWork() {
    if (pages_->currentWidget() == empty_)
        firstFill_->setFocus(Qt::OtherFocusReason);
    else if (pages_->currentWidget() == blank_)
        blank_->focusFirst();
    else if (sideBySide_)
        grid_->setFocus(Qt::OtherFocusReason);
    else if (ScoreCell* cell = sheet_->firstOpen())
        cell->setFocus(Qt::TabFocusReason);
}

QString TastePage::verdictWords() const {
    return summary_->verdictWords();
}
QString TastePage::words() const {
    return message_->words();
}

} // namespace staveline::ui
