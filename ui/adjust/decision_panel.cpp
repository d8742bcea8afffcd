// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/decision_panel.h"

#include "estimate/words.h"
#include "ui/adjust/answer_panel.h"
#include "ui/adjust/linked_label.h"
#include "ui/adjust/move_table.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/theme.h"

#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace staveline::ui {

using tasting::VerdictKind;

namespace {

bool anySeen(const desk::AdviceJob& job) {
    return std::any_of(allDimensions.begin(), allDimensions.end(), [&](Dimension d) { return job.input.seen[d]; });
}

/// The answers that stand before any plan; hold and taste again are the decision's own sentence.
std::vector<desk::FullAnswer> answersBefore(const PerDimension<tasting::Verdict>& verdicts,
                                            const desk::AdviceJob& job) {
    auto answers = desk::answersOf(verdicts, job.estimates.faults, job.dates);
    std::erase_if(answers, [&](const desk::FullAnswer& answer) {
        const VerdictKind kind = answer.verdict.kind;
        return kind == VerdictKind::hold || kind == VerdictKind::tasteAgain ||
               (kind == VerdictKind::neverTasted && anySeen(job));
    });
    return answers;
}

QString joined(const std::vector<Message>& messages, const DisplayUnits& units) {
    QStringList words;
    for (const Message& message : messages)
        words << text(message, units);
    return words.join(QLatin1Char('\n'));
}

void showWords(QLabel& label, const QString& words) {
    label.setText(words);
    label.setVisible(!words.isEmpty());
}

void warn(MessageLabel& label, const QString& words) {
    words.isEmpty() ? label.clear() : label.say(MessageLabel::Weight::warning, words);
}

} // namespace

DecisionPanel::DecisionPanel(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), answers_(new AnswerPanel(this)), taste_(new QPushButton(tr("Taste"), this)),
      head_(new QLabel(this)), working_(new QLabel(this)), why_(new LinkedLabel(this)),
      missing_(new MessageLabel(this)), moves_(new MoveTable(this)), adopted_(new QLabel(this)),
      since_(new QLabel(this)), tasting_(new QLabel(this)), doubts_(new MessageLabel(this)) {
    setAccessibleName(tr("What to brew, and why"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, lines(*this, .6));
    column->setSpacing(lines(*this, .35));
    const auto add = [&](QWidget* part, const char* name) {
        part->setObjectName(QString::fromLatin1(name));
        if (auto* label = qobject_cast<QLabel*>(part))
            label->setWordWrap(true);
        column->addWidget(part);
    };
    setType(*head_, Type::title);
    setType(*working_, Type::strong);
    column->addWidget(answers_);
    column->addWidget(taste_, 0, Qt::AlignLeft);
    add(head_, "decision");
    add(working_, "meanwhile");
    add(why_, "why");
    add(missing_, "missing");
    add(moves_, "moves");
    add(adopted_, "adopted");
    add(since_, "since");
    column->addSpacing(lines(*this, .2));
    for (const Dimension d : allDimensions)
        add(taught_[d] = new QLabel(this), ("taught " + std::string(name(d))).c_str());
    add(tasting_, "tasting");
    add(doubts_, "doubts");
    connect(moves_, &MoveTable::asked, this, &DecisionPanel::explainAsked);
    connect(why_, &LinkedLabel::asked, this, [this](const Origin& origin) { Q_EMIT explainAsked(0, origin); });
    connect(taste_, &QPushButton::clicked, this, &DecisionPanel::tasteAsked);
    for (QWidget* hidden : std::initializer_list<QWidget*>{taste_, working_, adopted_, since_, tasting_})
        hidden->setVisible(false);
}

void DecisionPanel::setAnswers(const PerDimension<tasting::Verdict>& verdicts, const desk::AdviceJob& job) {
    const auto answers = answersBefore(verdicts, job);
    answers_->setAnswers(answers, session_.units());
    never_ = !anySeen(job);
    withoutPlan_ = never_ || std::any_of(answers.begin(), answers.end(), [](const desk::FullAnswer& answer) {
                       return answer.verdict.kind == VerdictKind::faultFirst;
                   });
    taste_->setVisible(never_);
}

void DecisionPanel::setKnown(const desk::AdviceJob& job) {
    setAnswers(job.estimates.verdicts, job);
    for (const Dimension d : allDimensions)
        showWords(*taught_[d], anySeen(job) ? session_.words(estimate::taught(d, job.estimates.offsets[d],
                                                                              job.estimates.sittings[d]))
                                            : QString());
    std::vector<Message> doubts;
    for (const estimate::Doubt& doubt : job.estimates.doubts)
        doubts.push_back(estimate::told(doubt));
    warn(*doubts_, joined(doubts, session_.units()));
    showHead();
}

void DecisionPanel::setAdopted(const QString& words, const QString& since) {
    showWords(*adopted_, words);
    showWords(*since_, since);
}

void DecisionPanel::setAdvice(const Answer& answer) {
    setAnswers(answer.advice->verdicts, *answer.job);
    const Message taster = oneMoreTaster(*answer.advice, answer.job->input);
    taster_ = answer.advice->tasting.dimension ? std::optional(taster) : std::nullopt;
    const auto& notes = answer.advice->notes;
    const Message titrate = say("advice.note.titrate");
    const bool titrated = std::find(notes.begin(), notes.end(), titrate) != notes.end();
    const Message below = !taster_ ? taster : titrated ? titrate : Message{};
    showWords(*tasting_, below.key.empty() ? QString() : session_.words(below));
    showHead();
}

void DecisionPanel::clearAdvice() {
    taster_.reset();
    plan_ = {};
    showWords(*tasting_, {});
    showHead();
}

void DecisionPanel::clear() {
    answers_->setAnswers({}, session_.units());
    never_ = withoutPlan_ = false;
    taste_->setVisible(false);
    for (QLabel* said : {taught_[Dimension::acidity], taught_[Dimension::funk], taught_[Dimension::body]})
        showWords(*said, {});
    doubts_->clear();
    setAdopted({}, {});
    clearAdvice();
}

void DecisionPanel::setWaiting(const QString& words) {
    waiting_ = words;
    showHead();
}

void DecisionPanel::setPlan(const PlanInView& plan) {
    plan_ = plan;
    showHead();
}

/// One more taster goes before the plan, which then stands as the working one.
void DecisionPanel::showHead() {
    const bool known = !plan_.sentence.key.empty();
    const bool plan = known && !withoutPlan_;
    const QString words = plan ? session_.words(plan_.sentence) : QString();
    if (plan && taster_) {
        showWords(*head_, session_.words(*taster_));
        showWords(*working_, plan_.meanwhile.key.empty() ? words : session_.words(plan_.meanwhile));
    } else {
        showWords(*head_, withoutPlan_ || plan ? words : waiting_);
        showWords(*working_, {});
    }
    const bool why = plan && !plan_.why.key.empty();
    if (why)
        why_->say(plan_.why, session_.units());
    why_->setVisible(why);
    warn(*missing_, known ? joined(plan_.missing, session_.units()) : QString());
    moves_->setMoves(known ? plan_.moves : std::vector<PlannedMove>{}, session_.units());
}

} // namespace staveline::ui
