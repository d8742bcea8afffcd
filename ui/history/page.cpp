// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/history/page.h"

#include "desk/json.h"
#include "desk/ledger.h"
#include "desk/whole_file.h"
#include "ui/chart/chart_stack.h"
#include "ui/history/copy_table.h"
#include "ui/history/history_charts.h"
#include "ui/history/history_model.h"
#include "ui/history/history_paper.h"
#include "ui/widgets/accessible_controls.h"
#include "ui/widgets/accessible_roles.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/find_bar.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/wrap_layout.h"

#include <QAccessible>
#include <QAction>
#include <QBuffer>
#include <QClipboard>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QStackedWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace staveline::ui {
using sheet::PaperFormat;

namespace {

constexpr double pictureScale = 2;
constexpr double noteLines = 6;      // the least width of a note
constexpr double readingLines = 3.2; // kept free, so that the charts do not jump

QString endingOf(HistoryPage::Format format) {
    switch (format) {
    case HistoryPage::Format::png:
        return QStringLiteral(".png");
    case HistoryPage::Format::svg:
        return QStringLiteral(".svg");
    case HistoryPage::Format::xlsx:
        return QStringLiteral(".xlsx");
    case HistoryPage::Format::csv:
        break;
    }
    return QStringLiteral(".csv");
}

/// A picture as a drawing: what is drawn straight to SVG is not cut at the edges of its plots.
QByteArray drawingOf(const QImage& picture) {
    QByteArray png;
    QBuffer buffer(&png);
    buffer.open(QIODevice::WriteOnly);
    picture.save(&buffer, "PNG");
    const QString words = QStringLiteral(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" viewBox=\"0 0 %1 %2\">"
        "<image width=\"%1\" height=\"%2\" xlink:href=\"data:image/png;base64,%3\"/></svg>");
    return words.arg(picture.width()).arg(picture.height()).arg(QLatin1String(png.toBase64())).toUtf8();
}

QLabel* wrapping(QWidget* parent) {
    auto* label = new QLabel(parent);
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    return label;
}

} // namespace

HistoryPage::HistoryPage(Session& session, Prompt& prompt, QWidget* parent)
    : WorkPage(session, parent), prompt_(prompt),
      printout_(session, prompt, tr("history"),
                {PaperFormat::pdf, PaperFormat::html, PaperFormat::markdown, PaperFormat::csv},
                [this] { return hasHistory() ? std::optional(paper()) : std::nullopt; }),
      model_(new HistoryModel(this)), promiseModel_(new PromiseModel(this)), empty_(new QWidget(this)),
      firstEntry_(new QPushButton(empty_)), page_(new QWidget(this)), spanChoice_(new ChoiceField(page_)),
      panelMenu_(new QMenu(this)), message_(new MessageLabel(page_)), record_(wrapping(page_)),
      stack_(new QStackedWidget(page_)), charts_(new ChartStack(stack_)), reading_(wrapping(stack_)),
      learned_(wrapping(stack_)), lastPromise_(wrapping(stack_)),
      table_(new CopyTable(tr("History as a table"), *model_, stack_)),
      promiseTable_(new CopyTable(tr("Promises and how they came out"), *promiseModel_, stack_)),
      find_(
          new FindBar([this]() -> QTableView& { return *(face_ == Face::promises ? promiseTable_ : table_); }, page_)) {
    installAccessibleRoles();
    record_->setObjectName("record");
    learned_->setObjectName("learned");
    fillEmptyPage();
    auto* tools = new QWidget(page_);
    addTools(*tools);
    reading_->setAlignment(Qt::AlignTop);
    reading_->setMinimumHeight(lines(*this, readingLines));
    reading_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    reading_->setFocusPolicy(Qt::NoFocus);
    auto* chartPage = new QWidget(stack_);
    auto* chartColumn = new QVBoxLayout(chartPage);
    chartColumn->setContentsMargins(0, 0, 0, 0);
    chartColumn->setSpacing(lines(*this, .3));
    chartColumn->addWidget(charts_, 1);
    chartColumn->addWidget(reading_);
    auto* promisePage = new QWidget(stack_);
    auto* promiseColumn = new QVBoxLayout(promisePage);
    promiseColumn->setContentsMargins(0, 0, 0, 0);
    promiseColumn->addWidget(learned_);
    promiseColumn->addWidget(lastPromise_);
    promiseColumn->addWidget(promiseTable_, 1);
    for (QWidget* face : {chartPage, static_cast<QWidget*>(table_), promisePage})
        stack_->addWidget(face);
    auto* inside = new QVBoxLayout(page_);
    inside->setContentsMargins(0, 0, 0, 0);
    inside->addWidget(tools);
    inside->addWidget(record_);
    inside->addWidget(find_);
    inside->addWidget(stack_, 1);
    inside->addWidget(message_);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, lines(*this, .6), 0, 0);
    column->addWidget(empty_, 1);
    column->addWidget(page_, 1);
    fillContextMenus();
    connect(find_, &FindBar::closed, this, &HistoryPage::focusWork);
    connect(charts_, &ChartStack::cursorMoved, this, &HistoryPage::readCursor);
    connect(charts_, &ChartStack::spanChanged, this, &HistoryPage::matchSpan);
    connect(charts_, &ChartStack::panelsChanged, this, &HistoryPage::fillPanelMenu);
    showFace(Face::charts);
}

