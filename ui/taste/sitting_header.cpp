// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/taste/sitting_header.h"

#include "desk/filed.h"
#include "ui/present/text.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/theme.h"
#include "ui/widgets/underlined_tabs.h"
#include "ui/widgets/wrap_layout.h"

#include <QCoreApplication>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSignalBlocker>
#include <QTimer>
#include <QVBoxLayout>

#include <chrono>

namespace staveline::ui {
namespace {

constexpr std::size_t namesInWords = 2;
constexpr std::chrono::milliseconds pauseAfterKey{600};

QString tr(const char* source, int n = -1) {
    return QCoreApplication::translate("SittingHeader", source, nullptr, n);
}

QString sittingWords(const desk::Filed<facts::SittingFact>& filed) {
    const QString who = tasterWords(tastersOf(filed.fact.sitting));
    const QString day = dayWords(filed.fact.sitting.on);
    const QString when = filed.fact.learn ? day : tr("%1 (not learned from)").arg(day);
    return who.isEmpty() ? when : tr("%1, %2").arg(when, who);
}

} // namespace

QString tasterWords(const std::vector<std::string>& tasters) {
    QStringList named;
    for (const std::string& taster : tasters)
        if (!taster.empty())
            named << qs(taster);
    const auto more = static_cast<int>(named.size()) - static_cast<int>(namesInWords);
    if (more <= 0)
        return named.join(QStringLiteral(", "));
    return tr("%1 and %2 more").arg(named.mid(0, namesInWords).join(QStringLiteral(", "))).arg(more);
}

QString tabWords(const std::vector<std::string>& tasters, std::size_t index) {
    QString name = qs(tasters[index]);
    return name.isEmpty() ? tr("taster %1").arg(index + 1) : name;
}

SittingHeader::SittingHeader(QWidget* parent)
    : QWidget(parent), sittings_(new ChoiceField(this)), new_(new QPushButton(tr("New tasting"), this)),
      date_(new DateField(Day{}, this)), nameLabel_(new QLabel(tr("Taster"), this)), name_(new QLineEdit(this)),
      tasters_(new UnderlinedTabs(this)), another_(new QPushButton(tr("Another taster"), this)), message_(*name_),
      pause_(new QTimer(this)) {
    sittings_->setAccessibleName(tr("Sitting"));
    date_->setName(tr("Tasted on"));
    name_->setPlaceholderText(tr("name"));
    name_->setFixedWidth(lines(*this, 8));
    name_->setMaxLength(60);
    nameLabel_->setBuddy(name_);
    tasters_->setAccessibleName(tr("Tasters"));
    tasters_->setUsesScrollButtons(true);
    another_->setFlat(true);
    pause_->setSingleShot(true);
    pause_->setInterval(pauseAfterKey);
    auto* first = new WrapLayout(nullptr, lines(*this, .4));
    for (QWidget* part : std::initializer_list<QWidget*>{sittings_, new_, date_})
        first->addWidget(part);
    auto* second = new WrapLayout(nullptr, lines(*this, .4));
    for (QWidget* part : std::initializer_list<QWidget*>{nameLabel_, name_, tasters_})
        second->addWidget(part);
    second->addStretch();
    second->addWidget(another_);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(lines(*this, .3));
    column->addLayout(first);
    column->addLayout(second);
    connectParts();
}

void SittingHeader::connectParts() {
    connect(sittings_, &ChoiceField::activated, this, [this] {
        const QString word = sittings_->currentData().toString();
        Q_EMIT chose(word.isEmpty() ? std::nullopt : std::optional<std::int64_t>(word.toLongLong()));
    });
    connect(new_, &QPushButton::clicked, this, &SittingHeader::newAsked);
    connect(date_, &DateField::edited, this, &SittingHeader::dayTyped);
    connect(another_, &QPushButton::clicked, this, &SittingHeader::anotherAsked);
    connect(tasters_, &QTabBar::currentChanged, this, &SittingHeader::took);
    // When the click is over: it gives the focus to the tabs.
    connect(
        tasters_, &QTabBar::tabBarClicked, this, [this](int taster) { Q_EMIT clicked(taster); }, Qt::QueuedConnection);
    connect(name_, &QLineEdit::textEdited, this, [this] {
        message_.clear();
        pause_->start();
    });
    connect(name_, &QLineEdit::editingFinished, this, &SittingHeader::finish);
    connect(pause_, &QTimer::timeout, this, &SittingHeader::finish);
}

void SittingHeader::finish() {
    pause_->stop();
    if (name_->isModified() && !name_->isReadOnly())
        Q_EMIT named(name_->text().simplified());
}

void SittingHeader::showSittings(const std::vector<desk::Filed<facts::SittingFact>>& sittings,
                                 std::optional<std::int64_t> inHand) {
    const QSignalBlocker quiet(sittings_);
    std::vector<std::pair<QString, std::string>> offered;
    if (!inHand)
        offered.emplace_back(tr("New tasting"), std::string());
    for (const desk::Filed<facts::SittingFact>& filed : sittings)
        offered.emplace_back(sittingWords(filed), std::to_string(filed.id));
    if (offered != offered_) {
        sittings_->clear();
        for (const auto& [words, word] : offered)
            sittings_->add(words, word);
        offered_ = offered;
    }
    new_->setVisible(inHand.has_value());
    sittings_->setWord(inHand ? std::to_string(*inHand) : std::string());
}

void SittingHeader::showTasters(const SittingDraft& draft) {
    const QSignalBlocker quiet(tasters_);
    const auto count = static_cast<int>(draft.tasters().size());
    while (tasters_->count() > count)
        tasters_->removeTab(tasters_->count() - 1);
    for (int i = 0; i < count; ++i) {
        QString words = tabWords(draft.tasters(), static_cast<std::size_t>(i));
        words.replace(QLatin1Char('&'), QStringLiteral("&&"));
        if (i >= tasters_->count())
            tasters_->addTab(words);
        else if (tasters_->tabText(i) != words)
            tasters_->setTabText(i, words);
    }
    tasters_->setCurrentIndex(static_cast<int>(draft.inHand()));
    tasters_->setVisible(count > 1);
}

void SittingHeader::showDraft(const SittingDraft& draft, Day today, bool anew) {
    showTasters(draft);
    date_->setToday(today);
    if (anew || (date_->day() && !date_->edit()->hasFocus()))
        date_->setDay(draft.now().sitting.on);
    if (!anew && name_->isModified())
        return;
    if (anew)
        message_.clear();
    name_->setText(qs(draft.taster()));
    name_->setModified(false);
}

void SittingHeader::setReadOnly(bool readOnly) {
    new_->setEnabled(!readOnly);
    date_->edit()->setReadOnly(readOnly);
    name_->setReadOnly(readOnly);
    another_->setEnabled(!readOnly);
}

void SittingHeader::focusName() {
    name_->setFocus(Qt::OtherFocusReason);
    name_->selectAll();
}

void SittingHeader::showDayFault(const Fault& fault) {
    date_->showFault(fault);
}

void SittingHeader::showNameFault(const QString& words) {
    if (words.isEmpty()) {
        message_.clear();
        name_->setModified(false);
    } else {
        message_.say(words);
    }
    name_->setAccessibleDescription(words);
}

} // namespace staveline::ui
