// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/taste/fold_button.h"

#include "ui/widgets/theme.h"

namespace staveline::ui {

FoldButton::FoldButton(bool open, QWidget* parent) : QToolButton(parent), open_(!open) {
    setAutoRaise(true);
    setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    setFocusPolicy(Qt::StrongFocus);
    setType(*this, Type::strong);
    setOpen(open);
    connect(this, &QToolButton::clicked, this, [this] { setOpen(!open_); });
}

void FoldButton::setOpen(bool open) {
    if (open == open_)
        return;
    open_ = open;
    setArrowType(open ? Qt::DownArrow : Qt::RightArrow);
    setAccessibleDescription(open ? tr("unfolded") : tr("folded"));
    Q_EMIT folded();
}

void FoldButton::say(const QString& words, const QString& spoken) {
    setText(words);
    setAccessibleName(spoken);
}

} // namespace staveline::ui
