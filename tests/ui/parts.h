// SPDX-License-Identifier: GPL-3.0-or-later
// What is in a window, found as those find it who use it: by what it is and what it is called.
#pragma once

#include "support/catch.h"

#include <QWidget>

namespace staveline::testing {

/// By its words for assistive technology, by those on a button, or by its own name where it has no such words.
[[nodiscard]] bool isCalled(const QWidget& widget, const QString& name);
/// Those of a kind in the order they were made, of that name if one is given.
template <class W> QList<W*> parts(const QWidget& in, const QString& name = {}) {
    QList<W*> found;
    for (QWidget* child : in.findChildren<QWidget*>())
        if (auto* one = dynamic_cast<W*>(child); one && (name.isEmpty() || isCalled(*one, name)))
            found << one;
    return found;
}

/// The only one of its kind and name; of several the only one on show. Fails when that is none or not one.
template <class W> W& part(const QWidget& in, const QString& name = {}) {
    QList<W*> found = parts<W>(in, name);
    if (found.size() > 1)
        found.removeIf([](const W* one) { return !one->isVisible(); });
    INFO("looked for the " << W::staticMetaObject.className() << " \"" << name.toStdString() << "\" in the "
                           << in.metaObject()->className());
    REQUIRE(found.size() == 1);
    return *found.front();
}

/// What a label or a message of that name says.
[[nodiscard]] QString wordsOf(const QWidget& in, const QString& name);

} // namespace staveline::testing
