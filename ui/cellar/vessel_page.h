// SPDX-License-Identifier: GPL-3.0-or-later
// Adding a vessel: a few questions, everything else by habit and material.
#pragma once

#include "ui/present/session.h"

#include <QWidget>

namespace staveline::ui {

class FactForm;
class MessageLabel;

class VesselPage : public QWidget {
    Q_OBJECT
public:
    explicit VesselPage(Session& session, QWidget* parent = nullptr);
    void begin();
    void add();
    [[nodiscard]] FactForm& fields() const { return *form_; }
    [[nodiscard]] QString words() const;

Q_SIGNALS:
    void added(const QString& vessel);
    void left();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    Session& session_;
    FactForm* form_;
    MessageLabel* message_;
};

} // namespace staveline::ui
