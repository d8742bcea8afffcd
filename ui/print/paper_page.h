// SPDX-License-Identifier: GPL-3.0-or-later
// A paper in front of the brewer: its pages as they will print, the same as text, and its ways out.
#pragma once

#include "sheet/document.h"
#include "ui/present/session.h"
#include "ui/print/paper.h"
#include "ui/widgets/prompt.h"

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
    void setPaper(PaperSize size);
    [[nodiscard]] PaperSize paper() const { return paper_; }
    /// Nothing happens while there is no paper; a file or printer that refuses is said by the session.
    void print();
    void save(sheet::PaperFormat format);
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
    void tell(const Result<void>& done, const QString& words);

    Session& session_;
    Prompt& prompt_;
    QString name_, file_;
    PaperSize paper_ = PaperSize::a4;
    std::optional<sheet::Document> document_;
    QWidget* tools_;
    QHBoxLayout* extras_;
    QPushButton* print_ = nullptr;
    ChoiceField* paperChoice_;
    QStackedWidget* sheet_;
    PageView* view_;
    QTextBrowser* text_;
};

} // namespace staveline::ui
