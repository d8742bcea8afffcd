// SPDX-License-Identifier: GPL-3.0-or-later
// The brew sheet of a vessel as it will print.
#pragma once

#include "ui/print/paper_page.h"

namespace staveline::ui {

class MessageLabel;

class BrewSheetPage : public QWidget {
    Q_OBJECT
public:
    BrewSheetPage(Session& session, Prompt& prompt, QWidget* parent = nullptr);
    void showVessel(const facts::VesselName& vessel);
    [[nodiscard]] QString words() const; ///< of the message shown
    /// Also while another page is in front: the sheet is made anew before it leaves.
    [[nodiscard]] PaperPage& page() const { return *page_; }
    [[nodiscard]] PageView& pages() const { return page_->pages(); }

protected:
    void showEvent(QShowEvent* event) override;

private:
    void refresh();
    void refreshIfVisible();
    void tellState();

    Session& session_;
    facts::VesselName vessel_;
    bool stale_ = true; ///< the book or units changed while nobody looked
    QString fault_;     ///< why there is no sheet
    MessageLabel* message_;
    PaperPage* page_;
};

} // namespace staveline::ui
