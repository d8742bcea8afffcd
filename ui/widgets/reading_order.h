// SPDX-License-Identifier: GPL-3.0-or-later
// Tab goes where the eye goes: through layouts from top to bottom and left to right, however late a part was made.
#pragma once

#include <QList>

class QWidget;

namespace staveline::ui {

/// All in `root` that take the focus by Tab now, as they are read.
[[nodiscard]] QList<QWidget*> inReadingOrder(QWidget& root);
/// The focus to the next or last of them, around the ends; false: there is none.
bool stepInReadingOrder(QWidget& root, bool forward);

/// A part in which setTabOrder has the word: a sheet is filled in column by column.
void keepOwnTabOrder(QWidget& part);
/// A part that comes after all others of its page, wherever it stands.
void readLast(QWidget& part);

} // namespace staveline::ui
