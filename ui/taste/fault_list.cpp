// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/taste/fault_list.h"

#include "ui/present/text.h"
#include "ui/taste/fold_button.h"
#include "ui/widgets/theme.h"

#include <QButtonGroup>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>

#include <algorithm>

namespace staveline::ui {
namespace {

constexpr int severities = 4;

} // namespace

QString severityWord(int severity) {
    return own("ui.taste.severity." + std::to_string(std::clamp(severity, 0, severities - 1)));
}

SeverityButton::SeverityButton(const tasting::FaultRule& fault, int severity, QWidget* parent) : QRadioButton(parent) {
    setAccessibleName(tr("%1: %2").arg(qs(fault.name), severityWord(severity)));
    setToolTip(severityWord(severity));
    setFocusPolicy(severity == 0 ? Qt::StrongFocus : Qt::ClickFocus);
    // One stop of the Tab key a fault: the step it has.
    connect(this, &QRadioButton::toggled, this,
            [this](bool on) { setFocusPolicy(on ? Qt::StrongFocus : Qt::ClickFocus); });
}

void SeverityButton::keyPressEvent(QKeyEvent* event) {
    const int key = event->key();
    if (key == Qt::Key_Up || key == Qt::Key_Down)
        Q_EMIT moved(key == Qt::Key_Up ? -1 : 1);
    else if (key >= Qt::Key_0 && key < Qt::Key_0 + severities)
        Q_EMIT chose(key - Qt::Key_0);
    else
        QRadioButton::keyPressEvent(event);
}

FaultList::FaultList(QWidget* parent)
    : QWidget(parent), grid_(new QGridLayout(this)), header_(new FoldButton(false, this)) {
    setAccessibleName(tr("Faults"));
    grid_->setContentsMargins(0, 0, 0, 0);
    grid_->setHorizontalSpacing(lines(*this, .6));
    grid_->setVerticalSpacing(lines(*this, .15));
    grid_->setColumnStretch(0, 1);
    connect(header_, &FoldButton::folded, this, &FaultList::arrange);
    addHeader();
    arrange();
}

void FaultList::addHeader() {
    grid_->addWidget(header_, 0, 0, Qt::AlignLeft);
    for (int severity = 0; severity < severities; ++severity) {
        auto* label = new QLabel(severityWord(severity), this);
        label->setForegroundRole(QPalette::PlaceholderText);
        grid_->addWidget(label, 0, 1 + severity, Qt::AlignHCenter | Qt::AlignBottom);
        heads_[static_cast<std::size_t>(severity)] = label;
    }
}

void FaultList::addRow(const tasting::FaultRule& fault) {
    const int at = grid_->rowCount();
    Row row{&fault, new QLabel(qs(fault.name), this), new QButtonGroup(this), new QLabel(this)};
    row.name->setIndent(lines(*this, .6));
    row.about->setIndent(lines(*this, .6));
    row.about->setWordWrap(true);
    row.about->setTextFormat(Qt::PlainText);
    grid_->addWidget(row.name, at, 0);
    grid_->addWidget(row.about, at + 1, 0, 1, 1 + severities);
    for (int severity = 0; severity < severities; ++severity) {
        auto* step = new SeverityButton(fault, severity, this);
        row.steps->addButton(step, severity);
        grid_->addWidget(step, at, 1 + severity, Qt::AlignHCenter);
        connect(step, &SeverityButton::chose, this, [steps = row.steps](int chosen) {
            steps->button(chosen)->setFocus(Qt::TabFocusReason);
            steps->button(chosen)->click();
        });
        connect(step, &SeverityButton::moved, this,
                [this, index = rows_.size()](int by) { moveFrom(rows_[index], by); });
    }
    connect(row.steps, &QButtonGroup::idToggled, this, [this, index = rows_.size()](int severity, bool on) {
        if (!on)
            return;
        fillRow(rows_[index], severity);
        arrange();
        Q_EMIT marked(qs(rows_[index].fault->id), severity);
    });
    rows_.push_back(row);
}

void FaultList::makeRows() {
    if (!rows_.empty())
        return;
    for (const tasting::FaultRule& fault : tasting::builtInSheet().faults) {
        addRow(fault);
        const QSignalBlocker quiet(rows_.back().steps);
        rows_.back().steps->button(0)->setChecked(true);
    }
    QWidget* before = header_;
    for (const Row& row : rows_)
        for (QAbstractButton* step : row.steps->buttons()) {
            setTabOrder(before, step);
            before = step;
        }
    setReadOnly(readOnly_);
}

int FaultList::severityOf(const Row& row) {
    return std::max(row.steps->checkedId(), 0);
}

void FaultList::fillRow(const Row& row, int severity) {
    row.about->setText(severity > 0 ? text(say("ui.taste.fault_about")
                                               .with("severity", toStd(severityWord(severity)))
                                               .with("cause", row.fault->cause))
                                    : QString());
}

void FaultList::arrange() {
    if (header_->isOpen())
        makeRows();
    QStringList names;
    for (const Row& row : rows_) {
        const int severity = severityOf(row);
        const bool open = header_->isOpen() || severity > 0;
        row.name->setVisible(open);
        row.about->setVisible(severity > 0);
        for (QAbstractButton* step : row.steps->buttons())
            step->setVisible(open);
        if (severity > 0)
            names << tr("%1 %2").arg(qs(row.fault->name), severityWord(severity));
    }
    for (QLabel* label : heads_)
        label->setVisible(header_->isOpen() || !names.isEmpty());
    header_->say(names.isEmpty() ? tr("Faults  none marked")
                                 : tr("Faults  %n marked", nullptr, static_cast<int>(names.size())),
                 names.isEmpty() ? tr("Faults, none marked") : tr("Faults: %1").arg(names.join(QStringLiteral(", "))));
}

void FaultList::moveFrom(const Row& row, int by) {
    std::vector<const Row*> open;
    for (const Row& each : rows_)
        if (header_->isOpen() || severityOf(each) > 0)
            open.push_back(&each);
    const auto at = std::find(open.begin(), open.end(), &row) - open.begin() + by;
    if (at < 0)
        header_->setFocus(Qt::BacktabFocusReason);
    else if (at < static_cast<std::ptrdiff_t>(open.size())) {
        const Row& next = *open[static_cast<std::size_t>(at)];
        next.steps->button(severityOf(next))->setFocus(Qt::TabFocusReason);
    }
}

void FaultList::showDraft(const SittingDraft& draft) {
    if (!draft.now().sitting.faults.empty())
        makeRows();
    for (const Row& row : rows_) {
        const int severity = draft.severity(row.fault->id);
        if (severity != severityOf(row)) {
            const QSignalBlocker quiet(row.steps);
            row.steps->button(std::min(severity, severities - 1))->setChecked(true);
        }
        fillRow(row, severity);
    }
    arrange();
}

void FaultList::setReadOnly(bool readOnly) {
    readOnly_ = readOnly;
    for (const Row& row : rows_)
        for (QAbstractButton* step : row.steps->buttons())
            step->setEnabled(!readOnly);
}

void FaultList::unfold(bool all) {
    header_->setOpen(all);
}

SeverityButton* FaultList::button(std::string_view fault, int severity) const {
    for (const Row& row : rows_)
        if (row.fault->id == fault)
            return qobject_cast<SeverityButton*>(row.steps->button(severity));
    return nullptr;
}

QString FaultList::wordsOf(std::string_view fault) const {
    for (const Row& row : rows_)
        if (row.fault->id == fault)
            return row.about->text();
    return {};
}

} // namespace staveline::ui
