// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/finish/page.h"

#include "ui/finish/answer_parts.h"
#include "ui/finish/beer_panel.h"
#include "ui/finish/blend_form.h"
#include "ui/finish/pack_form.h"
#include "ui/widgets/accessible_controls.h"
#include "ui/widgets/panes.h"
#include "ui/widgets/steady_scroll.h"
#include "ui/widgets/theme.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QStackedWidget>
#include <QTimer>

#include <utility>

namespace staveline::ui {
namespace {

constexpr int pause = 250; // ms without a keystroke before the answer is worked out
constexpr auto note = MessageLabel::Weight::note;

void mark(QPushButton& button, bool inFront) {
    button.setChecked(inFront);
    setType(button, inFront ? Type::strong : Type::body);
}

} // namespace

FinishPage::FinishPage(Session& session, QWidget* parent)
    : WorkPage(session, parent), beer_(new BeerPanel(session)), places_(new QStackedWidget), answer_(new AnswerView),
      later_(new QTimer(this)) {
    auto* inner = new Panes(QStringLiteral("finish_answer"));
    inner->addPane(makeMiddle(), 25, 18);
    auto* answers = new SteadyScroll(answer_, inner);
    answers->setAccessibleName(tr("Answer"));
    inner->addPane(answers, 22, 15);
    auto* outer = new Panes(QStringLiteral("finish"), this);
    outer->addPane(new SteadyScroll(beer_, outer), 14, 10);
    outer->addPane(inner, 47, 0);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, lines(*this, .5), 0, 0);
    column->addWidget(outer);
    later_->setSingleShot(true);
    later_->setInterval(pause);
    connect(later_, &QTimer::timeout, this, &FinishPage::answerNow);
}

QWidget* FinishPage::makeMiddle() {
    auto* middle = new QWidget;
    auto* row = new QHBoxLayout;
    row->setSpacing(lines(*this, .3));
    const std::array names = {tr("Pack"), tr("Blend")};
    for (std::size_t i = 0; i < names.size(); ++i) {
        auto* button = new QPushButton(names[i], middle);
        button->setCheckable(true);
        tellAsOneOfSeveral(*button);
        mark(*button, i == 0);
        choices_[i] = button;
        connect(button, &QPushButton::clicked, this, [this, i] { showPart(static_cast<Part>(i)); });
        row->addWidget(button);
    }
    row->addStretch(1);
    auto* column = new QVBoxLayout(middle);
    column->setContentsMargins(lines(*this, .6), 0, 0, 0);
    column->addLayout(row);
    column->addWidget(places_, 1);
    return middle;
}

FinishPage::Forms FinishPage::makeForms() {
    Forms made;
    made.pack = new PackForm(session());
    made.blend = new BlendForm(session());
    const std::array<QuestionForm*, 2> each = {made.pack, made.blend};
    for (std::size_t i = 0; i < each.size(); ++i) {
        made.places[i] = new SteadyScroll(each[i], places_);
        made.places[i]->setAccessibleName(choices_[i]->text());
        places_->addWidget(made.places[i]);
        connect(each[i], &QuestionForm::edited, later_, qOverload<>(&QTimer::start));
    }
    return made;
}

FinishPage::Forms& FinishPage::forms() {
    const auto known = forms_.find(vessel());
    return known != forms_.end() ? known->second : forms_.emplace(vessel(), makeForms()).first->second;
}

QuestionForm& FinishPage::inFront() {
    if (part_ == Part::pack)
        return *forms().pack;
    return *forms().blend;
}

void FinishPage::showPart(Part part) {
    part_ = part;
    for (std::size_t i = 0; i < choices_.size(); ++i)
        mark(*choices_[i], i == static_cast<std::size_t>(part));
    if (vessel().empty())
        return;
    places_->setCurrentWidget(forms().places[static_cast<std::size_t>(part)]);
    answerNow();
}

void FinishPage::refresh() {
    const auto ledger = session().desk().ledger(vessel());
    const auto vessels = session().desk().cellar();
    if (!ledger || !vessels) {
        Q_EMIT session().failed(ledger ? vessels.error() : ledger.error());
        return;
    }
    beer_->show(*ledger);
    forms().blend->offer(*vessels, vessel());
    showPart(part_);
    if (std::exchange(shown_, vessel()) != vessel())
        for (SteadyScroll* scroll : findChildren<SteadyScroll*>())
            scroll->toTop();
}

void FinishPage::answerNow() {
    later_->stop();
    QuestionForm& form = inFront();
    form.recheck();
    if (!form.usable())
        answer_->wait(note, own("ui.finish.unusable"));
    else if (part_ == Part::pack)
        answerPack(*forms().pack);
    else
        answerBlend(*forms().blend);
}

template <class Form> void FinishPage::tell(Form& form, const Fault& fault) {
    if (form.showFault(fault))
        answer_->wait(note, own("ui.finish.unusable"));
    else
        answer_->wait(MessageLabel::Weight::fault, session().words(fault));
}

void FinishPage::answerPack(PackForm& form) {
    if (!form.asks()) {
        answer_->wait(note, own("ui.finish.pack.first"));
        return;
    }
    const auto answer =
        form.request(vessel()).and_then([this](const auto& request) { return session().desk().pack(request); });
    if (!answer) {
        tell(form, answer.error());
        return;
    }
    form.sayWhatCame(*answer);
    answer_->show(answerOf(*answer, session()));
}

void FinishPage::answerBlend(BlendForm& form) {
    if (!form.asks()) {
        answer_->wait(note, own("ui.finish.blend.first"));
        return;
    }
    const auto answer = session().desk().blend(form.request());
    if (!answer)
        tell(form, answer.error());
    else
        answer_->show(answerOf(*answer, session()));
}

void FinishPage::focusWork() {
    inFront().focusFirst();
}

} // namespace staveline::ui
