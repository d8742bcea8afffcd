// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/taste/sitting_summary.h"

#include "ui/present/funk_words.h"
#include "ui/present/score_words.h"
#include "ui/taste/fault_list.h"
#include "ui/taste/quiet_delegate.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/theme.h"

#include <QEvent>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QScrollBar>
#include <QVBoxLayout>

#include <algorithm>

namespace staveline::ui {

using tasting::VerdictKind;

namespace {

/// With the window, unless the reason names it already.
Message knownOf(Dimension dimension, const tasting::Verdict& verdict, const QString& reason,
                const tasting::TargetWindow& window) {
    const std::string& key = verdict.reason.key;
    const bool named =
        verdict.kind == VerdictKind::hold || key == "tasting.verdict.wait_arrives" || key == "tasting.verdict.near";
    return say(named ? "ui.taste.known" : "ui.taste.known_window")
        .with("dimension", toStd(nameOf(dimension)))
        .with("reason", toStd(reason))
        .with("wanted", Points{window.wanted})
        .with("band", Points{window.band});
}

/// Without a repeat, in the order of the dimensions.
std::vector<std::string> missingCodes(const tasting::SittingResult& result) {
    std::vector<std::string> codes;
    for (const Dimension d : allDimensions)
        for (const std::string& code : result.missing[d])
            if (std::find(codes.begin(), codes.end(), code) == codes.end())
                codes.push_back(code);
    return codes;
}

} // namespace

MissingList::MissingList(QWidget* parent) : QListWidget(parent) {
    setAccessibleName(tr("Lines not scored yet"));
    setFrameShape(QFrame::NoFrame);
    setFlow(QListView::LeftToRight);
    setWrapping(true);
    setResizeMode(QListView::Adjust);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setSpacing(lines(*this, .12));
    setSelectionMode(QAbstractItemView::NoSelection);
    setItemDelegate(new QuietDelegate(QPalette::Link, this));
    QFont link = font();
    link.setUnderline(true);
    setFont(link);
    viewport()->setAutoFillBackground(false);
    connect(this, &QListWidget::itemClicked, this,
            [this](QListWidgetItem* item) { Q_EMIT asked(item->data(Qt::UserRole).toString()); });
}

void MissingList::showCodes(const std::vector<std::string>& codes) {
    if (codes == codes_)
        return;
    codes_ = codes;
    clear();
    for (const std::string& code : codes)
        if (const tasting::Attribute* attribute = tasting::builtInSheet().find(code)) {
            auto* item = new QListWidgetItem(qs(attribute->name), this);
            item->setData(Qt::UserRole, qs(code));
        }
    if (count() > 0 && hasFocus()) // else it would be announced as if it had the focus
        setCurrentRow(0);
    fit();
}

void MissingList::fit() {
    doItemsLayout();
    setFixedHeight(std::max(contentsSize().height(), lines(*this, 1.5)));
}

void MissingList::resizeEvent(QResizeEvent* event) {
    QListWidget::resizeEvent(event);
    if (event->oldSize().width() != event->size().width())
        fit();
}

void MissingList::keyPressEvent(QKeyEvent* event) {
    if ((event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) && currentItem())
        Q_EMIT asked(currentItem()->data(Qt::UserRole).toString());
    else
        QListWidget::keyPressEvent(event);
}

SittingSummary::SittingSummary(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), scored_(new QLabel(this)),
      missingHead_(new QLabel(tr("Not scored yet"), this)), missing_(new MissingList(this)),
      faults_(new MessageLabel(this)), knownHead_(new QLabel(this)), knownNote_(new QLabel(this)),
      sides_(new QLabel(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(lines(*this, 1), 0, lines(*this, .4), 0);
    column->setSpacing(lines(*this, .3));
    setType(*scored_, Type::strong);
    scored_->setObjectName("scored");
    for (QLabel* head : {scored_, missingHead_, knownHead_})
        head->setWordWrap(true);
    missingHead_->setForegroundRole(QPalette::PlaceholderText);
    column->addWidget(scored_);
    addReadings();
    column->addWidget(missingHead_);
    column->addWidget(missing_);
    column->addWidget(faults_);
    column->addSpacing(lines(*this, .8));
    setType(*knownHead_, Type::strong);
    column->addWidget(knownHead_);
    addKnown();
    column->addStretch(1);
    connect(missing_, &MissingList::asked, this, &SittingSummary::asked);
}

void SittingSummary::addReadings() {
    auto* grid = new QGridLayout;
    grid->setHorizontalSpacing(lines(*this, .8));
    grid->setVerticalSpacing(lines(*this, .1));
    grid->setColumnStretch(1, 1);
    int row = 0;
    for (const Dimension d : allDimensions) {
        readings_[d] = {new QLabel(nameOf(d), this), new QLabel(this), new QLabel(this)};
        readings_[d].says->setObjectName(nameOf(d));
        readings_[d].says->setWordWrap(true);
        readings_[d].help->setWordWrap(true);
        readings_[d].help->setForegroundRole(QPalette::PlaceholderText);
        grid->addWidget(readings_[d].name, row, 0);
        grid->addWidget(readings_[d].says, row, 1);
        if (d == Dimension::funk)
            grid->addWidget(sides_, row + 1, 1);
        grid->addWidget(readings_[d].help, row + 2, 0, 1, 2);
        grid->setRowMinimumHeight(row + 3, lines(*this, .3));
        row += 4;
    }
    sides_->setWordWrap(true);
    sides_->setForegroundRole(QPalette::PlaceholderText);
    static_cast<QVBoxLayout*>(layout())->addLayout(grid);
}

void SittingSummary::addKnown() {
    auto* grid = new QGridLayout;
    grid->setHorizontalSpacing(lines(*this, .5));
    grid->setVerticalSpacing(lines(*this, .4));
    grid->setColumnStretch(1, 1);
    int row = 0;
    for (const Dimension d : allDimensions) {
        known_[d] = {new QLabel(this), new QLabel(this)};
        known_[d].words->setWordWrap(true);
        known_[d].words->setTextFormat(Qt::PlainText);
        grid->addWidget(known_[d].glyph, row, 0, Qt::AlignTop);
        grid->addWidget(known_[d].words, row++, 1);
    }
    knownNote_->setWordWrap(true);
    grid->addWidget(knownNote_, row, 0, 1, 2);
    static_cast<QVBoxLayout*>(layout())->addLayout(grid);
}

void SittingSummary::showTaste(const desk::TasteView& view, const tasting::FunkSides& sides) {
    sides_->setText(ui::sidesWords(sides));
    sides_->setVisible(!sides_->text().isEmpty());
    scored_->setText(tr("Scored %1 of the %2 lines that count").arg(view.scored).arg(view.wanted));
    for (const Dimension d : allDimensions) {
        const bool reads = view.result.dimensions[d].has_value();
        const bool spoiled = !view.result.spoiledBy[d].empty();
        setType(*readings_[d].says, reads ? Type::number : Type::body);
        readings_[d].says->setText(reads || spoiled ? session_.words(view.says[d]) : own("ui.taste.not_yet"));
    }
    showHelp(view);
    const auto codes = missingCodes(view.result);
    missing_->showCodes(codes);
    missing_->setVisible(!codes.empty());
    missingHead_->setVisible(!codes.empty());
    showFaults(view.faults);
}

/// The same help for several is said once, below the last of them.
void SittingSummary::showHelp(const desk::TasteView& view) {
    for (const Dimension d : allDimensions) {
        const QString help = session_.words(view.help[d]);
        QStringList whose;
        for (const Dimension other : allDimensions)
            if (!help.isEmpty() && session_.words(view.help[other]) == help)
                whose << (whose.isEmpty() ? nameOf(other) : inSentence(nameOf(other)));
        const bool last = !whose.isEmpty() && whose.back().compare(nameOf(d), Qt::CaseInsensitive) == 0;
        readings_[d].help->setText(whose.size() < 2 ? help : tr("%1: %2").arg(whose.join(tr(", ")), help));
        readings_[d].help->setVisible(last);
    }
}

void SittingSummary::showFaults(const std::vector<desk::FaultAdvice>& faults) {
    QStringList words;
    auto weight = MessageLabel::Weight::note;
    for (const desk::FaultAdvice& fault : faults) {
        const char* key = fault.wanted       ? "ui.taste.fault_wanted"
                          : fault.comesFirst ? "ui.taste.fault_first"
                                             : "ui.taste.fault_marked";
        words << text(say(key)
                          .with("fault", fault.name)
                          .with("severity", toStd(severityWord(fault.mark.severity)))
                          .with("action", fault.action));
        if (fault.comesFirst)
            weight = MessageLabel::Weight::fault;
        else if (!fault.wanted && weight == MessageLabel::Weight::note)
            weight = MessageLabel::Weight::warning;
    }
    faults_->say(weight, words.join(QLatin1Char('\n')));
}

void SittingSummary::showKnown(const Result<desk::EstimatesView>& known,
                               const std::optional<desk::Filed<facts::TargetFact>>& target) {
    for (const Dimension d : allDimensions) {
        known_[d].glyph->setVisible(known.has_value());
        known_[d].words->setVisible(known.has_value());
    }
    if (!known) {
        knownHead_->setText(tr("Best estimate today"));
        knownNote_->setText(session_.words(known.error()));
        return;
    }
    knownHead_->setText(known->tastedOn ? tr("Best estimate today (tasted %1)").arg(dayWords(*known->tastedOn))
                                        : tr("Best estimate today (not tasted this cycle)"));
    const tasting::Target window = target ? target->fact.target : tasting::Target{};
    // A fault in the way is one answer for all.
    const bool oneForAll = std::all_of(allDimensions.begin(), allDimensions.end(),
                                       [&](Dimension d) { return known->verdicts[d].kind == VerdictKind::faultFirst; });
    for (const Dimension d : allDimensions) {
        const bool first = d == allDimensions.front();
        glyphs_[d] = glyphOf(known->verdicts[d]);
        known_[d].glyph->setVisible(first || !oneForAll);
        known_[d].words->setVisible(first || !oneForAll);
        const QString reason = session_.words(known->verdicts[d].reason);
        known_[d].words->setText(oneForAll ? reason : text(knownOf(d, known->verdicts[d], reason, window.windows[d])));
    }
    knownNote_->setText(target ? text(say("ui.taste.target_since").with("on", target->fact.on))
                               : own("ui.taste.no_target"));
    paintGlyphs();
}

void SittingSummary::paintGlyphs() {
    for (const Dimension d : allDimensions)
        if (known_[d].glyph)
            known_[d].glyph->setPixmap(glyphBeside(*this, glyphs_[d], .95));
}

void SittingSummary::changeEvent(QEvent* event) {
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange)
        paintGlyphs();
    QWidget::changeEvent(event);
}

QString SittingSummary::sidesWords() const {
    return sides_->text();
}
QString SittingSummary::faultWords() const {
    return faults_->words();
}
QString SittingSummary::verdictWords() const {
    QStringList words;
    for (const Dimension d : allDimensions)
        if (!known_[d].words->isHidden())
            words << known_[d].words->text();
    words << knownNote_->text();
    return words.join(QLatin1Char('\n'));
}

} // namespace staveline::ui
