// SPDX-License-Identifier: GPL-3.0-or-later
// The blank tasting sheet as it will print, and its ways out.
#pragma once

#include "ui/print/paper_page.h"

namespace staveline::ui {

class BlankSheet : public QWidget {
    Q_OBJECT
public:
    BlankSheet(Session& session, Prompt& prompt, QWidget* parent = nullptr);
    void showVessel(const facts::VesselName& vessel, bool shortSheet);
    void refresh(); ///< the units changed
    [[nodiscard]] PaperPage& page() const { return *page_; }
    [[nodiscard]] PageView& pages() const { return page_->pages(); }
    void focusFirst();

Q_SIGNALS:
    void left();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    Session& session_;
    facts::VesselName vessel_;
    PaperPage* page_;
    ChoiceField* linesChoice_;
};

} // namespace staveline::ui
