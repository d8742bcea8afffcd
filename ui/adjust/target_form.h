// SPDX-License-Identifier: GPL-3.0-or-later
// What the brewer wants of this vessel. Each finished field is one edit of today's target.
#pragma once

#include "desk/filed.h"
#include "desk/history.h"
#include "ui/present/session.h"
#include "ui/present/unit_scale.h"

#include <QFrame>

class QLineEdit;
class QPushButton;
class QGridLayout;
class QVBoxLayout;
class QLabel;

namespace staveline::ui {

class ChoiceField;
class MessageLabel;
class NumberField;

/// One number of a target and how its field stores it.
struct TargetNumber {
    std::string path; ///< as in record files, without its unit: "acidity_band", "gravity_low"
    QString name;     ///< for assistive technology and the name of the edit
    UnitKind unit = UnitKind::none;
    double low = 0, high = 10; ///< as the field stores it
    double (*get)(const tasting::Target&) = nullptr;
    void (*set)(tasting::Target&, double) = nullptr;
};
[[nodiscard]] const std::vector<TargetNumber>& targetNumbers();

class TargetForm : public QFrame {
    Q_OBJECT
public:
    explicit TargetForm(Session& session, QWidget* parent = nullptr);
    /// What is half typed or cannot be used stays as it is.
    void setVessel(const facts::VesselName& vessel);
    void refresh();
    void finishTyping(); ///< what is typed and not stored yet
    void focusFirst();

    [[nodiscard]] NumberField* number(const std::string& path) const;
    [[nodiscard]] QLineEdit& setBy() const { return *setBy_; }
    [[nodiscard]] ChoiceField& severity() const { return *severity_; }
    [[nodiscard]] QStringList traits() const;
    [[nodiscard]] QString words() const; ///< of the message above the fields

private:
    struct Entry {
        const TargetNumber* about;
        NumberField* field;
    };
    void addWindows(QVBoxLayout& column);
    void addBounds(QVBoxLayout& column);
    void addSetBy(QVBoxLayout& column);
    void addTraits(QVBoxLayout& column);
    QWidget* addNumber(const TargetNumber& about);
    void fillDraws();
    void fillTraits(const tasting::Target& target, bool writable);
    void finish(const Entry& entry);
    void finishSetBy();
    void likeChosenDraw();
    void putTrait(const std::string& fault, int severity); ///< 0 takes it away
    /// False: refused, and said.
    bool store(const tasting::Target& target, const QString& what, const std::string& key);
    void showFault(const Fault& fault);
    [[nodiscard]] std::optional<desk::Filed<facts::TargetFact>> filed() const;
    [[nodiscard]] tasting::Target target() const;

    Session& session_;
    facts::VesselName vessel_;
    DisplayUnits units_;
    std::vector<Entry> entries_;
    std::vector<desk::PastDraw> pastDraws_;
    MessageLabel* message_;
    ChoiceField* draws_;
    QPushButton* like_;
    QLineEdit* setBy_;
    ChoiceField* trait_;
    ChoiceField* severity_;
    QPushButton* addTrait_;
    QVBoxLayout* traitColumn_ = nullptr;
    QWidget* traitList_ = nullptr;
};

} // namespace staveline::ui
