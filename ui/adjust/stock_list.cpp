// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/stock_list.h"

#include "desk/stock.h"
#include "ingredient/pantry.h"
#include "ui/adjust/lever_board.h"
#include "ui/present/verdict_words.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/theme.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include <utility>

namespace staveline::ui {
namespace {

QString itemName(const ingredient::Pantry& pantry, const std::string& id) {
    if (const auto yeast = pantry.yeast(id))
        return qs(yeast->name);
    const auto grain = pantry.grain(id);
    return grain ? qs(grain->name) : qs(id);
}

} // namespace

StockList::StockList(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), list_(new QVBoxLayout(this)), item_(new ChoiceField(this)),
      dated_(new QCheckBox(tr("ready on"), this)), readyOn_(new DateField(session.desk().today(), this)),
      add_(new QPushButton(tr("Not at hand"), this)) {
    list_->setContentsMargins(0, lines(*this, .4), 0, 0);
    list_->setSpacing(lines(*this, .3));
    auto* title = new QLabel(tr("Not at hand"), this);
    setType(*title, Type::strong);
    item_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    item_->setMinimumContentsLength(26);
    item_->setAccessibleName(tr("Grain or yeast that is not at hand"));
    readyOn_->setName(tr("Ready on"));
    readyOn_->setDay(session.desk().today() + std::chrono::days{14});
    readyOn_->setVisible(false);
    auto* row = new QHBoxLayout;
    row->addWidget(item_);
    row->addWidget(dated_, 0, Qt::AlignTop);
    row->addWidget(readyOn_);
    row->addWidget(add_, 0, Qt::AlignTop);
    row->addStretch(1);
    row->setAlignment(item_, Qt::AlignTop);
    list_->addWidget(title);
    list_->addLayout(row);
    connect(dated_, &QCheckBox::toggled, readyOn_, &QWidget::setVisible);
    connect(add_, &QPushButton::clicked, this, &StockList::addMissing);
    fillItems();
}

/// Again when the book has others, or names them otherwise; what is chosen stays.
void StockList::fillItems() {
    std::vector<std::pair<std::string, std::string>> offered; // id and name
    const ingredient::Pantry& pantry = session_.desk().pantry();
    for (const ingredient::Yeast& yeast : pantry.yeasts())
        offered.emplace_back(yeast.id, yeast.name);
    for (const ingredient::Grain& grain : pantry.grains())
        offered.emplace_back(grain.id, grain.name);
    if (offered == offered_)
        return;
    offered_ = std::move(offered);
    const std::string chosen = item_->word();
    item_->clear();
    for (const auto& [id, name] : offered_)
        item_->add(sentenceCase(qs(name)), id);
    if (item_->findData(qs(chosen)) >= 0)
        item_->setWord(chosen);
}

void StockList::setPrices(const std::vector<advice::RestrictionPrice>& prices) {
    prices_ = prices;
    refresh();
}

QString StockList::sentence(const facts::AvailabilityFact& fact) const {
    QString words = sentenceCase(itemName(session_.desk().pantry(), fact.item));
    if (fact.available)
        words += fact.bestBefore && *fact.bestBefore < session_.desk().today() ? tr(", past its day") : tr(", used up");
    else if (fact.readyOn)
        words += tr(", ready on %1").arg(dayWords(*fact.readyOn));
    for (const advice::RestrictionPrice& price : prices_)
        if (!price.lock && price.id == fact.item)
            words += QStringLiteral(": ") + priceSentence(price, session_.units());
    return words;
}

void StockList::refresh() {
    const bool writable = !session_.desk().readOnly();
    fillItems();
    for (QWidget* control : std::initializer_list<QWidget*>{item_, dated_, readyOn_, add_})
        control->setEnabled(writable);
    if (lines_) {
        if (lines_->isAncestorOf(focusWidget()))
            item_->setFocus(Qt::OtherFocusReason);
        lines_->hide();
        lines_->deleteLater(); // the button that was pressed is in it
    }
    lines_ = new QWidget(this);
    auto* column = new QVBoxLayout(lines_);
    column->setContentsMargins(0, 0, 0, 0);
    for (const desk::AtHand& item : session_.desk().stock()) {
        const facts::AvailabilityFact& fact = item.counted;
        if (fact.available && item.on(session_.desk().today()))
            continue;
        auto* row = new QHBoxLayout;
        auto* label = new QLabel(sentence(fact), lines_);
        label->setWordWrap(true);
        label->setObjectName(QStringLiteral("missing thing"));
        auto* back = new QPushButton(tr("At hand again"), lines_);
        back->setAccessibleName(tr("%1 is at hand again").arg(itemName(session_.desk().pantry(), fact.item)));
        back->setEnabled(writable);
        connect(back, &QPushButton::clicked, this, [this, item = fact.item] { recordMissing(item, true, {}); });
        row->addWidget(label, 1);
        row->addWidget(back, 0, Qt::AlignTop);
        column->addLayout(row);
    }
    list_->insertWidget(1, lines_);
    lines_->show();
}

void StockList::addMissing() {
    if (dated_->isChecked() && !readyOn_->day()) {
        readyOn_->edit()->setFocus(Qt::OtherFocusReason);
        return; // the field says what is wrong with the day
    }
    recordMissing(item_->word(), false, dated_->isChecked() ? readyOn_->day() : std::nullopt);
}

void StockList::recordMissing(const std::string& item, bool available, std::optional<Day> readyOn) {
    const facts::Fact fact = facts::AvailabilityFact{session_.desk().today(), item, available, readyOn};
    if (const auto done = session_.record(fact); !done)
        Q_EMIT failed(done.error());
}

QStringList StockList::words() const {
    QStringList all;
    for (const QLabel* label : lines_->findChildren<QLabel*>(QStringLiteral("missing thing")))
        all << label->text();
    return all;
}

} // namespace staveline::ui
