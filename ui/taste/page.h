// SPDX-License-Identifier: GPL-3.0-or-later
// Taste: the sheet on the left, stored as it is typed; what it says so far on the right.
#pragma once

#include "desk/filed.h"
#include "ui/print/paper.h"
#include "ui/taste/score_sheet.h"
#include "ui/widgets/prompt.h"
#include "ui/widgets/work_page.h"

#include <map>

class QLabel;
class QPlainTextEdit;
class QPushButton;
class QStackedWidget;
class QTimer;

namespace staveline::ui {

class AnchorScale;
class BlankSheet;
class ChoiceField;
class FaultList;
class LearnChoice;
class SittingSummary;
class SittingHeader;
class SteadyScroll;
class TasterGrid;

class TastePage : public WorkPage {
    Q_OBJECT
public:
    TastePage(Session& session, Prompt& prompt, QWidget* parent = nullptr);
    ~TastePage() override;
    /// The first line without a score; the first button of a vessel that was never opened.
    void focusWork() override;
    void sameAgain(); ///< the last sitting's scores of the taster in hand for what is not scored yet
    void newSitting();
    void removeSitting();                             ///< without a question: undo brings it back
    void openSitting(std::optional<std::int64_t> id); ///< none: the one nobody stored yet
    void showBlankSheet(bool show);
    void showAllTasters(bool all);
    void showLongSheet(bool all);

    [[nodiscard]] const SittingDraft& draft() const { return draft_; }
    [[nodiscard]] ScoreSheet& sheet() const { return *sheet_; }
    [[nodiscard]] SittingHeader& header() const { return *header_; }
    [[nodiscard]] TasterGrid& grid() const { return *grid_; }
    [[nodiscard]] BlankSheet& blankSheet() const { return *blank_; }
    [[nodiscard]] bool atBlankSheet() const;
    [[nodiscard]] QPlainTextEdit& note() const { return *note_; }
    [[nodiscard]] QString verdictWords() const;
    [[nodiscard]] QString words() const; ///< of the message at the sheet

Q_SIGNALS:
    void firstEntryAsked(staveline::vessel::EntryKind kind); ///< of an empty vessel: its first fill, or a takeover
    void blankSheetShown(bool shown);

protected:
    void refresh() override;
    void leaveVessel() override;
    void hideEvent(QHideEvent* event) override;

private:
    using DraftKey = std::pair<facts::VesselName, std::int64_t>; ///< 0: not stored

    QWidget* makeWork();
    QWidget* makeLeft();
    QWidget* makeTools();
    QWidget* makeBelow();
    QWidget* makeEmpty();
    void connectSheet();
    void connectHeader();
    void connectBelow();

    void beginVessel();
    void putAside(); ///< what could not be stored is kept for when it is looked at again
    void take(const SittingDraft& draft);
    [[nodiscard]] SittingDraft freshDraft() const;
    void follow(); ///< the draft after the book changed
    void display(bool anew);
    void showSummary();
    void showKnown();
    void showState();
    void fitSheet(); ///< no score is hidden by a choice of lines or glasses

    void store(const Message& text, const std::string& mergeKey);
    Result<desk::Recorded> write(const SittingDraft& draft, const desk::EditNote& note);
    void storeAgain();
    [[nodiscard]] bool storeAside(SittingDraft draft);
    void tellUnstored(); ///< in words, for who closes the book
    void settle(const desk::Recorded& written);
    void refuse(const Fault& fault);
    void typed(const ScoreCell& cell);
    void keep(const ScoreCell& cell);
    void keepNote();
    void keepDay();
    void nameTaster(const QString& name);
    void anotherTaster();
    void offerSameAgain();
    void finish();
    void showScale();
    void scrollToFocus(QWidget* focus);
    bool eventFilter(QObject* watched, QEvent* event) override;
    [[nodiscard]] const desk::Filed<facts::SittingFact>*
    lastSitting() const; ///< of the taster in hand, before this one
    [[nodiscard]] std::string mergeKey(const std::string& what) const;

    std::vector<desk::Filed<facts::SittingFact>> sittings_; ///< newest first
    SittingDraft draft_;
    std::map<DraftKey, SittingDraft> aside_;
    facts::VesselName begun_; ///< the vessel whose sitting is in hand
    bool longWanted_ = false, sideBySide_ = false;
    bool refused_ = false; ///< the last write
    bool sameOffered_ = false;
    QString notice_;                  ///< a passing word at the sheet
    const ScoreCell* cell_ = nullptr; ///< in hand

    QStackedWidget* pages_;
    QWidget* work_;
    QWidget* empty_;
    BlankSheet* blank_;
    SittingHeader* header_;
    MessageLabel* message_;
    QStackedWidget* body_;
    SteadyScroll* scroll_;
    ScoreSheet* sheet_;
    FaultList* faults_;
    QPlainTextEdit* note_;
    MessageLabel* noteWaits_;
    ChoiceField* drawIt_;
    ChoiceField* glasses_;
    QPushButton* long_;
    QPushButton* same_;
    QPushButton* all_;
    QPushButton* remove_;
    LearnChoice* learn_;
    TasterGrid* grid_;
    AnchorScale* scale_;
    SittingSummary* summary_;
    QPushButton* firstFill_;
    QTimer* notePause_;
};

} // namespace staveline::ui
