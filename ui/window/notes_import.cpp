// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/notes_import.h"

#include "tasting/sitting.h"
#include "ui/present/fact_fields.h"
#include "ui/present/text.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/table_copy.h"
#include "ui/widgets/theme.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QHeaderView>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

namespace staveline::ui {
namespace {

using facts::DateOrder;

QTableWidget* tableWith(const QStringList& titles, const QString& name, QWidget* parent) {
    auto* table = new QTableWidget(0, static_cast<int>(titles.size()), parent);
    table->setHorizontalHeaderLabels(titles);
    table->setAccessibleName(name);
    table->verticalHeader()->hide();
    table->horizontalHeader()->setStretchLastSection(true);
    table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table->setTabKeyNavigation(false);
    new TableCopy(*table);
    return table;
}

void setCell(QTableWidget& table, int row, int column, const QString& words) {
    auto* item = new QTableWidgetItem(words);
    item->setToolTip(words);
    table.setItem(row, column, item);
}

QString kindWords(const std::string& kind) {
    return own("desk.kind." + kind);
}

/// "Sour peak, cold", "Gravity"; empty: the name in the file is all there is.
QString nameOfField(const std::string& kind, const std::string& name) {
    const std::string code = name.substr(0, name.find('_'));
    if (const tasting::Attribute* attribute = tasting::builtInSheet().find(code))
        return NotesImport::tr("%1, %2 glass")
            .arg(qs(attribute->name), name.ends_with("_cold") ? NotesImport::tr("cold") : NotesImport::tr("cellar"));
    const std::string field = fieldAt("/" + name);
    for (const std::string& key : {"ui.field." + kind + "." + field, "ui.field." + field})
        if (builtInTexts().has(key))
            return own(key);
    return {};
}

/// With the name that files have: a template says it so.
QString fieldWords(const std::string& kind, const std::string& name) {
    const QString words = nameOfField(kind, name);
    return words.isEmpty() ? qs(name) : NotesImport::tr("%1 (%2)").arg(words, qs(name));
}

/// The first thing that stands in a column.
QString exampleOf(const facts::NoteTable& table, std::size_t column) {
    for (const auto& row : table.rows)
        if (column < row.cells.size() && row.cells[column] && !row.cells[column]->empty())
            return qs(*row.cells[column]);
    return {};
}

} // namespace

NotesImport::NotesImport(Source source, desk::Clock clock, QWidget* parent)
    : QDialog(parent), source_(std::move(source)), clock_(std::move(clock)), kind_(new ChoiceField(this)),
      vessel_(new ChoiceField(this)), dates_(new ChoiceField(this)), decimal_(new ChoiceField(this)),
      columns_(tableWith({tr("Column"), tr("Example"), tr("Means")}, tr("What the columns mean"), this)),
      rejected_(tableWith({tr("Line"), tr("Field"), tr("Why it is not taken")}, tr("Rows that are not taken"), this)),
      message_(new MessageLabel(this)), progress_(new QProgressBar(this)), take_(nullptr), stop_(nullptr) {
    setWindowTitle(tr("Import notes from %1").arg(qs(source_.name)));
    makeChoices();
    makeColumns();
    auto* choices = new QFormLayout;
    choices->addRow(tr("Each &row is a"), kind_);
    choices->addRow(tr("&Vessel, where a row names none"), vessel_);
    choices->addRow(tr("&Days"), dates_);
    choices->addRow(tr("Decimal &mark"), decimal_);
    auto* column = new QVBoxLayout(this);
    column->addLayout(choices);
    column->addWidget(columns_, 3);
    column->addWidget(message_);
    column->addWidget(rejected_, 2);
    column->addWidget(progress_);
    column->addWidget(makeButtons());
    message_->keepRoom(2);
    progress_->setAccessibleName(tr("How far the import is"));
    QSizePolicy keepsRoom = progress_->sizePolicy();
    keepsRoom.setRetainSizeWhenHidden(true);
    progress_->setSizePolicy(keepsRoom);
    resize(lines(*this, 46), lines(*this, 40));
    guess();
}

void NotesImport::makeChoices() {
    for (const auto& kind : facts::noteKinds())
        kind_->add(kindWords(kind), kind);
    kind_->setWord("reading");
    for (const auto& vessel : source_.vessels)
        vessel_->add(qs(vessel), vessel);
    vessel_->setWord(source_.vessel);
    dates_->add(tr("as they say themselves"), "");
    dates_->add(tr("day, month, year"), std::string(wordOf(DateOrder::dmy)));
    dates_->add(tr("month, day, year"), std::string(wordOf(DateOrder::mdy)));
    dates_->add(tr("year, month, day"), std::string(wordOf(DateOrder::ymd)));
    decimal_->add(tr("as the numbers say themselves"), "");
    decimal_->add(tr("point"), ".");
    decimal_->add(tr("comma"), ",");
    kind_->setAccessibleName(tr("Each row is a"));
    vessel_->setAccessibleName(tr("Vessel, where a row names none"));
    dates_->setAccessibleName(tr("Days"));
    decimal_->setAccessibleName(tr("Decimal mark"));
    connect(kind_, &ChoiceField::activated, this, &NotesImport::guess);
    for (const ChoiceField* choice : {vessel_, dates_, decimal_})
        connect(choice, &ChoiceField::activated, this, &NotesImport::preview);
}

void NotesImport::makeColumns() {
    columns_->setRowCount(static_cast<int>(source_.table.headings.size()));
    for (std::size_t i = 0; i < source_.table.headings.size(); ++i) {
        const int row = static_cast<int>(i);
        const QString heading = qs(source_.table.headings[i]);
        setCell(*columns_, row, 0, heading);
        setCell(*columns_, row, 1, exampleOf(source_.table, i));
        auto* field = new ChoiceField(columns_);
        field->setAccessibleName(tr("%1 means").arg(heading));
        connect(field, &ChoiceField::activated, this, &NotesImport::preview);
        columns_->setCellWidget(row, 2, field);
        fields_.push_back(field);
    }
    columns_->resizeColumnsToContents();
}

QWidget* NotesImport::makeButtons() {
    auto* buttons = new QDialogButtonBox(this);
    take_ = buttons->addButton(tr("&Import"), QDialogButtonBox::AcceptRole);
    stop_ = buttons->addButton(tr("&Stop"), QDialogButtonBox::ActionRole);
    buttons->addButton(tr("&Cancel"), QDialogButtonBox::RejectRole);
    connect(buttons, &QDialogButtonBox::accepted, this, &NotesImport::take);
    connect(buttons, &QDialogButtonBox::rejected, this, &NotesImport::reject);
    connect(stop_, &QPushButton::clicked, this, [this] { stopped_ = true; });
    return buttons;
}

void NotesImport::guess() {
    const auto guesses = facts::guessFields(kind_->word(), source_.table.headings);
    for (std::size_t i = 0; i < fields_.size(); ++i) {
        fields_[i]->clear();
        fields_[i]->add(tr("(left out)"), "");
        for (const auto& field : facts::noteFields(kind_->word()))
            fields_[i]->add(fieldWords(kind_->word(), field.name), field.name);
        fields_[i]->setWord(guesses[i]);
    }
    preview();
}

facts::NoteForm NotesImport::form() const {
    facts::NoteForm form{kind_->word(), vessel_->word(), {}, facts::dateOrderNamed(dates_->word()), {}};
    for (const ChoiceField* field : fields_)
        form.fields.push_back(field->word());
    if (const std::string mark = decimal_->word(); !mark.empty())
        form.decimal = mark.front();
    return form;
}

void NotesImport::preview() {
    work(true);
}

void NotesImport::take() {
    work(false);
}

void NotesImport::work(bool trial) {
    setBusy(true);
    stopped_ = false;
    worker_.post([this, trial, asked = ++asked_, form = form()](const std::stop_token& stop) {
        const auto goOn = [&](std::size_t done, std::size_t all) {
            constexpr std::size_t often = 200;
            if (done % often == 0)
                QMetaObject::invokeMethod(this, [this, done, all] {
                    progress_->setRange(0, static_cast<int>(all));
                    progress_->setValue(static_cast<int>(done));
                });
            return !stop.stop_requested() && !stopped_;
        };
        auto desk = desk::Desk::open(source_.book, clock_);
        auto outcome = desk ? desk::takeNotes(**desk, source_.text, form, source_.name, trial, goOn)
                            : Result<desk::NotesOutcome>(fail(desk.error()));
        QMetaObject::invokeMethod(this, [this, trial, asked, outcome] {
            if (asked == asked_)
                show(outcome, trial);
        });
    });
}

void NotesImport::show(const Result<desk::NotesOutcome>& outcome, bool trial) {
    setBusy(false);
    if (!outcome) {
        rejected_->setRowCount(0);
        take_->setEnabled(false);
        const bool asks = outcome.error().path == "/dates" || outcome.error().path == "/decimal";
        message_->say(asks ? MessageLabel::Weight::warning : MessageLabel::Weight::fault, text(outcome.error()));
        return;
    }
    const auto count = [](std::size_t number) { return static_cast<std::int64_t>(number); };
    const QString words = text(say(trial ? "app.notes_preview" : "app.notes_taken")
                                   .with("taken", count(outcome->taken))
                                   .with("rows", count(outcome->rows))
                                   .with("rejected", count(outcome->rejected.size())));
    if (!trial) {
        Q_EMIT taken(words);
        accept();
        return;
    }
    showRejected(outcome->rejected);
    take_->setEnabled(outcome->taken > 0);
    message_->say(outcome->rejected.empty() ? MessageLabel::Weight::note : MessageLabel::Weight::warning, words);
}

void NotesImport::showRejected(const std::vector<facts::RejectedRow>& rejected) {
    constexpr std::size_t mostShown = 500; // the rest shows when these are mended
    const auto shown = std::min(rejected.size(), mostShown);
    rejected_->setRowCount(static_cast<int>(shown));
    for (std::size_t i = 0; i < shown; ++i) {
        const int row = static_cast<int>(i);
        setCell(*rejected_, row, 0, QString::number(rejected[i].line));
        const std::string& path = rejected[i].why.path; // empty: the row as a whole
        setCell(*rejected_, row, 1, path.empty() ? QString() : fieldWords(kind_->word(), path.substr(1)));
        setCell(*rejected_, row, 2, text(rejected[i].why));
    }
    rejected_->resizeRowsToContents();
}

void NotesImport::setBusy(bool busy) {
    busy_ = busy;
    take_->setEnabled(!busy);
    stop_->setEnabled(busy);
    progress_->setRange(0, 1);
    progress_->setValue(0);
    progress_->setVisible(busy);
}

} // namespace staveline::ui
