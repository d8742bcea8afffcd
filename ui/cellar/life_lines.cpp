// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cellar/life_lines.h"

#include "desk/vessel_life.h"
#include "ui/widgets/theme.h"

#include <QLabel>
#include <QVBoxLayout>

namespace staveline::ui {

LifeLines::LifeLines(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), lineageHeading_(new QLabel(tr("Where it came from"), this)),
      lineage_(new QLabel(this)), woodHeading_(new QLabel(tr("The vessel so far"), this)), wood_(new QLabel(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(lines(*this, .4));
    for (QLabel* label : {lineageHeading_, lineage_, woodHeading_, wood_}) {
        label->setTextFormat(Qt::PlainText);
        label->setWordWrap(true);
        column->addWidget(label);
    }
    for (QLabel* heading : {lineageHeading_, woodHeading_})
        setType(*heading, Type::strong);
    for (QLabel* words : {lineage_, wood_})
        words->setTextInteractionFlags(Qt::TextSelectableByMouse);
}

void LifeLines::say(QLabel& heading, QLabel& lines, const QStringList& words) {
    lines.setText(words.join(QLatin1Char('\n')));
    heading.setVisible(!words.isEmpty());
    lines.setVisible(!words.isEmpty());
}

void LifeLines::showVessel(const facts::VesselName& vessel) {
    const auto life = session_.desk().life(vessel);
    if (!life) {
        Q_EMIT session_.failed(life.error());
        return;
    }
    QStringList lineage, wood;
    for (const desk::LineageLine& line : life->lineage) {
        const QString words = session_.words(line.text);
        lineage << (line.back == 0 ? tr("%1: %2").arg(dayWords(line.on), words)
                                   : tr("%1, %2: %3").arg(dayWords(line.on), qs(line.vessel), words));
    }
    for (const Message& each : wordsOf(life->wood))
        wood << session_.words(each);
    say(*lineageHeading_, *lineage_, lineage);
    say(*woodHeading_, *wood_, wood);
}

} // namespace staveline::ui
