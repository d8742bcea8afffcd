// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/total_bar.h"

#include "advice/advise.h"
#include "ui/present/verdict_words.h"
#include "ui/widgets/message_label.h"

#include <QGridLayout>
#include <QLabel>
#include <QPushButton>

namespace staveline::ui {

using tasting::scores;

namespace {

QString scoresOf(const PerDimension<advice::Band>& bands) {
    QStringList scores;
    for (const Dimension d : allDimensions)
        scores << inSentence(nameOf(d)) + QLatin1Char(' ') + bandWords(bands[d]);
    return scores.join(QStringLiteral(", "));
}

} // namespace

TotalBar::TotalBar(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), total_(new QLabel(this)), why_(new QLabel(this)),
      findings_(new MessageLabel(this)), reset_(new QPushButton(tr("Reset"), this)),
      adopt_(new QPushButton(tr("Adopt"), this)) {
    for (QLabel* label : {total_, why_})
        label->setWordWrap(true);
    total_->setObjectName(QStringLiteral("total"));
    why_->setForegroundRole(QPalette::PlaceholderText);
    QSizePolicy policy = why_->sizePolicy();
    policy.setRetainSizeWhenHidden(true); // Adopt does not move when it says why it is grey
    why_->setSizePolicy(policy);
    why_->setMinimumHeight(lines(*this, 1.1));
    reset_->setToolTip(tr("Reset to current settings (Ctrl+Shift+A)"));
    adopt_->setToolTip(tr("Writes the plan and its forecast (Ctrl+Enter)"));
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(lines(*this, .6));
    grid->setVerticalSpacing(lines(*this, .2));
    grid->addWidget(findings_, 0, 0, 1, 3);
    grid->addWidget(total_, 1, 0);
    grid->addWidget(reset_, 1, 1);
    grid->addWidget(adopt_, 1, 2);
    grid->addWidget(why_, 2, 0, 1, 3);
    grid->setColumnStretch(0, 1);
    total_->setMinimumHeight(2 * total_->fontMetrics().lineSpacing()); // the bar keeps its height while trying
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Maximum);
    connect(reset_, &QPushButton::clicked, this, &TotalBar::resetAsked);
    connect(adopt_, &QPushButton::clicked, this, &TotalBar::adoptAsked);
    clear();
}

void TotalBar::setTrial(const QString& name, const advice::Trial& trial) {
    QString words = tr("%1, at the next draw: %2").arg(name, scoresOf(trial.next));
    if (trial.depth == advice::TrialDepth::settled)
        words += tr("; if repeated: %1").arg(scoresOf(trial.settled));
    words += tr(". Vessel then at %1.").arg(session_.amount(trial.nextBeer.bitterness));
    total_->setText(words);
}

void TotalBar::setTogether(const std::vector<Message>& findings) {
    QStringList words;
    for (const Message& finding : findings)
        words << session_.words(finding);
    if (words.isEmpty())
        findings_->clear();
    else
        findings_->say(MessageLabel::Weight::warning, words.join(QLatin1Char(' ')));
}

void TotalBar::clear() {
    total_->clear();
    findings_->clear();
    setAdoptable(false, {});
}

void TotalBar::setAdoptable(bool can, const QString& why, bool saidAbove) {
    adopt_->setEnabled(can);
    why_->setText(why);
    why_->setVisible(!why.isEmpty() && !saidAbove);
    adopt_->setAccessibleDescription(why);
}

QString TotalBar::words() const {
    return total_->text();
}
QString TotalBar::findings() const {
    return findings_->words();
}
QString TotalBar::whyNot() const {
    return why_->text();
}

} // namespace staveline::ui
