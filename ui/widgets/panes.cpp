// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/panes.h"

#include "ui/widgets/theme.h"

#include <QEvent>

#include <algorithm>

namespace staveline::ui {
namespace {

class Handle : public QSplitterHandle {
public:
    explicit Handle(Panes& panes) : QSplitterHandle(panes.orientation(), &panes), panes_(panes) {
        setToolTip(Panes::tr("Drag to share the width; a double click shares it as usual."));
    }

protected:
    void mouseDoubleClickEvent(QMouseEvent*) override { panes_.useUsualWidths(); }

private:
    Panes& panes_;
};

} // namespace

Panes::Panes(const QString& name, QWidget* parent) : QSplitter(Qt::Horizontal, parent) {
    setObjectName(name);
    setChildrenCollapsible(false);
    connect(this, &QSplitter::splitterMoved, this, [this] { own_ = true; });
}

void Panes::addPane(QWidget* pane, double usual, double least) {
    usual_ << usual;
    least_ << least;
    addWidget(pane);
    setStretchFactor(count() - 1, static_cast<int>(usual));
    if (least > 0)
        pane->setMinimumWidth(lines(*this, least));
    useUsualWidths();
}

void Panes::useUsualWidths() {
    own_ = false;
    share();
}

void Panes::share() {
    QList<int> widths;
    for (const double usual : usual_)
        widths << lines(*this, usual);
    setSizes(widths);
}

void Panes::takeWidths(const QList<int>& widths) {
    bool sound = widths.size() == count();
    for (int i = 0; sound && i < count(); ++i)
        sound = widths[i] >= std::max(1, widget(i)->minimumWidth());
    if (!sound || stacked())
        return;
    setSizes(widths);
    own_ = true;
}

QList<int> Panes::madeWidths() const {
    const QList<int> widths = sizes();
    return seen_ && !stacked() && !widths.contains(0) ? widths : QList<int>();
}

int Panes::leastBeside() const {
    int least = 0;
    for (int i = 0; i < count(); ++i)
        if (!widget(i)->isHidden())
            least += std::max(widget(i)->minimumWidth(), widget(i)->minimumSizeHint().width()) +
                     (least > 0 ? handleWidth() : 0);
    return least;
}

QSize Panes::minimumSizeHint() const {
    QSize least(0, 0);
    for (int i = 0; i < count(); ++i)
        if (!widget(i)->isHidden())
            least = least.expandedTo(widget(i)->minimumSizeHint().expandedTo({widget(i)->minimumWidth(), 0}));
    return least;
}

/// Stacked, they share the height as they usually share the width.
void Panes::stack(bool above) {
    if (above)
        beside_ = sizes();
    setOrientation(above ? Qt::Vertical : Qt::Horizontal);
    if (!above && own_ && beside_.size() == count())
        setSizes(beside_);
    else
        share();
}

/// No part is narrower than its own words, which may change.
void Panes::fit() {
    for (int i = 0; i < count(); ++i)
        if (least_[i] > 0)
            widget(i)->setMinimumWidth(std::max(lines(*this, least_[i]), widget(i)->minimumSizeHint().width()));
    const bool narrow = width() < leastBeside();
    if (narrow != stacked())
        stack(narrow);
}

void Panes::resizeEvent(QResizeEvent* event) {
    fit();
    QSplitter::resizeEvent(event);
    if (!own_ && !stacked())
        share();
}

bool Panes::event(QEvent* event) {
    if (event->type() == QEvent::LayoutRequest)
        fit();
    return QSplitter::event(event);
}

QSplitterHandle* Panes::createHandle() {
    return new Handle(*this);
}

void Panes::showEvent(QShowEvent* event) {
    QSplitter::showEvent(event);
    seen_ = true;
}

} // namespace staveline::ui