void HistoryPage::fillEmptyPage() {
    auto* words = wrapping(empty_);
    words->setText(own("ui.history.empty"));
    firstEntry_->setText(tr("Go to Draw && refill"));
    auto* column = new QVBoxLayout(empty_);
    column->setContentsMargins(0, lines(*this, 1), 0, 0);
    column->setSpacing(lines(*this, .8));
    column->addWidget(words);
    column->addWidget(firstEntry_, 0, Qt::AlignLeft);
    column->addStretch(1);
    connect(firstEntry_, &QPushButton::clicked, this, &HistoryPage::firstEntryAsked);
}

void HistoryPage::addTools(QWidget& row) {
    auto* layout = new WrapLayout(&row, lines(*this, .3));
    addFaceButton(row, Face::charts, tr("Charts"));
    addFaceButton(row, Face::table, tr("Table (T)"));
    addFaceButton(row, Face::promises, tr("Promises (P)"));
    layout->addSpacing(lines(*this, 1));
    auto* label = new QLabel(tr("Time"), &row);
    label->setBuddy(spanChoice_);
    spanChoice_->setAccessibleName(tr("Time shown"));
    spanChoice_->add(tr("all"), "all");
    spanChoice_->add(tr("last 3 years"), "3");
    spanChoice_->add(tr("last year"), "1");
    spanChoice_->add(tr("this cycle"), "cycle");
    spanChoice_->add(tr("part, as zoomed"), "part");
    layout->addWidget(label);
    layout->addWidget(spanChoice_);
    auto* panels = new QPushButton(tr("Choose charts"), &row);
    panels->setMenu(panelMenu_);
    layout->addWidget(panels);
    layout->addStretch();
    addSaveMenu(row);
    connect(spanChoice_, &ChoiceField::activated, this, &HistoryPage::chooseSpan);
}

QPushButton* HistoryPage::addFaceButton(QWidget& row, Face face, const QString& words) {
    auto* button = new QPushButton(words, &row);
    button->setCheckable(true);
    tellAsOneOfSeveral(*button);
    connect(button, &QPushButton::clicked, this, [this, face] {
        showFace(face);
        focusWork();
    });
    row.layout()->addWidget(button);
    faceButtons_.emplace_back(face, button);
    return button;
}

void HistoryPage::addSaveMenu(QWidget& row) {
    auto* button = new QPushButton(tr("Save as"), &row);
    auto* menu = new QMenu(button);
    const std::pair<QString, Format> ways[] = {{tr("Picture (PNG)"), Format::png},
                                               {tr("Drawing (SVG)"), Format::svg},
                                               {tr("Table (CSV)"), Format::csv},
                                               {tr("Spreadsheet (XLSX)"), Format::xlsx}};
    for (const auto& way : ways)
        connect(menu->addAction(way.first), &QAction::triggered, this, [this, format = way.second] { save(format); });
    menu->addSeparator();
    connect(menu->addAction(tr("Paper (PDF)")), &QAction::triggered, this,
            [this] { printout_.save(*this, PaperFormat::pdf); });
    button->setMenu(menu);
    row.layout()->addWidget(button);
    auto* print = new QPushButton(tr("Print"), &row);
    connect(print, &QPushButton::clicked, this, [this] { printout_.print(*this); });
    row.layout()->addWidget(print);
}

void HistoryPage::addToMenus(const QList<QAction*>& actions) {
    for (QWidget* part : std::initializer_list<QWidget*>{charts_, table_, promiseTable_})
        part->addActions(actions);
}

void HistoryPage::copyPicture() const {
    QGuiApplication::clipboard()->setImage(charts_->picture(pictureScale));
}

