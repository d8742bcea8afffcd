// SPDX-License-Identifier: GPL-3.0-or-later
// A paper in front of the brewer: its pages as they will print, the same as text, and its ways out.
#pragma once

#include "sheet/document.h"
#include "ui/present/session.h"
#include "ui/print/printout.h"

#include <QWidget>

#include <optional>

class QHBoxLayout;
class QPushButton;
class QStackedWidget;
class QTextBrowser;

namespace staveline::ui {

class ChoiceField;
class PageView;

class PaperPage : public QWidget {
    Q_OBJECT
public:
    /// `name` of the paper, for its dialogs and for assistive technology: "brew sheet"; `formats` besides the printer.
    PaperPage(Session& session, Prompt& prompt, const QString& name, const std::vector<sheet::PaperFormat>& formats,
              QWidget* parent = nullptr);
    /// None: nothing is shown and nothing leaves. `file`: the name offered, without its ending.
    void showPaper(std::optional<sheet::Document> document, const QString& file);
    [[nodiscard]] bool hasPaper() const { return document_.has_value(); }
    void setPaper(PaperSize size);
    [[nodiscard]] PaperSize paper() const { return printout_.size(); }
    /// Of the paper shown; `freshen` is called before it leaves.
    [[nodiscard]] Printout& printout() { return printout_; }
    void freshenBy(std::function<void()> freshen) { freshen_ = std::move(freshen); }
    void showAsText(bool text);
    /// What else the paper needs, left of its size.
    void addTool(QWidget& tool);
    [[nodiscard]] PageView& pages() const { return *view_; }
    [[nodiscard]] QPushButton& printButton() const { return *print_; }

Q_SIGNALS:
    void paperChanged(PaperSize size); ///< by the brewer

private:
    void addTools(const std::vector<sheet::PaperFormat>& formats);
    void addPaperChoice(QHBoxLayout& row);
    [[nodiscard]] std::optional<Printout::Made> made() const;

    QString file_;
    std::optional<sheet::Document> document_;
    std::function<void()> freshen_;
    Printout printout_;
    QWidget* tools_;
    QHBoxLayout* extras_;
    QPushButton* print_ = nullptr;
    ChoiceField* paperChoice_;
    QStackedWidget* sheet_;
    PageView* view_;
    QTextBrowser* text_;
};

} // namespace staveline::ui
