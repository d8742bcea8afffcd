// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/present/choice_words.h"

#include "facts/facts.h"

#include <QCoreApplication>

namespace staveline::ui {
namespace {

QString choiceText(const char* source) {
    return QCoreApplication::translate("Choice", source);
}

} // namespace

QString choiceName(int proposal) {
    if (proposal == facts::ChoiceFact::own)
        return choiceText("your own setting");
    return proposal == 0 ? choiceText("leave it alone") : choiceText("proposal %1").arg(proposal);
}

QString usualName() {
    return choiceText("the usual recipe");
}

} // namespace staveline::ui
