// SPDX-License-Identifier: GPL-3.0-or-later
// Fields of a question that is asked anew while it is typed. A fault goes to the field that its path names; nothing
// here writes.
#pragma once

#include "quantity/parse.h"
#include "ui/present/session.h"

#include <QWidget>

#include <map>

class QVBoxLayout;

namespace staveline::ui {

class ChoiceField;
class DateField;
class FieldLayout;
class NumberField;

class QuestionForm : public QWidget {
    Q_OBJECT
public:
    explicit QuestionForm(Session& session, QWidget* parent = nullptr);
    /// Every field is empty or holds what can be used.
    [[nodiscard]] bool usable() const;
    void recheck(); ///< faults shown from elsewhere go
    /// False: the fault belongs to no field.
    bool showFault(const Fault& fault);
    void focusFirst();

Q_SIGNALS:
    void edited();

protected:
    [[nodiscard]] Session& session() const { return session_; }
    /// The fields added next stand together; `heading` may be empty.
    void beginPart(const QString& heading);
    /// `path` as faults name it: "/litres". Empty is a value of its own.
    NumberField* addNumber(const std::string& path, const QString& caption, UnitKind kind, Range range);
    DateField* addDate(const std::string& path, const QString& caption);
    ChoiceField* addChoice(const QString& caption);
    /// With its caption.
    static void showField(const QWidget& field, bool shown);

private:
    void place(const QString& caption, QWidget* field, QWidget* typed);

    Session& session_;
    QVBoxLayout* column_;
    FieldLayout* part_ = nullptr; ///< that is being filled
    std::map<std::string, NumberField*> numbers_;
    std::map<std::string, DateField*> dates_;
    QWidget* first_ = nullptr;
};

} // namespace staveline::ui
