// SPDX-License-Identifier: GPL-3.0-or-later
// What happened to one lot, newest first, and the form for what is entered next.
#pragma once

#include "desk/lots.h"
#include "ui/present/session.h"

#include <QWidget>

class QPushButton;
class QTableWidget;

namespace staveline::ui {

class LotForm;

class LotLedger : public QWidget {
    Q_OBJECT
public:
    explicit LotLedger(Session& session, QWidget* parent = nullptr);
    /// What is being typed stays with the lot it is about.
    void show(const desk::LotView& lot, const std::vector<desk::LotView>& all);
    /// About the lot shown; `before` is recorded with it.
    void begin(const facts::Fact& fact, const std::vector<facts::Fact>& before = {});
    void focusWork();

Q_SIGNALS:
    void keptWith(const QString& lot); ///< an entry, with what was to be recorded before it

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void addButtons(QWidget& row);
    [[nodiscard]] const desk::LotLine* selected() const;
    void amendSelected();
    void removeSelected(); ///< without a question: undo takes it back
    void follow();         ///< what can be done with the line selected

    Session& session_;
    desk::LotView lot_;
    QTableWidget* table_;
    LotForm* form_;
    std::vector<QPushButton*> entries_;
    QPushButton* open_;
    QPushButton* amend_;
    QPushButton* remove_;
};

} // namespace staveline::ui
