// SPDX-License-Identifier: GPL-3.0-or-later
// The blank tasting sheet as it will print, and its ways out.
#pragma once

#include "ui/present/session.h"
#include "ui/print/paper.h"
#include "ui/widgets/prompt.h"

#include <QWidget>

#include <optional>

class QPushButton;

namespace staveline::ui {

class ChoiceField;
class PageView;

class BlankSheet : public QWidget {
    Q_OBJECT
public:
    BlankSheet(Session& session, Prompt& prompt, QWidget* parent = nullptr);
    void showVessel(const VesselName& vessel, bool shortSheet);
    void refresh(); ///< the units changed
    void setPaper(PaperSize size);
    [[nodiscard]] PaperSize paper() const { return paper_; }
    void print();
    /// A file that refuses is said by the session.
    void save(PaperFormat format);
    [[nodiscard]] PageView& pages() const { return *view_; }
    [[nodiscard]] ChoiceField& lineChoice() const { return *linesChoice_; }
    void focusFirst();

Q_SIGNALS:
    void left();
    void paperChanged();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void addTools(QWidget& row);

    Session& session_;
    Prompt& prompt_;
    VesselName vessel_;
    PaperSize paper_ = PaperSize::a4;
    Document document_;
    QPushButton* print_ = nullptr;
    ChoiceField* linesChoice_;
    ChoiceField* paperChoice_;
    PageView* view_;
};

} // namespace staveline::ui
