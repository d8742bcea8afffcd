// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/taste/score_sheet.h"

#include "ui/present/text.h"
#include "ui/taste/fold_button.h"
#include "ui/widgets/elided_label.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/reading_order.h"
#include "ui/widgets/theme.h"

#include <QGridLayout>
#include <QLabel>
#include <QPainter>

#include <algorithm>

namespace staveline::ui {
namespace {

enum Column { nameColumn, anchorColumn, coldColumn, cellarColumn };

int columnOf(Glass glass) {
    return glass == Glass::cold ? coldColumn : cellarColumn;
}

} // namespace

ScoreSheet::ScoreSheet(QWidget* parent) : QWidget(parent), grid_(new QGridLayout(this)) {
    setAccessibleName(tr("Scores"));
    grid_->setContentsMargins(0, 0, 0, 0);
    grid_->setHorizontalSpacing(lines(*this, .6));
    grid_->setVerticalSpacing(lines(*this, .12));
    grid_->setColumnStretch(anchorColumn, 1);
    for (const tasting::Attribute& attribute : tasting::builtInSheet().attributes) {
        if (groups_.empty() || groups_.back().name != attribute.group)
            addGroup(attribute.group);
        addLine(attribute);
    }
    orderTabs();
    keepOwnTabOrder(*this);
    arrange();
}

void ScoreSheet::addGroup(const std::string& name) {
    auto* button = new FoldButton(true, this);
    button->setObjectName(qs(name));
    connect(button, &FoldButton::folded, this, &ScoreSheet::arrange);
    const int row = grid_->rowCount();
    Group group{name, button, {}};
    grid_->addWidget(button, row, nameColumn, 1, 2, Qt::AlignLeft);
    for (const Glass glass : bothGlasses) {
        auto* label = new QLabel(glassWord(glass), this);
        label->setForegroundRole(QPalette::PlaceholderText);
        grid_->addWidget(label, row, columnOf(glass), Qt::AlignHCenter | Qt::AlignBottom);
        group.glasses[static_cast<std::size_t>(glass)] = label;
    }
    groups_.push_back(group);
}

void ScoreSheet::addLine(const tasting::Attribute& attribute) {
    const int row = grid_->rowCount();
    Line made{&attribute,
              groups_.size() - 1,
              new QLabel(qs(attribute.name), this),
              new ElidedLabel(this),
              {addCell(attribute, Glass::cold, row),
               attribute.bothTemperatures ? addCell(attribute, Glass::cellar, row) : nullptr}};
    made.name->setIndent(lines(*this, .6));
    made.anchor->setObjectName(qs("anchor of " + attribute.code));
    made.anchor->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    made.anchor->setForegroundRole(QPalette::PlaceholderText);
    grid_->addWidget(made.name, row, nameColumn);
    grid_->addWidget(made.anchor, row, anchorColumn);
    lines_.push_back(made);
}

ScoreCell* ScoreSheet::addCell(const tasting::Attribute& attribute, Glass glass, int row) {
    auto* cell = new ScoreCell(attribute, glass, this);
    grid_->addWidget(cell, row, columnOf(glass));
    connect(cell, &ScoreCell::typed, this, [this, cell] {
        sayBeside(*line(cell->attribute().code));
        countGroups();
        Q_EMIT typed(cell);
    });
    connect(cell, &ScoreCell::finished, this, [this, cell] { Q_EMIT finished(cell); });
    connect(cell, &ScoreCell::entered, this, [this, cell] {
        sayBeside(*line(cell->attribute().code));
        Q_EMIT entered(cell);
    });
    connect(cell, &ScoreCell::moved, this, [this, cell](int by) { moveFrom(*cell, by); });
    connect(cell, &ScoreCell::crossed, this, [this, cell](bool right) { cross(*cell, right); });
    connect(cell, &ScoreCell::sameAgain, this, &ScoreSheet::sameAgain);
    return cell;
}

/// Groups first, then all cold scores, then all cellar scores.
void ScoreSheet::orderTabs() {
    std::vector<QWidget*> order;
    for (const Group& group : groups_)
        order.push_back(group.button);
    for (const Glass glass : bothGlasses)
        for (const Line& line : lines_)
            if (ScoreCell* cell = line.cells[static_cast<std::size_t>(glass)])
                order.push_back(cell);
    for (std::size_t i = 1; i < order.size(); ++i)
        setTabOrder(order[i - 1], order[i]);
}

bool ScoreSheet::shown(const Line& line) const {
    return (long_ || line.attribute->shortSheet) && groups_[line.group].button->isOpen();
}

bool ScoreSheet::shown(const ScoreCell& cell) const {
    if (!shown(*line(cell.attribute().code)))
        return false;
    if (!cell.attribute().bothTemperatures || choice_ == GlassChoice::both)
        return true;
    return (choice_ == GlassChoice::coldOnly) == (cell.glass() == Glass::cold);
}

void ScoreSheet::arrange() {
    for (const Group& group : groups_) {
        const bool open = group.button->isOpen();
        group.glasses[0]->setVisible(open && choice_ != GlassChoice::cellarOnly);
        group.glasses[1]->setVisible(open && choice_ != GlassChoice::coldOnly);
    }
    for (const Line& line : lines_) {
        const bool open = shown(line);
        line.name->setVisible(open);
        line.anchor->setVisible(open);
        for (ScoreCell* cell : line.cells)
            if (cell)
                cell->setVisible(shown(*cell));
        // What is tasted once stands in the column that is there.
        if (!line.attribute->bothTemperatures) {
            grid_->removeWidget(line.cells[0]);
            grid_->addWidget(line.cells[0], rowOf(line),
                             choice_ == GlassChoice::cellarOnly ? cellarColumn : coldColumn);
        }
    }
    countGroups();
}

int ScoreSheet::rowOf(const Line& line) const {
    int row = 0, column = 0, rows = 0, columns = 0;
    grid_->getItemPosition(grid_->indexOf(line.name), &row, &column, &rows, &columns);
    return row;
}

void ScoreSheet::countGroups() {
    for (std::size_t g = 0; g < groups_.size(); ++g) {
        int all = 0, scored = 0;
        for (const Line& line : lines_) {
            if (line.group != g || !(long_ || line.attribute->shortSheet))
                continue;
            ++all;
            scored += spokenScore(line).has_value() ? 1 : 0;
        }
        const QString name = own("sheet.paper.group." + groups_[g].name);
        groups_[g].button->setVisible(all > 0);
        groups_[g].button->say(tr("%1  %2 of %3").arg(name).arg(scored).arg(all),
                               tr("%1, %2 of %3 scored").arg(name).arg(scored).arg(all));
    }
}

/// Of the glass in hand, else between the two.
std::optional<double> ScoreSheet::spokenScore(const Line& line) {
    double sum = 0;
    int count = 0;
    for (const ScoreCell* cell : line.cells) {
        if (!cell || !cell->score())
            continue;
        if (cell->hasFocus())
            return cell->score();
        sum += *cell->score();
        ++count;
    }
    return count > 0 ? std::optional(sum / count) : std::nullopt;
}

void ScoreSheet::sayBeside(const Line& line) {
    const auto score = spokenScore(line);
    line.anchor->setText(score ? anchorText(*line.attribute, *score) : QString());
    update(); // the guide begins where the words end
}

void ScoreSheet::showDraft(const SittingDraft& draft, bool anew) {
    for (const Line& line : lines_) {
        for (const Glass glass : bothGlasses)
            if (ScoreCell* cell = line.cells[static_cast<std::size_t>(glass)]) {
                if (anew)
                    cell->resetScore(draft.score(*line.attribute, glass));
                else
                    cell->showScore(draft.score(*line.attribute, glass));
            }
        sayBeside(line);
    }
    countGroups();
}

void ScoreSheet::setLong(bool all) {
    long_ = all;
    arrange();
}

void ScoreSheet::setGlasses(GlassChoice choice) {
    choice_ = choice;
    arrange();
}

void ScoreSheet::setReadOnly(bool readOnly) {
    for (const Line& line : lines_)
        for (ScoreCell* cell : line.cells)
            if (cell)
                cell->setReadOnly(readOnly);
}

void ScoreSheet::finish() {
    for (const Line& line : lines_)
        for (ScoreCell* cell : line.cells)
            if (cell)
                cell->finish();
}

std::vector<ScoreCell*> ScoreSheet::column() const {
    std::vector<ScoreCell*> cells;
    for (const Glass glass : bothGlasses)
        for (const Line& line : lines_)
            if (ScoreCell* cell = line.cells[static_cast<std::size_t>(glass)]; cell && shown(*cell))
                cells.push_back(cell);
    return cells;
}

void ScoreSheet::moveFrom(const ScoreCell& cell, int by) {
    const auto cells = column();
    const auto at = std::find(cells.begin(), cells.end(), &cell);
    if (at == cells.end())
        return;
    const auto next = (at - cells.begin()) + by;
    if (next >= 0 && next < static_cast<std::ptrdiff_t>(cells.size()))
        cells[static_cast<std::size_t>(next)]->setFocus(by > 0 ? Qt::TabFocusReason : Qt::BacktabFocusReason);
    else if (by > 0)
        focusNextChild();
}

void ScoreSheet::cross(const ScoreCell& cell, bool right) {
    ScoreCell* other = line(cell.attribute().code)->cells[right ? 1 : 0];
    if (other && other != &cell && shown(*other))
        other->setFocus(Qt::TabFocusReason);
}

const ScoreSheet::Line* ScoreSheet::line(std::string_view code) const {
    const auto found =
        std::find_if(lines_.begin(), lines_.end(), [&](const Line& line) { return line.attribute->code == code; });
    return found == lines_.end() ? nullptr : &*found;
}

ScoreCell* ScoreSheet::cell(std::string_view code, Glass glass) const {
    const Line* found = line(code);
    return found ? found->cells[static_cast<std::size_t>(glass)] : nullptr;
}

void ScoreSheet::focusLine(std::string_view code) {
    const Line* found = line(code);
    if (!found)
        return;
    groups_[found->group].button->setOpen(true);
    ScoreCell* to = nullptr;
    for (ScoreCell* cell : found->cells)
        if (cell && shown(*cell) && (!to || (to->score() && !cell->score())))
            to = cell;
    if (to)
        to->setFocus(Qt::TabFocusReason);
}

ScoreCell* ScoreSheet::firstOpen() const {
    const auto cells = column();
    for (ScoreCell* cell : cells)
        if (!cell->score())
            return cell;
    return cells.empty() ? nullptr : cells.front();
}

QString ScoreSheet::faultWords(std::string_view code) const {
    QStringList faults;
    if (const Line* found = line(code))
        for (const ScoreCell* cell : found->cells)
            if (cell && cell->fault())
                faults << ui::text(*cell->fault());
    return faults.join(QLatin1Char('\n'));
}

/// Dots lead the eye from the words of a line to its cells.
void ScoreSheet::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const int gap = lines(*this, .4);
    painter.setPen(QPen(outline(palette()), lines(*this, 1) / 14.0, Qt::DotLine));
    for (const Line& line : lines_) {
        if (line.name->isHidden())
            continue;
        const QLabel& last = line.anchor->text().isEmpty() ? *line.name : *line.anchor;
        const int words = last.fontMetrics().horizontalAdvance(last.text()) + std::max(0, last.indent());
        const int from = last.x() + std::min(words, last.width()) + gap;
        const ScoreCell* first = line.cells[0]->isHidden() ? line.cells[1] : line.cells[0];
        const int y = line.name->geometry().center().y() + line.name->fontMetrics().ascent() / 3;
        if (first && from < first->x() - gap)
            painter.drawLine(from, y, first->x() - gap, y);
    }
}

} // namespace staveline::ui
