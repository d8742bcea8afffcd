// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/taste/blank_sheet.h"

#include "sheet/document.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/theme.h"

#include <QKeyEvent>
#include <QPushButton>
#include <QVBoxLayout>

namespace staveline::ui {

BlankSheet::BlankSheet(Session& session, Prompt& prompt, QWidget* parent)
    : QWidget(parent), session_(session),
      page_(new PaperPage(session, prompt, tr("tasting sheet"), {sheet::PaperFormat::pdf, sheet::PaperFormat::html},
                          this)),
      linesChoice_(new ChoiceField(page_)) {
    linesChoice_->setAccessibleName(tr("Lines of the sheet"));
    linesChoice_->add(tr("Lines that count"), "short");
    linesChoice_->add(tr("All lines"), "long");
    auto* back = new QPushButton(tr("Back to scoring (Esc)"), page_);
    back->setFlat(true);
    page_->addTool(*back);
    page_->addTool(*linesChoice_);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(page_);
    connect(linesChoice_, &ChoiceField::activated, this, &BlankSheet::refresh);
    connect(back, &QPushButton::clicked, this, &BlankSheet::left);
}

void BlankSheet::showVessel(const facts::VesselName& vessel, bool shortSheet) {
    vessel_ = vessel;
    linesChoice_->setWord(shortSheet ? "short" : "long");
    refresh();
}

void BlankSheet::refresh() {
    page_->showPaper(session_.desk().tastingPaper(vessel_, linesChoice_->word() == "short", session_.units()),
                     tr("%1 tasting sheet").arg(qs(vessel_)));
}

void BlankSheet::focusFirst() {
    page_->printButton().setFocus(Qt::OtherFocusReason);
}

void BlankSheet::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        Q_EMIT left();
    else
        QWidget::keyPressEvent(event);
}

} // namespace staveline::ui
