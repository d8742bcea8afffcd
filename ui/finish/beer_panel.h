// SPDX-License-Identifier: GPL-3.0-or-later
// The beer that could be drawn and packed: how much there is, what was measured last, and the last draws.
#pragma once

#include "desk/ledger.h"
#include "ui/present/session.h"

#include <QWidget>

class QLabel;

namespace staveline::ui {

class VesselDrawing;

class BeerPanel : public QWidget {
    Q_OBJECT
public:
    explicit BeerPanel(Session& session, QWidget* parent = nullptr);
    void show(const desk::LedgerView& ledger);

private:
    Session& session_;
    QLabel* level_;
    QLabel* ages_;
    VesselDrawing* drawing_;
    QLabel* measured_;
    QLabel* draws_;
};

} // namespace staveline::ui
