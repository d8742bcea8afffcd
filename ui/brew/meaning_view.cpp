// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/brew/meaning_view.h"

#include "advice/advise.h"
#include "desk/brew.h"
#include "ui/widgets/theme.h"

#include <QGridLayout>
#include <QLabel>
#include <QVBoxLayout>

namespace staveline::ui {
namespace {

QString bandWords(const advice::Band& band) {
    return MeaningView::tr("%1 \u00b1%2")
        .arg(QString::number(band.value, 'f', 1), QString::number((band.high - band.low) / 2, 'f', 1));
}

} // namespace

MeaningView::MeaningView(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), title_(new QLabel(tr("At the next draw"), this)), table_(new QWidget(this)),
      words_(new QLabel(this)) {
    setType(*title_, Type::strong);
    auto* grid = new QGridLayout(table_);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(lines(*this, 1.4));
    grid->setVerticalSpacing(lines(*this, .15));
    const std::array heads = {tr("as planned"), tr("as brewed")};
    for (int column = 0; column < 2; ++column)
        grid->addWidget(new QLabel(heads[static_cast<std::size_t>(column)], table_), 0, column + 1);
    for (std::size_t i = 0; i < allDimensions.size(); ++i) {
        const int row = static_cast<int>(i) + 1;
        grid->addWidget(new QLabel(own("sheet.dimension." + std::string(name(allDimensions[i]))), table_), row, 0);
        grid->addWidget(planned_[i] = new QLabel(table_), row, 1);
        grid->addWidget(asBrewed_[i] = new QLabel(table_), row, 2);
    }
    grid->setColumnStretch(3, 1);
    words_->setWordWrap(true);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(lines(*this, .3));
    column->addWidget(title_);
    column->addWidget(table_);
    column->addWidget(words_);
    column->addStretch(1);
}

void MeaningView::show(const Result<desk::BrewMeaning>& meaning) {
    const bool coming = !meaning || !(meaning->wentIn || meaning->firstFill);
    title_->setVisible(coming);
    table_->setVisible(meaning && coming);
    if (!meaning) {
        words_->setText(session_.words(meaning.error()));
        return;
    }
    for (const Dimension dimension : allDimensions) {
        const auto i = static_cast<std::size_t>(dimension);
        planned_[i]->setText(bandWords(meaning->planned[dimension]));
        asBrewed_[i]->setText(bandWords(meaning->asBrewed[dimension]));
    }
    QStringList said;
    for (const Message& message : meaning->words)
        said << session_.words(message);
    words_->setText(said.join(QLatin1Char('\n')));
}

QString MeaningView::words() const {
    return words_->text();
}

QString MeaningView::score(Dimension dimension, bool asBrewed) const {
    return (asBrewed ? asBrewed_ : planned_)[static_cast<std::size_t>(dimension)]->text();
}

} // namespace staveline::ui
