// SPDX-License-Identifier: GPL-3.0-or-later
// The rooms of the cellar: the year of each as it is told, what was read there, and what its beer is reckoned at.
#pragma once

#include "desk/room.h"
#include "ui/present/session.h"
#include "ui/widgets/aside_page.h"

class QLabel;
class QPushButton;
class QTableWidget;

namespace staveline::ui {

class ChoiceField;
class FactForm;
class MessageLabel;

class RoomPage : public AsidePage {
    Q_OBJECT
public:
    explicit RoomPage(Session& session, QWidget* parent = nullptr);
    void begin();           ///< as the rooms stand; what is begun stays in hand
    void finish() override; ///< records a new one, or puts right what was told
    void tellAnew();        ///< the one in hand is so from today on
    void removeRoom();      ///< without a question: undo brings it back
    [[nodiscard]] bool started() const;
    [[nodiscard]] ChoiceField& which() const { return *which_; }
    [[nodiscard]] FactForm& form() const { return *form_; }
    [[nodiscard]] QTableWidget& year() const { return *year_; }
    [[nodiscard]] QString words() const;

private:
    QWidget* makeYear();
    QLayout* makeButtons();
    void follow();                      ///< the book changed
    void read();                        ///< the rooms there are
    void show(const std::string& name); ///< empty: a new one
    void showYear();
    void tell();
    [[nodiscard]] bool usable();
    void took(const Result<desk::Recorded>& done, const std::string& name);
    [[nodiscard]] const desk::RoomView* inHand() const; ///< none: a new one

    Session& session_;
    std::vector<desk::RoomView> rooms_;
    std::string shown_;
    bool active_ = false;
    ChoiceField* which_;
    FactForm* form_;
    QLabel* offset_;
    QTableWidget* year_;
    MessageLabel* message_;
    QPushButton *keep_, *anew_, *remove_;
};

} // namespace staveline::ui
