// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cellar/start_page.h"

#include "ui/cellar/start_choice.h"
#include "ui/present/path_words.h"
#include "ui/present/text.h"
#include "ui/widgets/elided_label.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/vessel_drawing.h"

#include <QFileInfo>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

namespace staveline::ui {
namespace {

/// A cask as the program draws them, with four generations; it stands for nothing in particular.
VesselLook emblemLook() {
    VesselLook look;
    look.now.volume = look.capacity * .93;
    double age = 0;
    for (const double share : {.36, .25, .19, .2}) {
        look.now.generations.push_back({0, Day{}, Share{share}, Days{age}});
        age = 2 * age + 200;
    }
    return look;
}

} // namespace

StartPage::StartPage(bool hasSample, QWidget* parent)
    : QWidget(parent), message_(new MessageLabel(this)), recent_(new QWidget(this)) {
    auto* outer = new QHBoxLayout(this);
    auto* column = new QVBoxLayout;
    outer->addStretch(1);
    outer->addLayout(column, 3);
    outer->addStretch(1);
    column->setSpacing(lines(*this, .8));
    column->addStretch(2);
    auto* title = new QLabel(own("ui.start.title"), this);
    setType(*title, Type::title);
    auto* words = new QLabel(own("ui.start.words"), this);
    words->setWordWrap(true);
    auto* emblem = new VesselDrawing(this);
    emblem->setFixedSize(lines(*this, 7), lines(*this, 5.3));
    emblem->setLook(emblemLook(), {});
    emblem->setAccessibleName(tr("A cask with its layers"));
    emblem->setAccessibleDescription({}); // it stands for no vessel
    auto* head = new QHBoxLayout;
    head->setSpacing(lines(*this, 1));
    head->addWidget(emblem);
    head->addWidget(title, 1, Qt::AlignVCenter);
    column->addLayout(head);
    column->addWidget(words);
    column->addWidget(message_);
    const auto add = [&](const char* key, auto signal) {
        auto* choice =
            new StartChoice(own(std::string("ui.start.") + key), own(std::string("ui.start.") + key + "_words"), this);
        connect(choice, &QAbstractButton::clicked, this, signal);
        column->addWidget(choice);
    };
    add("new", &StartPage::newAsked);
    if (hasSample)
        add("sample", &StartPage::sampleAsked);
    add("open", &StartPage::openAsked);
    (new QVBoxLayout(recent_))->setContentsMargins(0, lines(*this, .5), 0, 0);
    column->addWidget(recent_);
    column->addStretch(3);
}

void StartPage::setRecent(const QStringList& books) {
    while (QLayoutItem* item = recent_->layout()->takeAt(0)) {
        delete item->widget();
        delete item;
    }
    recent_->setVisible(!books.isEmpty());
    if (books.isEmpty())
        return;
    auto* heading = new QLabel(tr("Recent books"), recent_);
    setType(*heading, Type::strong);
    recent_->layout()->addWidget(heading);
    for (const QString& path : books)
        addRecent(path);
}

/// The folder beside the name: two books may be called the same.
void StartPage::addRecent(const QString& path) {
    QString name = QFileInfo(path).fileName();
    name.replace(QLatin1Char('&'), QLatin1String("&&")); // no key of the button
    auto* line = new QWidget(recent_);
    auto* button = new QPushButton(name, line);
    button->setFlat(true);
    button->setToolTip(path);
    button->setAccessibleDescription(path);
    connect(button, &QPushButton::clicked, this, [this, path] { Q_EMIT bookChosen(path); });
    auto* folder = new ElidedLabel(line);
    folder->setText(folderWords(path));
    folder->setForegroundRole(QPalette::PlaceholderText);
    auto* row = new QHBoxLayout(line);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(button);
    row->addWidget(folder);
    row->addStretch(1);
    recent_->layout()->addWidget(line);
    line->show();
}

void StartPage::focusFirst() {
    if (auto* first = findChild<StartChoice*>())
        first->setFocus(Qt::OtherFocusReason);
}

void StartPage::say(const QString& fault) {
    message_->say(MessageLabel::Weight::fault, fault);
}

} // namespace staveline::ui