void HistoryPage::fillContextMenus() {
    const auto add = [this](QWidget& part, const QString& words, auto act) {
        auto* action = new QAction(words, &part);
        connect(action, &QAction::triggered, this, act);
        part.addAction(action);
    };
    add(*charts_, tr("Copy as a pict&ure"), [this] { copyPicture(); });
    add(*charts_, tr("Save as a &picture (PNG)"), [this] { save(Format::png); });
    add(*charts_, tr("Save as a &drawing (SVG)"), [this] { save(Format::svg); });
    for (QWidget* part : std::initializer_list<QWidget*>{charts_, table_, promiseTable_})
        add(*part, tr("Save the days as a &table (CSV)"), [this] { save(Format::csv); });
    charts_->setContextMenuPolicy(Qt::ActionsContextMenu);
}

void HistoryPage::fillPanelMenu() {
    panelMenu_->clear();
    for (const ChartPanel& panel : charts_->chartData().panels) {
        QAction* action = panelMenu_->addAction(panel.title);
        action->setCheckable(true);
        action->setChecked(charts_->isOpen(panel.id));
        connect(action, &QAction::triggered, charts_, [this, id = panel.id](bool open) { charts_->setOpen(id, open); });
    }
}

void HistoryPage::focusWork() {
    if (!page_->isVisibleTo(this))
        firstEntry_->setFocus(Qt::OtherFocusReason);
    else if (face_ == Face::charts)
        charts_->setFocus(Qt::OtherFocusReason);
    else
        (face_ == Face::table ? table_ : promiseTable_)->setFocus(Qt::OtherFocusReason);
}

void HistoryPage::find() {
    if (!hasHistory())
        return;
    if (face_ == Face::charts)
        showFace(Face::table);
    find_->open();
}

void HistoryPage::findAgain(int by) {
    if (find_->isVisible())
        find_->step(by);
    else
        find();
}

void HistoryPage::showFace(Face face) {
    face_ = face;
    if (face == Face::charts)
        find_->setVisible(false);
    stack_->setCurrentIndex(static_cast<int>(face));
    for (const auto& [of, button] : faceButtons_)
        button->setChecked(of == face);
    placeTable();
    find_->refresh();
    Q_EMIT faceChanged();
}

/// The table begins where the cursor of the charts is.
void HistoryPage::placeTable() {
    if (face_ != Face::table || model_->rowCount() == 0)
        return;
    table_->setCurrentIndex(model_->index(model_->rowOf(charts_->cursorDay()), 0));
    table_->scrollTo(table_->currentIndex(), QAbstractItemView::PositionAtCenter);
}

void HistoryPage::leaveVessel() {
    message_->clear();
    charts_->toTop();
    for (CopyTable* table : {table_, promiseTable_})
        table->scrollToTop();
}

void HistoryPage::refresh() {
    auto history = session().desk().history(vessel());
    if (!history) {
        Q_EMIT session().failed(history.error());
        return;
    }
    history_ = std::move(*history);
    const bool any = !history_.rows.empty();
    empty_->setVisible(!any);
    page_->setVisible(any);
    if (any)
        showHistory();
    find_->refresh();
}

void HistoryPage::showHistory() {
    const auto ledger = session().desk().ledger(vessel());
    model_->show(history_.rows, session().units());
    promiseModel_->show(history_.promises);
    fitTable();
    showRecord();
    charts_->setData(historyCharts(vessel(), history_, ledger ? ledger->lines : std::vector<desk::LedgerLine>(),
                                   session().units(), session().desk().today()));
    charts_->setAccessibleName(tr("Charts of %1").arg(qs(vessel())));
    fillPanelMenu();
    placeTable();
}

/// Columns nobody filled stay out of sight; files have them all.
void HistoryPage::fitTable() {
    for (int column = 0; column < model_->columnCount(); ++column)
        table_->setColumnHidden(column, model_->isEmptyColumn(column));
    for (CopyTable* table : {table_, promiseTable_})
        table->resizeColumnsToContents();
    // The note takes what room the numbers leave; its tooltip has all of it.
    table_->setColumnWidth(model_->columnCount() - 1, lines(*this, noteLines));
    table_->horizontalHeader()->setStretchLastSection(true);
}

void HistoryPage::showRecord() {
    QStringList words, learned;
    for (const Message& line : history_.record)
        words << session().words(line);
    for (const auto& line : history_.learned) {
        // A drift is seen at once, not one key away.
        (line.run ? words : learned) << session().words(line.words);
    }
    learned_->setText(learned.join(QLatin1Char('\n')));
    learned_->setVisible(!learned.isEmpty());
    record_->setText(words.isEmpty() ? own("ui.history.no_record") : words.join(QLatin1Char(' ')));
    QStringList last;
    const auto kept =
        std::find_if(history_.promises.rbegin(), history_.promises.rend(), [](const desk::PromiseOutcome& promise) {
            return std::any_of(allDimensions.begin(), allDimensions.end(),
                               [&](Dimension d) { return promise.tasted[d].has_value(); });
        });
    if (kept != history_.promises.rend())
        for (Dimension d : allDimensions)
            last << promiseWords(*kept, d);
    lastPromise_->setText(last.isEmpty() ? own("ui.history.no_promise") : tr("%1.").arg(last.join(tr("; "))));
}

