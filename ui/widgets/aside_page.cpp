// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/aside_page.h"

#include <QKeyEvent>

namespace staveline::ui {

void AsidePage::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        leave();
    else if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        finish();
    else
        QWidget::keyPressEvent(event);
}

} // namespace staveline::ui
