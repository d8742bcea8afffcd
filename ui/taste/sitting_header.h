// SPDX-License-Identifier: GPL-3.0-or-later
// Which sitting is in hand, when it was, and who is at the table.
#pragma once

#include "desk/filed.h"
#include "ui/taste/draft.h"
#include "ui/widgets/field_message.h"

#include <QWidget>

class QLabel;
class QLineEdit;
class QPushButton;
class QTimer;

namespace staveline::ui {

class ChoiceField;
class DateField;
class UnderlinedTabs;

class SittingHeader : public QWidget {
    Q_OBJECT
public:
    explicit SittingHeader(QWidget* parent = nullptr);
    /// Newest first.
    void showSittings(const std::vector<desk::Filed<facts::SittingFact>>& sittings, std::optional<std::int64_t> inHand);
    /// `anew`: another sitting or taster, where nothing half typed belongs.
    void showDraft(const SittingDraft& draft, Day today, bool anew);
    void setReadOnly(bool readOnly);
    void finish(); ///< a name that is typed is told of
    void focusName();
    void showDayFault(const Fault& fault);
    void showNameFault(const QString& words);

    [[nodiscard]] ChoiceField& sittings() const { return *sittings_; }
    [[nodiscard]] DateField& date() const { return *date_; }
    [[nodiscard]] QLineEdit& name() const { return *name_; }
    [[nodiscard]] UnderlinedTabs& tasters() const { return *tasters_; }

Q_SIGNALS:
    void chose(std::optional<std::int64_t> sitting); ///< none: the one nobody stored yet
    void newAsked();
    void dayTyped();
    void named(const QString& name);
    void took(int taster);
    void clicked(int taster); ///< by the pointer: what comes next is scoring
    void anotherAsked();

private:
    void connectParts();
    void showTasters(const SittingDraft& draft);

    std::vector<std::pair<QString, std::string>> offered_; ///< words and number, as in the choice
    ChoiceField* sittings_;
    QPushButton* new_;
    DateField* date_;
    QLabel* nameLabel_;
    QLineEdit* name_;
    UnderlinedTabs* tasters_;
    QPushButton* another_;
    HungMessage message_;
    QTimer* pause_;
};

/// "Rook", "Rook, Wren and 3 more"; empty when nobody is named.
[[nodiscard]] QString tasterWords(const std::vector<std::string>& tasters);
/// The name on a tab; one without a name is counted.
[[nodiscard]] QString tabWords(const std::vector<std::string>& tasters, std::size_t index);

} // namespace staveline::ui
