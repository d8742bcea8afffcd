// SPDX-License-Identifier: GPL-3.0-or-later
// What all tables of the window are: without frames, to read and to copy from, their rows told by their lines alone.
#pragma once

class QString;
class QTableView;

namespace staveline::ui {

/// Before its model is set or after.
void makeQuiet(QTableView& table, const QString& name);

} // namespace staveline::ui
