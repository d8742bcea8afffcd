// SPDX-License-Identifier: GPL-3.0-or-later
// The brew sheet as it will print, and its ways out: printer, PDF, HTML, Markdown, CSV.
#pragma once

#include "ui/present/session.h"
#include "ui/print/paper.h"
#include "ui/widgets/prompt.h"

#include <QWidget>

class QLabel;
class QStackedWidget;
class QTextBrowser;

namespace staveline::ui {

class ChoiceField;
class MessageLabel;
class PageView;

class BrewSheetStation : public QWidget {
    Q_OBJECT
public:
    BrewSheetStation(Session& session, Prompt& prompt, QWidget* parent = nullptr);
    void showVessel(const VesselName& vessel);
    void setPaper(PaperSize size);
    [[nodiscard]] PaperSize paper() const { return paper_; }
    /// Nothing happens while there is no sheet; a file or printer that refuses is said by the session.
    void print();
    void save(PaperFormat format);
    void showAsText(bool text);
    [[nodiscard]] bool hasSheet() const { return document_.has_value(); }
    [[nodiscard]] QString words() const; ///< of the message shown
    [[nodiscard]] PageView& pages() const { return *view_; }

Q_SIGNALS:
    void paperChanged();

protected:
    void showEvent(QShowEvent* event) override;

private:
    void addTools(QWidget& row);
    void refresh();
    void refreshIfVisible();
    [[nodiscard]] QString suggestion(const QString& ending) const;

    Session& session_;
    Prompt& prompt_;
    VesselName vessel_;
    PaperSize paper_ = PaperSize::a4;
    bool stale_ = true; ///< the book or units changed while nobody looked
    std::optional<Document> document_;
    QWidget* tools_;
    ChoiceField* paperChoice_;
    MessageLabel* message_;
    QStackedWidget* sheet_;
    PageView* view_;
    QTextBrowser* text_;
};

} // namespace staveline::ui
