// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/draw_day_page.h"

#include "desk/advice.h"
#include "desk/draw_day.h"
#include "ui/present/verdict_words.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

namespace staveline::ui {

using desk::DrawDayView;

namespace {

QString promisedWords(const DrawDayView& view, Dimension d) {
    if (!view.choice || !view.choice->forecast)
        return QStringLiteral("–");
    return bandWords(desk::promisedBand(*view.choice->forecast, d));
}

} // namespace

DrawDayPage::DrawDayPage(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), column_(new QVBoxLayout(this)), message_(new MessageLabel(this)),
      taste_(new QPushButton(tr("Taste now"), this)), draw_(new QPushButton(tr("Record the draw"), this)) {
    column_->setContentsMargins(0, 0, 0, 0);
    column_->setSpacing(lines(*this, .5));
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(taste_);
    buttons->addWidget(draw_);
    buttons->addStretch(1);
    column_->addWidget(message_);
    column_->addLayout(buttons);
    column_->addStretch(1);
    connect(taste_, &QPushButton::clicked, this, &DrawDayPage::tasteAsked);
    connect(draw_, &QPushButton::clicked, this, &DrawDayPage::drawAsked);
}

void DrawDayPage::setVessel(const facts::VesselName& vessel) {
    const auto view = session_.desk().drawDay(vessel);
    delete page_;
    page_ = nullptr;
    if (!view) {
        message_->say(MessageLabel::Weight::note, session_.words(view.error()));
        return;
    }
    message_->clear();
    build(*view);
}

void DrawDayPage::build(const DrawDayView& view) {
    page_ = new QWidget(this);
    auto* column = new QVBoxLayout(page_);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(lines(*this, .25));
    addHead(*column, tr("Draw day"));
    addLitres(*column, view);
    addScores(*column, view);
    addMessages(*column, tr("Not ready"), view.findings, MessageLabel::Weight::warning);
    addMessages(*column, tr("If you decide not to draw"), view.planB, MessageLabel::Weight::planB);
    column_->insertWidget(0, page_);
    page_->show();
}

void DrawDayPage::addHead(QVBoxLayout& column, const QString& words) {
    auto* label = new QLabel(words, page_);
    setType(*label, Type::strong);
    if (column.count() > 0)
        column.addSpacing(lines(*this, .5));
    column.addWidget(label);
}

void DrawDayPage::addLine(QVBoxLayout& column, const QString& what, const QString& words) {
    auto* label = new QLabel(tr("%1: %2").arg(what, words), page_);
    label->setWordWrap(true);
    column.addWidget(label);
}

void DrawDayPage::addLitres(QVBoxLayout& column, const DrawDayView& view) {
    addLine(column, tr("The vessel holds"), session_.amount(view.held));
    addLine(column, view.drawn ? tr("Drawn") : tr("Planned to draw"), session_.amount(view.plannedDraw));
    addLine(column, tr("Refill needed"), session_.amount(view.refill));
    if (view.brewed)
        addLine(column, tr("Brewed for this refill"),
                tr("%1, %2").arg(qs(view.brewed->name), dayWords(view.brewed->on)));
    else
        addLine(column, tr("Brewed for this refill"), tr("nothing yet"));
    if (view.brewGives)
        addLine(column, tr("The brew gives"), session_.amount(*view.brewGives));
}

void DrawDayPage::addScores(QVBoxLayout& column, const DrawDayView& view) {
    auto* grid = new QGridLayout;
    grid->setHorizontalSpacing(lines(*this, 1.2));
    grid->setVerticalSpacing(lines(*this, .1));
    const auto put = [&](int row, int at, const QString& words, bool quiet) {
        auto* label = new QLabel(words, page_);
        if (quiet)
            label->setForegroundRole(QPalette::PlaceholderText);
        grid->addWidget(label, row, at);
    };
    put(1, 0, tr("today"), true);
    put(2, 0, tr("promised for this draw's refill"), true);
    put(3, 0, tr("expected at the next draw now"), true);
    int at = 1;
    for (const Dimension d : allDimensions) {
        put(0, at, nameOf(d), true);
        put(1, at, estimateWords(view.estimates.combined[d]), false);
        put(2, at, promisedWords(view, d), false);
        put(3, at++, view.expected[d] ? bandWords(*view.expected[d]) : QStringLiteral("–"), false);
    }
    grid->setColumnStretch(at, 1);
    column.addSpacing(lines(*this, .5));
    column.addLayout(grid);
}

void DrawDayPage::addMessages(QVBoxLayout& column, const QString& title, const std::vector<Message>& messages,
                              MessageLabel::Weight weight) {
    if (messages.empty())
        return;
    addHead(column, title);
    for (const Message& message : messages) {
        auto* label = new MessageLabel(page_);
        const bool caution = message.key.starts_with("caution."); // wherever it stands
        label->say(caution ? MessageLabel::Weight::warning : weight, session_.words(message));
        column.addWidget(label);
    }
}

QStringList DrawDayPage::words() const {
    QStringList all{message_->words()};
    if (page_)
        for (const QLabel* label : page_->findChildren<QLabel*>())
            all << label->text();
    return all;
}

} // namespace staveline::ui
