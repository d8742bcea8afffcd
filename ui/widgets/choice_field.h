// SPDX-License-Identifier: GPL-3.0-or-later
// A choice among words. The wheel changes nothing while scrolling past; words longer than their room end in dots, and
// the tool tip has all of them.
#pragma once

#include <QComboBox>

class QStyleOptionComboBox;

namespace staveline::ui {

class ChoiceField : public QComboBox {
    Q_OBJECT
public:
    explicit ChoiceField(QWidget* parent = nullptr);
    /// Adds what is shown and the word it stands for.
    void add(const QString& shown, const std::string& word);
    [[nodiscard]] std::string word() const;
    /// A word that is not offered yet is added, so that nothing recorded is lost.
    void setWord(const std::string& word);
    void showPopup() override; ///< as wide as its longest words

protected:
    bool event(QEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void initStyleOption(QStyleOptionComboBox* option) const override;

private:
    [[nodiscard]] QString shown(const QStyleOptionComboBox& option) const; ///< what there is room for
};

} // namespace staveline::ui
