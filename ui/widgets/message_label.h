// SPDX-License-Identifier: GPL-3.0-or-later
// A message that stands where it belongs: a shape, then words. Hidden while there is nothing to say; among fields that
// are typed into its room is kept.
#pragma once

#include "ui/widgets/glyph.h"

#include <QWidget>

class QLabel;

namespace staveline::ui {

class MessageLabel : public QWidget {
    Q_OBJECT
public:
    enum class Weight { note, planB, warning, fault };

    explicit MessageLabel(QWidget* parent = nullptr);
    /// Screen readers are told when the words change.
    void say(Weight weight, const QString& words);
    void clear();
    /// That many lines are its own, also while it says nothing: what stands below does not jump when it does.
    void keepRoom(double textLines);
    [[nodiscard]] QString words() const;
    [[nodiscard]] Weight weight() const { return weight_; }

protected:
    void changeEvent(QEvent* event) override;

private:
    void refreshGlyph();

    QLabel* glyph_;
    QLabel* text_;
    Weight weight_ = Weight::note;
};

} // namespace staveline::ui
