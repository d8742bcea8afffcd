// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/present/verdict_words.h"

#include <QCoreApplication>

namespace staveline::ui {

using tasting::VerdictKind;

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("Verdict", source);
}

} // namespace

QString wordOf(VerdictKind kind) {
    switch (kind) {
    case VerdictKind::faultFirst:
        return tr("fault first");
    case VerdictKind::waitUntil:
        return tr("wait");
    case VerdictKind::hold:
        return tr("hold");
    case VerdictKind::move:
        return tr("move");
    case VerdictKind::neverTasted:
        return tr("taste first");
    case VerdictKind::open:
        return tr("undecided");
    case VerdictKind::leaveAlone:
        return tr("leave alone");
    case VerdictKind::tasteAgain:
        break;
    }
    return tr("taste again");
}

} // namespace staveline::ui
