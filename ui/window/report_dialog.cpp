// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/report_dialog.h"

#include "ui/present/text.h"
#include "ui/widgets/theme.h"

#include <QCheckBox>
#include <QDialogButtonBox>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QVBoxLayout>

namespace staveline::ui {

ReportDialog::ReportDialog(const QString& words, bool hasBook, QWidget* parent)
    : QDialog(parent), text_(new QPlainTextEdit(words, this)),
      book_(new QCheckBox(tr("With a &copy of the book beside it"), this)) {
    setWindowTitle(tr("Report a fault of the program"));
    auto* what = new QLabel(own("ui.report.words"), this);
    what->setWordWrap(true);
    text_->setReadOnly(true);
    text_->setTabChangesFocus(true);
    text_->setAccessibleName(tr("The report"));
    text_->setMinimumSize(lines(*this, 32), lines(*this, 9));
    book_->setVisible(hasBook);
    auto* bookWords = new QLabel(own("ui.report.book_words"), this);
    bookWords->setWordWrap(true);
    bookWords->setForegroundRole(QPalette::PlaceholderText);
    bookWords->setVisible(hasBook);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    save_ = buttons->addButton(tr("&Save\u2026"), QDialogButtonBox::ActionRole);
    save_->setEnabled(!hasBook); // until the book is checked
    connect(save_, &QPushButton::clicked, this, &ReportDialog::saveAsked);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* column = new QVBoxLayout(this);
    column->setSpacing(lines(*this, .6));
    column->addWidget(what);
    column->addWidget(text_, 1);
    column->addWidget(book_);
    column->addWidget(bookWords);
    column->addWidget(buttons);
}

void ReportDialog::add(const QString& words) {
    text_->appendPlainText(words.trimmed());
    save_->setEnabled(true);
}

QString ReportDialog::words() const {
    return text_->toPlainText();
}

bool ReportDialog::withBook() const {
    return book_->isChecked();
}

} // namespace staveline::ui
