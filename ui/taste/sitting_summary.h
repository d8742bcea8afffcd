// SPDX-License-Identifier: GPL-3.0-or-later
// What the sitting says so far, and what is known about the vessel with everything together.
#pragma once

#include "desk/filed.h"
#include "desk/tasting.h"
#include "estimate/estimates.h"
#include "ui/present/session.h"
#include "ui/widgets/glyph.h"

#include <QListWidget>
#include <QWidget>

class QLabel;

namespace staveline::tasting {
struct FunkSides;
} // namespace staveline::tasting

namespace staveline {}

namespace staveline::ui {

class MessageLabel;

/// Lines not scored yet, as many beside each other as fit. Enter or a click goes there.
class MissingList : public QListWidget {
    Q_OBJECT
public:
    explicit MissingList(QWidget* parent = nullptr);
    void showCodes(const std::vector<std::string>& codes);

Q_SIGNALS:
    void asked(const QString& code);

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void fit();
    std::vector<std::string> codes_;
};

class SittingSummary : public QWidget {
    Q_OBJECT
public:
    explicit SittingSummary(Session& session, QWidget* parent = nullptr);
    /// The sides stand under funk.
    void showTaste(const desk::TasteView& view, const tasting::FunkSides& sides);
    /// What the desk knows today, or why it cannot say; with the target that is set, if one is.
    void showKnown(const Result<desk::EstimatesView>& known,
                   const std::optional<desk::Filed<facts::TargetFact>>& target);
    [[nodiscard]] QString sidesWords() const;   ///< spice and horse on show
    [[nodiscard]] QString verdictWords() const; ///< one line a dimension, and what is said about the target
    [[nodiscard]] QString faultWords() const;
    [[nodiscard]] MissingList& missing() const { return *missing_; }

Q_SIGNALS:
    void asked(const QString& code); ///< the brewer wants to score this line

private:
    struct Reading {
        QLabel *name, *says, *help;
    };
    struct Known {
        QLabel *glyph, *words;
    };
    void addReadings();
    void addKnown();
    void showHelp(const desk::TasteView& view);
    void showFaults(const std::vector<desk::FaultAdvice>& faults);
    void changeEvent(QEvent* event) override;
    void paintGlyphs();

    Session& session_;
    QLabel* scored_;
    PerDimension<Reading> readings_{};
    QLabel* missingHead_;
    MissingList* missing_;
    MessageLabel* faults_;
    QLabel* knownHead_;
    PerDimension<Known> known_{};
    PerDimension<Glyph> glyphs_{};
    QLabel* knownNote_;
    QLabel* sides_;
};

} // namespace staveline::ui
