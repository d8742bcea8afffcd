// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/brew_sheet/station.h"

#include "ui/brew_sheet/page_view.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/theme.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPageLayout>
#include <QPainter>
#include <QPrinter>
#include <QPushButton>
#include <QStackedWidget>
#include <QTextBrowser>
#include <QVBoxLayout>

namespace staveline::ui {
namespace {

QString endingOf(PaperFormat format) {
    switch (format) {
    case PaperFormat::pdf:
        return QStringLiteral(".pdf");
    case PaperFormat::html:
        return QStringLiteral(".html");
    case PaperFormat::markdown:
        return QStringLiteral(".md");
    case PaperFormat::csv:
        return QStringLiteral(".csv");
    case PaperFormat::text:
        break;
    }
    return QStringLiteral(".txt");
}

} // namespace

BrewSheetStation::BrewSheetStation(Session& session, Prompt& prompt, QWidget* parent)
    : QWidget(parent), session_(session), prompt_(prompt), tools_(new QWidget(this)),
      paperChoice_(new ChoiceField(tools_)), message_(new MessageLabel(this)), sheet_(new QStackedWidget(this)),
      view_(new PageView(sheet_)), text_(new QTextBrowser(sheet_)) {
    addTools(*tools_);
    sheet_->addWidget(view_);
    sheet_->addWidget(text_);
    text_->setAccessibleName(tr("Brew sheet as text"));
    text_->setFrameShape(QFrame::NoFrame);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, lines(*this, .6), 0, 0);
    column->addWidget(tools_);
    column->addWidget(message_);
    column->addWidget(sheet_, 1);
    column->addStretch(0);
    connect(&session, &Session::changed, this, &BrewSheetStation::refreshIfVisible);
    connect(&session, &Session::unitsChanged, this, &BrewSheetStation::refreshIfVisible);
}

void BrewSheetStation::addTools(QWidget& row) {
    auto* layout = new QHBoxLayout(&row);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(lines(*this, .3));
    const auto button = [&](const QString& words, auto&& act) {
        auto* made = new QPushButton(words, &row);
        connect(made, &QPushButton::clicked, this, act);
        layout->addWidget(made);
        return made;
    };
    button(tr("Print"), [this] { print(); });
    button(tr("Save PDF"), [this] { save(PaperFormat::pdf); });
    button(tr("HTML"), [this] { save(PaperFormat::html); });
    button(tr("Markdown"), [this] { save(PaperFormat::markdown); });
    button(tr("CSV"), [this] { save(PaperFormat::csv); });
    auto* asText = button(tr("As &text"), [] {});
    asText->setCheckable(true);
    connect(asText, &QPushButton::toggled, this, &BrewSheetStation::showAsText);
    layout->addStretch(1);
    auto* label = new QLabel(tr("Pape&r"), &row);
    label->setBuddy(paperChoice_);
    paperChoice_->setAccessibleName(tr("Paper"));
    paperChoice_->add(tr("A4"), "a4");
    paperChoice_->add(tr("Letter"), "letter");
    layout->addWidget(label);
    layout->addWidget(paperChoice_);
    connect(paperChoice_, &ChoiceField::activated, this, [this] {
        setPaper(paperNamed(paperChoice_->word()).value_or(PaperSize::a4));
        Q_EMIT paperChanged();
    });
}

void BrewSheetStation::showVessel(const VesselName& vessel) {
    vessel_ = vessel;
    refreshIfVisible();
}

void BrewSheetStation::setPaper(PaperSize size) {
    paper_ = size;
    paperChoice_->setWord(size == PaperSize::a4 ? "a4" : "letter");
    refreshIfVisible();
}

void BrewSheetStation::showAsText(bool text) {
    sheet_->setCurrentWidget(text ? static_cast<QWidget*>(text_) : view_);
}

void BrewSheetStation::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    if (stale_)
        refresh();
}

/// The sheet runs the model: it is made when someone looks.
void BrewSheetStation::refreshIfVisible() {
    stale_ = true;
    if (isVisible())
        refresh();
}

void BrewSheetStation::refresh() {
    stale_ = false;
    if (vessel_.empty())
        return;
    const auto document = session_.desk().brewSheet(vessel_, session_.units());
    tools_->setEnabled(document.has_value());
    sheet_->setVisible(document.has_value());
    if (!document) {
        document_.reset();
        message_->say(MessageLabel::Weight::note, session_.words(document.error()));
        return;
    }
    document_ = *document;
    message_->clear();
    view_->showDocument(*document_, paper_);
    text_->setPlainText(qs(writeText(*document_)));
}

QString BrewSheetStation::suggestion(const QString& ending) const {
    return tr("%1 brew sheet %2").arg(qs(vessel_), qs(isoDay(session_.desk().today()))) + ending;
}

void BrewSheetStation::save(PaperFormat format) {
    if (stale_)
        refresh();
    if (!document_)
        return;
    const QString ending = endingOf(format);
    const Document asked = *document_; // the book may change while the question stands
    const auto to = prompt_.fileToWrite(this, tr("Save the brew sheet"), suggestion(ending), ending);
    if (!to)
        return;
    if (const auto saved = writePaper(asked, *to, paper_); saved)
        Q_EMIT session_.said(tr("Saved %1").arg(qs(to->string())));
    else
        Q_EMIT session_.failed(saved.error());
}

void BrewSheetStation::print() {
    if (stale_)
        refresh();
    if (!document_)
        return;
    QPrinter printer(QPrinter::HighResolution);
    printer.setPageLayout(PagedPaper::layout(paper_));
    printer.setFullPage(true);
    printer.setDocName(qs(document_->title));
    const PagedPaper pages(*document_, paper_); // before the question: the book may change while it stands
    if (!prompt_.setUpPrinter(this, printer))
        return;
    QPainter painter;
    if (!painter.begin(&printer)) {
        Q_EMIT session_.failed({FaultKind::storage, "", say("ui.cannot_print"), say("ui.print_as_pdf")});
        return;
    }
    painter.scale(printer.resolution() / 72.0, printer.resolution() / 72.0);
    for (int page = 0; page < pages.pages(); ++page) {
        if (page > 0)
            printer.newPage();
        pages.paint(painter, page);
    }
}

QString BrewSheetStation::words() const {
    return message_->words();
}

} // namespace staveline::ui