void HistoryPage::chooseSpan() {
    const ChartData& chartData = charts_->chartData();
    const std::string word = spanChoice_->word();
    if (word == "all")
        charts_->setSpan(chartData.whole);
    else if (word == "cycle")
        charts_->setSpan(thisCycle(chartData, history_));
    else if (word == "3" || word == "1")
        charts_->setSpan(lastYears(chartData, word == "3" ? 3 : 1));
    matchSpan();
}

void HistoryPage::matchSpan() {
    const ChartData& chartData = charts_->chartData();
    const auto is = [&](const TimeSpan& span) { return charts_->span() == span; };
    const std::string before = spanChoice_->word();
    // Several choices may mean the same time in a young vessel: the one made stays.
    const std::vector<std::pair<std::string, bool>> fits = {{"all", is(chartData.whole)},
                                                            {"3", is(lastYears(chartData, 3))},
                                                            {"1", is(lastYears(chartData, 1))},
                                                            {"cycle", is(thisCycle(chartData, history_))}};
    std::string word = "part";
    for (auto fit = fits.rbegin(); fit != fits.rend(); ++fit)
        if (fit->second && (word == "part" || fit->first == before || word != before))
            word = fit->first;
    spanChoice_->setWord(word);
}

void HistoryPage::readCursor(bool byKeyboard) {
    const QString words = charts_->cursorWords();
    if (words == reading_->text())
        return;
    reading_->setText(words);
    reading_->setAccessibleName(words);
    charts_->setAccessibleDescription(words);
    // A reader hears where the keys led; the mouse would talk without end.
    if (byKeyboard) {
        QAccessibleEvent alert(reading_, QAccessible::Alert);
        QAccessible::updateAccessibility(&alert);
    }
}

void HistoryPage::keyPressEvent(QKeyEvent* event) {
    const bool plain = !(event->modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier));
    if (!plain || (event->key() != Qt::Key_T && event->key() != Qt::Key_P)) {
        WorkPage::keyPressEvent(event);
        return;
    }
    const Face wanted = event->key() == Qt::Key_T ? Face::table : Face::promises;
    showFace(face_ == wanted ? Face::charts : wanted);
    focusWork();
}

QString HistoryPage::fileName() const {
    return tr("%1 history %2").arg(qs(vessel()), qs(isoDay(session().desk().today())));
}

Printout::Made HistoryPage::paper() const {
    QStringList panels;
    for (const ChartPanel& panel : charts_->chartData().panels)
        if (charts_->isOpen(panel.id) && !panel.empty())
            panels << panel.title;
    HistoryPaperInput input{
        vessel(), session().desk().today(), drawingOf(charts_->printed(pictureScale)), {}, record_->text()};
    input.chartsInWords = session().words(say("ui.paper.charts")
                                              .with("vessel", vessel())
                                              .with("from", charts_->span().from)
                                              .with("to", charts_->span().to)
                                              .with("panels", toStd(panels.join(QStringLiteral(", ")))));
    return {historyPaper(input, *model_, *promiseModel_), fileName(), toCsv(history_.rows)};
}

Result<QByteArray> HistoryPage::bytesOf(Format format) const {
    if (format == Format::csv)
        return QByteArray::fromStdString(toCsv(history_.rows));
    if (format == Format::xlsx)
        return toXlsx(history_.rows).map(&QByteArray::fromStdString);
    if (format == Format::svg)
        return charts_->svg();
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    charts_->picture(pictureScale).save(&buffer, "PNG");
    return bytes;
}

void HistoryPage::save(Format format) {
    if (history_.rows.empty())
        return;
    const QString ending = endingOf(format);
    const auto to = prompt_.fileToWrite(this, tr("Save the history"), fileName() + ending, ending);
    if (!to)
        return;
    const auto bytes = bytesOf(format);
    const auto saved = bytes ? desk::writeWhole(*to, {bytes->constData(), static_cast<std::size_t>(bytes->size())})
                             : Result<void>(fail(bytes.error()));
    if (!saved) {
        message_->say(MessageLabel::Weight::fault, session().words(saved.error()));
        return;
    }
    message_->clear();
    Q_EMIT session().said(tr("Saved %1").arg(qs(to->string())));
}

QString HistoryPage::cursorWords() const {
    return reading_->text();
}
QString HistoryPage::words() const {
    return message_->words();
}

} // namespace staveline::ui
