// SPDX-License-Identifier: GPL-3.0-or-later
// A vessel for the cellar: a few questions when it is new; all its facts, its culture and its end when it is changed.
#pragma once

#include "desk/room.h"
#include "ui/present/session.h"
#include "ui/widgets/aside_page.h"

class QLabel;
class QLineEdit;
class QPushButton;

namespace staveline::ui {

class FactForm;
class LifeLines;
class MessageLabel;
class NewVesselQuestions;
class ProspectPanel;

class VesselPage : public AsidePage {
    Q_OBJECT
public:
    explicit VesselPage(Session& session, QWidget* parent = nullptr);
    /// A new one, or one that is there. What is begun already stays in hand, also when another is asked for.
    void begin();
    void change(const facts::VesselName& vessel);
    [[nodiscard]] bool started() const; ///< something is typed that is not recorded
    void leave() override;
    void finish() override; ///< adds it, or records what is different now
    void retire();          ///< without a question: undo takes it back
    [[nodiscard]] FactForm& fields() const { return *form_; }
    [[nodiscard]] FactForm& culture() const { return *culture_; }
    [[nodiscard]] NewVesselQuestions& questions() const { return *questions_; }
    [[nodiscard]] QLineEdit& reason() const { return *reason_; }
    [[nodiscard]] QString words() const;

Q_SIGNALS:
    void added(const QString& vessel);
    void changed(const QString& vessel);

private:
    QWidget* makeChanges();
    QLayout* makeButtons();
    void show(const facts::VesselFact& facts, bool isNew);
    [[nodiscard]] bool goesOn(const std::optional<facts::VesselName>& wanted);
    void tell();
    void showProspect();
    void followRoom();
    [[nodiscard]] bool usable(); ///< else it is said at the field
    void add(const facts::VesselFact& vessel);
    void recordChanges(const facts::VesselFact& vessel);
    bool record(const std::vector<facts::Fact>& facts);
    void showFault(const Fault& fault);
    [[nodiscard]] facts::CultureFact lastCulture() const;

    Session& session_;
    std::optional<facts::VesselFact> before_; ///< none: a new vessel
    facts::CultureFact cultureBefore_;
    std::vector<desk::RoomView> rooms_;
    bool active_ = false;
    QLabel* title_;
    QLabel* words_;
    FactForm* form_;
    NewVesselQuestions* questions_;
    ProspectPanel* prospect_; ///< what the numbers typed come to
    QWidget* changes_;
    FactForm* culture_;
    LifeLines* life_;
    QLineEdit* reason_;
    QPushButton* retire_;
    MessageLabel* message_;
    QPushButton* finish_;
};

/// What is different, as a fact; nothing when nothing is.
[[nodiscard]] std::optional<facts::VesselEditFact> editOf(const facts::VesselFact& before,
                                                          const facts::VesselFact& after);

} // namespace staveline::ui
