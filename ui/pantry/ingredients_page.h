// SPDX-License-Identifier: GPL-3.0-or-later
// All ingredients with what is at hand of them; those of one's own are made from a built-in one, changed and taken out
// here. Everything is stored as it is kept, and undone by name.
#pragma once

#include "desk/filed.h"
#include "ui/present/session.h"
#include "ui/widgets/aside_page.h"

class QLabel;
class QPushButton;
class QTableWidget;

namespace staveline::ui {

class ChoiceField;
class FactForm;
class MessageLabel;
class StockForm;

/// A line of the list.
struct IngredientLine {
    std::string id;
    QString name;
    std::optional<desk::Filed<facts::Fact>> own; ///< none: built in
};

class IngredientsPage : public AsidePage {
    Q_OBJECT
public:
    explicit IngredientsPage(Session& session, QWidget* parent = nullptr);
    void begin();           ///< what is being typed stays in hand
    void finish() override; ///< keeps what is typed
    void leave() override;  ///< first what is typed, then the page
    void keep();
    /// Starts one of one's own from what is chosen in the list.
    void makeOwn();
    void removeChosen();
    void choose(const std::string& id);

    [[nodiscard]] ChoiceField& sort() const { return *sort_; }
    [[nodiscard]] QTableWidget& table() const { return *table_; }
    [[nodiscard]] FactForm& form() const { return *form_; }
    [[nodiscard]] StockForm& stock() const { return *stock_; }
    [[nodiscard]] QString words() const;

protected:
    void showEvent(QShowEvent* event) override;

private:
    [[nodiscard]] QWidget* makeList();
    [[nodiscard]] QWidget* makeDetails();
    void refresh();
    void fillTable();
    void showChosen();
    void build(const facts::Fact& fact);
    void endEditing();
    void tell();
    [[nodiscard]] const IngredientLine* chosen() const;
    [[nodiscard]] bool started() const;
    void say(const Fault& fault);

    Session& session_;
    ChoiceField* sort_;
    QTableWidget* table_;
    QLabel* title_;
    QLabel* about_;
    FactForm* form_;
    MessageLabel* message_;
    QPushButton *make_, *keep_, *remove_, *cancel_;
    StockForm* stock_;
    std::vector<IngredientLine> lines_;
    std::optional<std::int64_t> stored_; ///< the row of what is in the form; none: it is new
    bool making_ = false;                ///< a new one is being typed
    bool filling_ = false;
};

} // namespace staveline::ui
