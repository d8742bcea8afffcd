// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/paper_page.h"

#include "ui/print/page_view.h"
#include "ui/print/printing.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/theme.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPrinter>
#include <QPushButton>
#include <QStackedWidget>
#include <QTextBrowser>
#include <QVBoxLayout>

namespace staveline::ui {

using sheet::PaperFormat;

PaperPage::PaperPage(Session& session, Prompt& prompt, const QString& name, const std::vector<PaperFormat>& formats,
                     QWidget* parent)
    : QWidget(parent), session_(session), prompt_(prompt), name_(name), tools_(new QWidget(this)),
      extras_(new QHBoxLayout), paperChoice_(new ChoiceField(tools_)), sheet_(new QStackedWidget(this)),
      view_(new PageView(sheet_)), text_(new QTextBrowser(sheet_)) {
    addTools(formats);
    tools_->setEnabled(false); // until there is a paper
    sheet_->addWidget(view_);
    sheet_->addWidget(text_);
    text_->setAccessibleName(tr("The %1 as text").arg(name));
    text_->setFrameShape(QFrame::NoFrame);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(tools_);
    column->addWidget(sheet_, 1);
    column->addStretch(0);
}

void PaperPage::addTools(const std::vector<PaperFormat>& formats) {
    auto* row = new QHBoxLayout(tools_);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(lines(*this, .3));
    const auto button = [&](const QString& words, auto&& act) {
        auto* made = new QPushButton(words, tools_);
        connect(made, &QPushButton::clicked, this, act);
        row->addWidget(made);
        return made;
    };
    print_ = button(tr("Print"), [this] { print(); });
    for (const PaperFormat format : formats)
        button(tr("Save %1").arg(qs(rowOf(format).name)), [this, format] { save(format); });
    auto* asText = button(tr("As &text"), [] {});
    asText->setCheckable(true);
    connect(asText, &QPushButton::toggled, this, &PaperPage::showAsText);
    row->addStretch(1);
    row->addLayout(extras_);
    addPaperChoice(*row);
}

void PaperPage::addPaperChoice(QHBoxLayout& row) {
    auto* label = new QLabel(tr("Pape&r"), tools_);
    label->setBuddy(paperChoice_);
    paperChoice_->setAccessibleName(tr("Paper"));
    for (const PaperSizeRow& size : paperSizes)
        paperChoice_->add(QLatin1String(size.name), size.word);
    row.addWidget(label);
    row.addWidget(paperChoice_);
    connect(paperChoice_, &ChoiceField::activated, this, [this] {
        setPaper(paperNamed(paperChoice_->word()).value_or(paper_));
        Q_EMIT paperChanged(paper_);
    });
}

void PaperPage::addTool(QWidget& tool) {
    extras_->addWidget(&tool);
}

void PaperPage::showPaper(std::optional<sheet::Document> document, const QString& file) {
    document_ = std::move(document);
    file_ = file;
    tools_->setEnabled(document_.has_value());
    sheet_->setVisible(document_.has_value());
    if (!document_)
        return;
    view_->showDocument(*document_, paper_);
    text_->setPlainText(qs(writeText(*document_)));
}

void PaperPage::setPaper(PaperSize size) {
    paperChoice_->setWord(rowOf(size).word);
    if (std::exchange(paper_, size) != size && document_)
        view_->showDocument(*document_, paper_);
}

void PaperPage::showAsText(bool text) {
    sheet_->setCurrentWidget(text ? static_cast<QWidget*>(text_) : view_);
}

void PaperPage::tell(const Result<void>& done, const QString& words) {
    if (done)
        Q_EMIT session_.said(words);
    else
        Q_EMIT session_.failed(done.error());
}

void PaperPage::save(PaperFormat format) {
    if (!document_)
        return;
    const QString ending = qs(rowOf(format).ending);
    const sheet::Document asked = *document_; // the book may change while the question stands
    if (const auto to = prompt_.fileToWrite(this, tr("Save the %1").arg(name_), file_ + ending, ending))
        tell(writePaper(asked, *to, paper_), tr("Saved %1").arg(qs(to->string())));
}

void PaperPage::print() {
    if (!document_)
        return;
    const sheet::Document asked = *document_;
    QPrinter printer(QPrinter::HighResolution);
    prepare(printer, asked, paper_);
    if (prompt_.setUpPrinter(this, printer))
        tell(ui::print(printer, asked, paper_), tr("Printed the %1").arg(name_));
}

} // namespace staveline::ui
