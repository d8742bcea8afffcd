// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/taste/blank_sheet.h"

#include "ui/brew_sheet/page_view.h"
#include "ui/print/printing.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/theme.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPrinter>
#include <QPushButton>
#include <QVBoxLayout>

namespace staveline::ui {
namespace {

QString endingOf(PaperFormat format) {
    return format == PaperFormat::html ? QStringLiteral(".html") : QStringLiteral(".pdf");
}

} // namespace

BlankSheet::BlankSheet(Session& session, Prompt& prompt, QWidget* parent)
    : QWidget(parent), session_(session), prompt_(prompt), linesChoice_(new ChoiceField(this)),
      paperChoice_(new ChoiceField(this)), view_(new PageView(this)) {
    auto* tools = new QWidget(this);
    addTools(*tools);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(tools);
    column->addWidget(view_, 1);
}

void BlankSheet::addTools(QWidget& row) {
    auto* layout = new QHBoxLayout(&row);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(lines(*this, .3));
    const auto button = [&](const QString& words, auto&& act) {
        auto* made = new QPushButton(words, &row);
        connect(made, &QPushButton::clicked, this, act);
        layout->addWidget(made);
        return made;
    };
    print_ = button(tr("Print"), [this] { print(); });
    button(tr("Save PDF"), [this] { save(PaperFormat::pdf); });
    button(tr("HTML"), [this] { save(PaperFormat::html); });
    linesChoice_->setAccessibleName(tr("Lines of the sheet"));
    linesChoice_->add(tr("Lines that count"), "short");
    linesChoice_->add(tr("All lines"), "long");
    paperChoice_->setAccessibleName(tr("Paper"));
    paperChoice_->add(tr("A4"), "a4");
    paperChoice_->add(tr("Letter"), "letter");
    layout->addWidget(linesChoice_);
    layout->addWidget(paperChoice_);
    layout->addStretch(1);
    auto* back = button(tr("Back to scoring (Esc)"), [this] { Q_EMIT left(); });
    back->setFlat(true);
    connect(linesChoice_, &ChoiceField::activated, this, &BlankSheet::refresh);
    connect(paperChoice_, &ChoiceField::activated, this, [this] {
        setPaper(paperNamed(paperChoice_->word()).value_or(PaperSize::a4));
        Q_EMIT paperChanged();
    });
}

void BlankSheet::showVessel(const VesselName& vessel, bool shortSheet) {
    vessel_ = vessel;
    linesChoice_->setWord(shortSheet ? "short" : "long");
    refresh();
}

void BlankSheet::refresh() {
    document_ = session_.desk().tastingPaper(vessel_, linesChoice_->word() == "short", session_.units());
    view_->showDocument(document_, paper_);
}

void BlankSheet::setPaper(PaperSize size) {
    paper_ = size;
    paperChoice_->setWord(size == PaperSize::a4 ? "a4" : "letter");
    if (isVisible())
        refresh();
}

void BlankSheet::print() {
    QPrinter printer(QPrinter::HighResolution);
    prepare(printer, document_, paper_);
    if (!prompt_.setUpPrinter(this, printer))
        return;
    if (const auto printed = ui::print(printer, document_, paper_); !printed)
        Q_EMIT session_.failed(printed.error());
}

void BlankSheet::save(PaperFormat format) {
    const QString ending = endingOf(format);
    const auto to =
        prompt_.fileToWrite(this, tr("Save the blank sheet"), tr("%1 tasting sheet").arg(qs(vessel_)) + ending, ending);
    if (!to)
        return;
    if (const auto saved = writePaper(document_, *to, paper_); saved)
        Q_EMIT session_.said(tr("Saved %1").arg(qs(to->string())));
    else
        Q_EMIT session_.failed(saved.error());
}

void BlankSheet::focusFirst() {
    print_->setFocus(Qt::OtherFocusReason);
}

void BlankSheet::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        Q_EMIT left();
    else
        QWidget::keyPressEvent(event);
}

} // namespace staveline::ui
