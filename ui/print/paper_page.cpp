// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/paper_page.h"

#include "ui/print/page_view.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/theme.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QStackedWidget>
#include <QTextBrowser>
#include <QVBoxLayout>

namespace staveline::ui {

using sheet::PaperFormat;

namespace {

QFont fixedPitch(QFont font) {
    font.setFamilies({QStringLiteral("monospace")});
    font.setStyleHint(QFont::Monospace);
    font.setFixedPitch(true);
    return font;
}

} // namespace

PaperPage::PaperPage(Session& session, Prompt& prompt, const QString& name, const std::vector<PaperFormat>& formats,
                     QWidget* parent)
    : QWidget(parent), printout_(session, prompt, name, formats, [this] { return made(); }), tools_(new QWidget(this)),
      extras_(new QHBoxLayout), paperChoice_(new ChoiceField(tools_)), sheet_(new QStackedWidget(this)),
      view_(new PageView(sheet_)), text_(new QTextBrowser(sheet_)) {
    addTools(formats);
    tools_->setEnabled(false); // until there is a paper
    sheet_->addWidget(view_);
    sheet_->addWidget(text_);
    text_->setAccessibleName(tr("The %1 as text").arg(name));
    text_->setFrameShape(QFrame::NoFrame);
    text_->setFont(fixedPitch(font()));
    text_->setLineWrapMode(QTextEdit::NoWrap); // or the columns would not stand under each other
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
    print_ = button(tr("Print"), [this] { printout_.print(*this); });
    for (const PaperFormat format : formats)
        button(tr("Save %1").arg(qs(rowOf(format).name)), [this, format] { printout_.save(*this, format); });
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
        setPaper(paperNamed(paperChoice_->word()).value_or(paper()));
        Q_EMIT paperChanged(paper());
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
    view_->showDocument(*document_, paper());
    text_->setPlainText(qs(writeText(*document_)));
}

void PaperPage::setPaper(PaperSize size) {
    paperChoice_->setWord(rowOf(size).word);
    const bool other = size != paper();
    printout_.setSize(size);
    if (other && document_)
        view_->showDocument(*document_, size);
}

std::optional<Printout::Made> PaperPage::made() const {
    if (freshen_)
        freshen_();
    return document_ ? std::optional(Printout::Made{*document_, file_}) : std::nullopt;
}

void PaperPage::showAsText(bool text) {
    sheet_->setCurrentWidget(text ? static_cast<QWidget*>(text_) : view_);
}

} // namespace staveline::ui
