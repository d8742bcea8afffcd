// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/brew_sheet/page.h"

#include "sheet/document.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/theme.h"

#include <QVBoxLayout>

namespace staveline::ui {

using sheet::PaperFormat;

BrewSheetPage::BrewSheetPage(Session& session, Prompt& prompt, QWidget* parent)
    : QWidget(parent), session_(session), message_(new MessageLabel(this)),
      page_(new PaperPage(session, prompt, tr("brew sheet"),
                          {PaperFormat::pdf, PaperFormat::html, PaperFormat::markdown, PaperFormat::csv}, this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, lines(*this, .6), 0, 0);
    column->addWidget(message_);
    column->addWidget(page_, 1);
    page_->freshenBy([this] {
        if (stale_)
            refresh();
    });
    connect(&session, &Session::changed, this, &BrewSheetPage::refreshIfVisible);
    connect(&session, &Session::unitsChanged, this, &BrewSheetPage::refreshIfVisible);
    connect(&session, &Session::unstoredChanged, this, &BrewSheetPage::tellState);
}

void BrewSheetPage::showVessel(const facts::VesselName& vessel) {
    vessel_ = vessel;
    refreshIfVisible();
}

void BrewSheetPage::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    if (stale_)
        refresh();
}

/// The sheet runs the model: it is made when someone looks.
void BrewSheetPage::refreshIfVisible() {
    stale_ = true;
    if (isVisible())
        refresh();
}

void BrewSheetPage::refresh() {
    stale_ = false;
    if (vessel_.empty())
        return;
    const auto document = session_.desk().brewSheet(vessel_, session_.units());
    fault_ = document ? QString() : session_.words(document.error());
    tellState();
    page_->showPaper(document ? std::optional(*document) : std::nullopt,
                     tr("%1 brew sheet %2").arg(qs(vessel_), qs(isoDay(session_.desk().today()))));
}

/// The paper is of what is stored.
void BrewSheetPage::tellState() {
    message_->clear();
    if (!fault_.isEmpty())
        message_->say(MessageLabel::Weight::note, fault_);
    else if (session_.isUnstored("recipe"))
        message_->say(MessageLabel::Weight::warning, own("ui.sheet.unstored"));
}

QString BrewSheetPage::words() const {
    return message_->words();
}

} // namespace staveline::ui
