// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/entry_frame.h"

#include "ui/widgets/message_label.h"
#include "ui/widgets/theme.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include <utility>

namespace staveline::ui {

EntryFrame::EntryFrame(Session& session, double room, QWidget* parent)
    : QFrame(parent), session_(session), title_(new QLabel(this)), form_(new FactForm(this)),
      message_(new MessageLabel(this)), asking_(new QWidget(this)), question_(new MessageLabel(asking_)),
      goOn_(new QPushButton(tr("Go on with it"), asking_)), instead_(new QPushButton(asking_)),
      record_(new QPushButton(this)), leave_(new QPushButton(tr("Cancel (Esc)"), this)) {
    setAccessibleName(tr("Entry"));
    message_->keepRoom(room);
    setType(*title_, Type::strong);
    record_->setDefault(true);
    record_->setAutoDefault(true);
    leave_->setFlat(true);
    leave_->setAutoDefault(true); // Enter on it leaves, it does not record
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, lines(*this, .5), 0, 0);
    column->setSpacing(lines(*this, .5));
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(record_);
    buttons->addWidget(leave_);
    buttons->addStretch(1);
    column->addWidget(title_);
    column->addWidget(form_);
    column->addWidget(message_);
    column->addLayout(buttons);
    column->addWidget(makeQuestion());
    connect(form_, &FactForm::edited, this, [this] {
        endQuestion();
        edited();
        tell();
    });
    connect(record_, &QPushButton::clicked, this, &EntryFrame::record);
    connect(leave_, &QPushButton::clicked, this, &EntryFrame::leave);
    connect(&session, &Session::unitsChanged, this, [this] {
        form_->setUnits(session_.units());
        unitsChanged();
    });
    connect(&session, &Session::storeAsked, this, [this] {
        if (started())
            record();
    });
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Maximum);
    setVisible(false);
}

/// Stands below the entry it is about.
QWidget* EntryFrame::makeQuestion() {
    auto* column = new QVBoxLayout(asking_);
    column->setContentsMargins(0, 0, 0, 0);
    auto* row = new QHBoxLayout;
    for (QPushButton* button : {goOn_, instead_}) {
        button->setAutoDefault(true);
        row->addWidget(button);
    }
    row->addStretch(1);
    column->addWidget(question_);
    column->addLayout(row);
    asking_->setVisible(false);
    connect(goOn_, &QPushButton::clicked, this, &EntryFrame::goOn);
    connect(instead_, &QPushButton::clicked, this, [this] {
        const auto open = afterwards_;
        endQuestion();
        open();
    });
    return asking_;
}

bool EntryFrame::started() const {
    return active_ && form_->touched();
}

bool EntryFrame::asking() const {
    return !asking_->isHidden();
}

void EntryFrame::unlessStarted(const QString& instead, std::function<void()> open) {
    if (!started()) {
        open();
        return;
    }
    afterwards_ = std::move(open);
    instead_->setText(tr("Cancel and start: %1").arg(instead));
    asking_->setVisible(true);
    question_->say(MessageLabel::Weight::warning, text(say("ui.entry.begun").with("entry", toStd(inWords()))));
    goOn_->setFocus(Qt::OtherFocusReason);
}

void EntryFrame::endQuestion() {
    asking_->setVisible(false);
    afterwards_ = nullptr;
}

void EntryFrame::goOn() {
    form_->focusFirst();
    endQuestion();
}

void EntryFrame::setAside(bool aside) {
    endQuestion();
    setVisible(!aside);
}

void EntryFrame::open(const facts::Fact& fact, const FormContext& context, const QString& title,
                      const std::optional<Amended>& amended) {
    amended_ = amended;
    title_->setText(title);
    record_->setText(amended ? tr("&Amend") : tr("&Record"));
    form_->build(fact, context);
    message_->clear();
    active_ = true;
    setVisible(true);
    opened();
    form_->focusFirst();
    tell();
}

void EntryFrame::tell() {
    session_.setUnstored(unstoredKey(), started() ? QStringList{inWords()} : QStringList());
}

void EntryFrame::showFault(const Fault& fault, bool goThere) {
    if (!form_->showFault(fault, goThere))
        message_->say(MessageLabel::Weight::fault, session_.words(fault));
}

Result<desk::Recorded> EntryFrame::store(const facts::Fact& fact) {
    return amended_ ? session_.amend(amended_->table, amended_->id, fact) : session_.record(fact);
}

void EntryFrame::record() {
    if (!form_->usable()) {
        form_->complain();
        return;
    }
    if (!mayRecord())
        return;
    const auto batch = session_.batch(); // what shows the entries is read anew when the form is closed
    const facts::Fact fact = form_->fact();
    if (const auto done = store(fact); !done)
        return showFault(done.error(), true);
    stored(fact);
    leave();
}

void EntryFrame::leave() {
    if (!active_)
        return;
    active_ = false;
    tell();
    amended_.reset();
    setAside(true);
    left();
    Q_EMIT closed();
}

QString EntryFrame::words() const {
    return message_->words();
}

void EntryFrame::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape && asking())
        goOn();
    else if (event->key() == Qt::Key_Escape)
        leave();
    else if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        record();
    else
        QFrame::keyPressEvent(event);
}

} // namespace staveline::ui
