// SPDX-License-Identifier: GPL-3.0-or-later
// The lines of the sheet for one taster: name, anchor in words, a score for each glass. Groups fold.
#pragma once

#include "ui/taste/score_cell.h"

#include <QWidget>

class QGridLayout;
class QLabel;

namespace staveline::ui {

class FoldButton;
class ElidedLabel;

enum class GlassChoice { both, coldOnly, cellarOnly };

class ScoreSheet : public QWidget {
    Q_OBJECT
public:
    explicit ScoreSheet(QWidget* parent = nullptr);

    /// `anew`: another taster or sitting, where nothing half typed belongs.
    void showDraft(const SittingDraft& draft, bool anew);
    void setLong(bool all);
    void setGlasses(GlassChoice choice);
    void setReadOnly(bool readOnly);
    void finish(); ///< what is typed is told of

    [[nodiscard]] ScoreCell* cell(std::string_view code, Glass glass) const; ///< null: no such cell
    /// The first cell of that line without a score; unfolds its group.
    void focusLine(std::string_view code);
    /// The first cell on show without a score, else the first; null: all groups are folded.
    [[nodiscard]] ScoreCell* firstOpen() const;
    [[nodiscard]] QString faultWords(std::string_view code) const;

Q_SIGNALS:
    void typed(staveline::ui::ScoreCell* cell);
    void finished(staveline::ui::ScoreCell* cell);
    void entered(staveline::ui::ScoreCell* cell);
    void sameAgain();

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    struct Line {
        const tasting::Attribute* attribute;
        std::size_t group;
        QLabel* name;
        ElidedLabel* anchor;
        std::array<ScoreCell*, 2> cells; ///< by glass; the second is null where one glass is tasted
    };
    struct Group {
        std::string name;
        FoldButton* button;
        std::array<QLabel*, 2> glasses;
    };
    void addGroup(const std::string& name);
    void addLine(const tasting::Attribute& attribute);
    ScoreCell* addCell(const tasting::Attribute& attribute, Glass glass, int row);
    void orderTabs();
    void arrange(); ///< what is on show
    void sayBeside(const Line& line);
    void countGroups();
    void moveFrom(const ScoreCell& cell, int by);
    void cross(const ScoreCell& cell, bool right);
    [[nodiscard]] int rowOf(const Line& line) const;
    [[nodiscard]] bool shown(const Line& line) const;
    [[nodiscard]] bool shown(const ScoreCell& cell) const;
    [[nodiscard]] std::vector<ScoreCell*> column() const; ///< the cells on show in the order of the Tab key
    [[nodiscard]] const Line* line(std::string_view code) const;
    [[nodiscard]] static std::optional<double> spokenScore(const Line& line);

    QGridLayout* grid_;
    std::vector<Line> lines_;
    std::vector<Group> groups_;
    bool long_ = false;
    GlassChoice choice_ = GlassChoice::both;
};

} // namespace staveline::ui
