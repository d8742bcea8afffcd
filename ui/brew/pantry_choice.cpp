// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/stock.h"
#include "ingredient/pantry.h"
#include "ui/brew/grist_editor.h"
#include "ui/widgets/choice_field.h"

#include <QCompleter>

#include <algorithm>

namespace staveline::ui {
namespace {

QString offered(const std::string& name, const std::string& id, const std::vector<desk::AtHand>& stock, Day today) {
    const bool missing = std::any_of(stock.begin(), stock.end(), [&](const desk::AtHand& each) {
        return each.counted.item == id && !each.on(today);
    });
    return missing ? ChoiceField::tr("%1 (not at hand)").arg(qs(name)) : qs(name);
}

using Offers = std::vector<std::pair<QString, std::string>>;

/// A word that a recipe names and the book does not have is shown as it stands, after the others.
bool shows(const ChoiceField& field, const Offers& offers) {
    for (int i = 0; i < field.count(); ++i) {
        const auto at = static_cast<std::size_t>(i);
        const QString id = field.itemData(i).toString();
        if (at < offers.size() ? field.itemText(i) != offers[at].first || id != qs(offers[at].second)
                               : field.itemText(i) != id)
            return false;
    }
    return static_cast<std::size_t>(field.count()) >= offers.size() && field.count() > 0;
}

/// Also what comes to the book later; what is chosen stays chosen.
template <class List> void keepOffering(ChoiceField& field, const Session& session, List list) {
    const auto fill = [&field, &session, list] {
        Offers offers;
        list(session.desk(), offers);
        if (shows(field, offers))
            return;
        const QSignalBlocker quiet(field);
        const std::string word = field.word();
        const bool chosen = field.currentIndex() >= 0;
        field.clear();
        for (const auto& [words, id] : offers)
            field.add(words, id);
        if (chosen)
            field.setWord(word);
    };
    fill();
    QObject::connect(&session, &Session::changed, &field, fill);
}

} // namespace

void offerGrain(ChoiceField& field, const Session& session, bool sugars) {
    keepOffering(field, session, [sugars](const desk::Desk& desk, Offers& offers) {
        const auto stock = desk.stock();
        for (const ingredient::Grain& grain : desk.pantry().grains())
            if (grain.isSugar() == sugars)
                offers.emplace_back(offered(grain.name, grain.id, stock, desk.today()), grain.id);
    });
}

void offerYeast(ChoiceField& field, const Session& session) {
    keepOffering(field, session, [](const desk::Desk& desk, Offers& offers) {
        const auto stock = desk.stock();
        for (const ingredient::Yeast& yeast : desk.pantry().yeasts())
            offers.emplace_back(offered(yeast.name, yeast.id, stock, desk.today()), yeast.id);
    });
}

void makeSearching(ChoiceField& field) {
    field.setEditable(true);
    field.setInsertPolicy(QComboBox::NoInsert);
    field.completer()->setFilterMode(Qt::MatchContains);
    field.completer()->setCompletionMode(QCompleter::PopupCompletion);
    field.completer()->setCaseSensitivity(Qt::CaseInsensitive);
}

} // namespace staveline::ui
