// SPDX-License-Identifier: GPL-3.0-or-later
// The life of a vessel so far, in lines: where its culture came from, and what its wood saw.
#pragma once

#include "ui/present/session.h"

#include <QWidget>

class QLabel;

namespace staveline::ui {

class LifeLines : public QWidget {
    Q_OBJECT
public:
    explicit LifeLines(Session& session, QWidget* parent = nullptr);
    void showVessel(const facts::VesselName& vessel);

private:
    void say(QLabel& heading, QLabel& lines, const QStringList& words);

    Session& session_;
    QLabel* lineageHeading_;
    QLabel* lineage_;
    QLabel* woodHeading_;
    QLabel* wood_;
};

} // namespace staveline::ui
