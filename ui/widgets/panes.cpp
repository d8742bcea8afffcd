// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/panes.h"

#include "ui/widgets/theme.h"

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
}

void Panes::addPane(QWidget* pane, double usual, double least) {
    usual_ << usual;
    addWidget(pane);
    setStretchFactor(count() - 1, static_cast<int>(usual));
    if (least > 0)
        pane->setMinimumWidth(lines(*this, least));
    useUsualWidths();
}

void Panes::useUsualWidths() {
    QList<int> widths;
    for (const double usual : usual_)
        widths << lines(*this, usual);
    setSizes(widths);
}

void Panes::takeWidths(const QList<int>& widths) {
    bool sound = widths.size() == count();
    for (int i = 0; sound && i < count(); ++i)
        sound = widths[i] >= std::max(1, widget(i)->minimumWidth());
    if (sound)
        setSizes(widths);
}

QList<int> Panes::madeWidths() const {
    const QList<int> widths = sizes();
    return seen_ && !widths.contains(0) ? widths : QList<int>();
}

QSplitterHandle* Panes::createHandle() {
    return new Handle(*this);
}

void Panes::showEvent(QShowEvent* event) {
    QSplitter::showEvent(event);
    seen_ = true;
}

} // namespace staveline::ui
