// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/notice_bar.h"

#include "ui/widgets/message_label.h"

#include <QGridLayout>
#include <QToolButton>

namespace staveline::ui {

NoticeBar::NoticeBar(QWidget* parent)
    : QWidget(parent), notices_(new MessageLabel(this)), fault_(new MessageLabel(this)), close_(new QToolButton(this)) {
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(lines(*this, .8), lines(*this, .3), lines(*this, .8), lines(*this, .3));
    grid->addWidget(notices_, 0, 0, 1, 2);
    grid->addWidget(fault_, 1, 0);
    grid->addWidget(close_, 1, 1, Qt::AlignTop);
    grid->setColumnStretch(0, 1);
    close_->setText(tr("Close"));
    close_->setAccessibleName(tr("Close this message"));
    close_->setAutoRaise(true);
    close_->setFocusPolicy(Qt::StrongFocus);
    connect(close_, &QToolButton::clicked, this, &NoticeBar::clearFault);
    setBackgroundRole(QPalette::AlternateBase);
    setAutoFillBackground(true);
    setNotices({});
    clearFault();
}

void NoticeBar::setNotices(const QStringList& notices) {
    notices_->say(MessageLabel::Weight::warning, notices.join(QLatin1Char('\n')));
    setVisible(!notices.isEmpty() || !fault_->words().isEmpty());
}

void NoticeBar::showFault(const QString& words) {
    fault_->say(MessageLabel::Weight::fault, words);
    close_->setVisible(!words.isEmpty());
    setVisible(!words.isEmpty() || !notices_->words().isEmpty());
}

void NoticeBar::clearFault() {
    showFault({});
}

QString NoticeBar::words() const {
    return (notices_->words() + QLatin1Char('\n') + fault_->words()).trimmed();
}

} // namespace staveline::ui
