// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/answer_panel.h"

#include "ui/adjust/verdict_words.h"

#include <QCoreApplication>
#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QVBoxLayout>

#include <algorithm>

namespace staveline::ui {
namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("Answer", source);
}

/// "acidity and body" of those with this verdict.
QString concerned(const EstimatesView& estimates, VerdictKind kind) {
    QStringList names;
    for (const Dimension d : allDimensions)
        if (estimates.verdicts[d].kind == kind)
            names << nameOf(d).toLower();
    const QString last = names.isEmpty() ? QString() : names.takeLast();
    return names.isEmpty() ? last : tr("%1 and %2").arg(names.join(QStringLiteral(", ")), last);
}

const Verdict* firstOf(const EstimatesView& estimates, VerdictKind kind) {
    const auto& verdicts = estimates.verdicts.values;
    const auto found =
        std::find_if(verdicts.begin(), verdicts.end(), [&](const Verdict& verdict) { return verdict.kind == kind; });
    return found == verdicts.end() ? nullptr : &*found;
}

QString severityWord(const EstimatesView& estimates, const std::string& fault) {
    for (const FaultMark& mark : estimates.faults)
        if (mark.fault == fault)
            return mark.severity >= 3 ? tr("strong") : tr("clear");
    return {};
}

FullAnswer faultAnswer(const EstimatesView& estimates, const Verdict& verdict) {
    const FaultRule* rule = builtInSheet().findFault(verdict.fault);
    const QString name = qs(rule ? rule->name : verdict.fault);
    const QString how = severityWord(estimates, verdict.fault);
    FullAnswer answer{verdict, tr("Fault first: %1").arg(how.isEmpty() ? name : name + QStringLiteral(", ") + how), {}};
    if (!rule) {
        answer.lines.push_back({tr("What to do"), own("ui.adjust.answer.unknown_fault")});
        return answer;
    }
    answer.lines.push_back({tr("Where it comes from"), sentenceCase(qs(rule->cause)) + QLatin1Char('.')});
    answer.lines.push_back({tr("What to do"), qs(rule->action)});
    answer.lines.push_back({tr("Drawing"), own(rule->drawAllowed ? "tasting.draw.allowed" : "tasting.draw.not")});
    answer.lines.push_back({tr("Refill"), own(rule->refillAdvice)});
    if (verdict.until)
        answer.lines.push_back({tr("Look again"), weekdayWords(*verdict.until)});
    answer.lines.push_back({tr("The recipe"), own("ui.adjust.answer.no_recipe")});
    return answer;
}

FullAnswer waitAnswer(const EstimatesView& estimates, const Verdict& verdict, const DisplayUnits& units) {
    const QString until = verdict.until ? weekdayWords(*verdict.until) : QString();
    FullAnswer answer{verdict,
                      tr("Wait: %1").arg(concerned(estimates, VerdictKind::waitUntil)),
                      {{tr("Until"), until}, {tr("Why"), text(verdict.reason, units)}}};
    const bool falling = verdict.reason.key == "tasting.verdict.wait_gravity";
    answer.lines.push_back(
        {tr("If you do not"), own(falling ? "ui.adjust.answer.gravity_falling" : "ui.adjust.answer.still_moving")});
    return answer;
}

FullAnswer tasteAnswer(const EstimatesView& estimates, const Verdict& verdict) {
    FullAnswer answer{verdict, tr("Taste again: %1").arg(concerned(estimates, VerdictKind::tasteAgain)), {}};
    const bool acidity = estimates.verdicts[Dimension::acidity].kind == VerdictKind::tasteAgain;
    if (acidity)
        answer.lines.push_back({tr("First"), own("ui.adjust.answer.titrate")});
    answer.lines.push_back({acidity ? tr("Then") : tr("First"), own("ui.adjust.answer.tasters")});
    answer.lines.push_back({tr("Meanwhile"), own("ui.adjust.answer.draft")});
    return answer;
}

FullAnswer holdAnswer(const Verdict& verdict, const Schedule& dates) {
    return {verdict,
            tr("Hold: everything is inside its window"),
            {{tr("What to do"), own("ui.adjust.answer.hold")},
             {tr("Next draw"), weekdayWords(dates.draw)},
             {tr("Taste again"), weekdayWords(dates.nextSample)}}};
}

} // namespace

std::vector<FullAnswer> answersOf(const EstimatesView& estimates, const Schedule& dates, const DisplayUnits& units) {
    if (const Verdict* fault = firstOf(estimates, VerdictKind::faultFirst))
        return {faultAnswer(estimates, *fault)};
    std::vector<FullAnswer> answers;
    if (const Verdict* wait = firstOf(estimates, VerdictKind::waitUntil))
        answers.push_back(waitAnswer(estimates, *wait, units));
    if (const Verdict* again = firstOf(estimates, VerdictKind::tasteAgain))
        answers.push_back(tasteAnswer(estimates, *again));
    const auto& verdicts = estimates.verdicts.values;
    if (std::all_of(verdicts.begin(), verdicts.end(), [](const Verdict& v) { return v.kind == VerdictKind::hold; }))
        answers.push_back(holdAnswer(verdicts.front(), dates));
    return answers;
}

AnswerPanel::AnswerPanel(QWidget* parent) : QWidget(parent), column_(new QVBoxLayout(this)) {
    column_->setContentsMargins(0, 0, 0, 0);
    setVisible(false);
}

void AnswerPanel::setAnswers(const std::vector<FullAnswer>& answers) {
    answers_ = answers;
    build();
}

void AnswerPanel::build() {
    delete page_;
    page_ = new QWidget(this);
    auto* column = new QVBoxLayout(page_);
    column->setContentsMargins(0, 0, 0, lines(*this, .4));
    column->setSpacing(lines(*this, .3));
    for (const FullAnswer& answer : answers_)
        add(*column, answer);
    column_->addWidget(page_);
    setVisible(!answers_.empty());
}

void AnswerPanel::add(QVBoxLayout& column, const FullAnswer& answer) {
    auto* head = new QHBoxLayout;
    auto* shape = new QLabel(page_);
    shape->setPixmap(verdictPixmap(answer.verdict, lines(*this, 1.1), palette(), devicePixelRatioF()));
    auto* title = new QLabel(answer.title, page_);
    title->setWordWrap(true);
    setType(*title, Type::strong);
    head->setSpacing(lines(*this, .4));
    head->addWidget(shape, 0, Qt::AlignTop);
    head->addWidget(title, 1);
    column.addLayout(head);
    for (const AnswerLine& line : answer.lines) {
        auto* words = new QLabel(tr("%1: %2").arg(line.head, line.words), page_);
        words->setWordWrap(true);
        column.addWidget(words);
    }
}

void AnswerPanel::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange && !answers_.empty())
        build();
}

QStringList AnswerPanel::words() const {
    QStringList all;
    for (const FullAnswer& answer : answers_) {
        all << answer.title;
        for (const AnswerLine& line : answer.lines)
            all << tr("%1: %2").arg(line.head, line.words);
    }
    return all;
}

} // namespace staveline::ui
