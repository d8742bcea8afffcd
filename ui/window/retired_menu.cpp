// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/retired_menu.h"

#include "ui/present/text.h"

#include <QMenu>

namespace staveline::ui {
namespace {

/// A menu without an entry would not open.
void addNone(QMenu& menu) {
    menu.clear();
    menu.addAction(QMenu::tr("No vessel is retired"))->setEnabled(false);
}

void fill(QMenu& menu, Session& session) {
    menu.clear();
    for (const facts::VesselFact& vessel : session.desk().vessels().value_or(std::vector<facts::VesselFact>())) {
        if (!vessel.retired)
            continue;
        QAction* action = menu.addAction(qs(vessel.name).replace(QLatin1Char('&'), QLatin1String("&&")));
        action->setEnabled(!session.desk().readOnly());
        QObject::connect(action, &QAction::triggered, &session, [&session, name = vessel.name] {
            const facts::BringBackFact fact{name, session.desk().today()};
            if (const auto done = session.record(facts::Fact(fact)); !done)
                Q_EMIT session.failed(done.error());
        });
    }
    if (menu.isEmpty())
        addNone(menu);
}

} // namespace

void addRetiredVessels(QMenu& menu, std::function<Session*()> session) {
    addNone(menu);
    QObject::connect(&menu, &QMenu::aboutToShow, &menu, [&menu, session = std::move(session)] {
        if (Session* open = session())
            fill(menu, *open);
        else
            addNone(menu);
    });
}

} // namespace staveline::ui
