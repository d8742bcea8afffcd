// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/finish/beer_panel.h"

#include "ui/present/ledger_model.h"
#include "ui/present/vessel_words.h"
#include "ui/widgets/theme.h"
#include "ui/widgets/vessel_drawing.h"

#include <QLabel>
#include <QVBoxLayout>

namespace staveline::ui {
namespace {

constexpr qsizetype mostShown = 5; // of the last draws, and of the last measurements

/// Newest first, a line each.
template <class Words> QString lastOf(const std::vector<desk::LedgerLine>& ledger, const Words& wordsOf) {
    QStringList found;
    for (auto line = ledger.rbegin(); line != ledger.rend() && found.size() < mostShown; ++line)
        if (const QString words = wordsOf(*line); !words.isEmpty())
            found << BeerPanel::tr("%1: %2").arg(dayWords(line->on), words);
    return found.isEmpty() ? BeerPanel::tr("none yet") : found.join(QLatin1Char('\n'));
}

QLabel* wrapped(QWidget* parent) {
    auto* label = new QLabel(parent);
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    return label;
}

} // namespace

BeerPanel::BeerPanel(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), level_(wrapped(this)), ages_(wrapped(this)),
      drawing_(new VesselDrawing(this)), measured_(wrapped(this)), draws_(wrapped(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, lines(*this, .4), lines(*this, .6), 0);
    column->setSpacing(lines(*this, .2));
    const auto head = [&](const QString& words) {
        auto* heading = new QLabel(words, this);
        setType(*heading, Type::strong);
        heading->setContentsMargins(0, lines(*this, .6), 0, 0);
        column->addWidget(heading);
    };
    setType(*level_, Type::number);
    column->addWidget(level_);
    column->addWidget(ages_);
    column->addSpacing(lines(*this, .4));
    column->addWidget(drawing_, 1);
    head(tr("Last measured"));
    column->addWidget(measured_);
    head(tr("Last draws"));
    column->addWidget(draws_);
    column->addStretch(1);
}

void BeerPanel::show(const desk::LedgerView& ledger) {
    const desk::VesselSummary& vessel = ledger.vessel;
    const bool empty = !(vessel.now.volume.l > 0);
    level_->setText(empty ? tr("empty") : session_.amount(vessel.now.volume));
    ages_->setText(ageWords(vessel.now));
    ages_->setVisible(!ages_->text().isEmpty());
    drawing_->setLook({vessel.facts.shape, vessel.facts.capacity, vessel.now, std::nullopt}, session_.units());
    measured_->setText(lastOf(
        ledger.lines, [this](const desk::LedgerLine& line) { return measuredWords(line.measured, session_.units()); }));
    draws_->setText(lastOf(ledger.lines, [this](const desk::LedgerLine& line) {
        return line.kind == vessel::EntryKind::drawOff ? session_.words(line.text) : QString();
    }));
}

} // namespace staveline::ui
