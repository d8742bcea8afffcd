// SPDX-License-Identifier: GPL-3.0-or-later
// The first page: three ways to begin, and the recent books.
#pragma once

#include <QStringList>
#include <QWidget>

namespace staveline::ui {

class MessageLabel;

class StartPage : public QWidget {
    Q_OBJECT
public:
    /// Without a sample there are two choices.
    explicit StartPage(bool hasSample, QWidget* parent = nullptr);
    void setRecent(const QStringList& books);
    void say(const QString& fault);
    void focusFirst();

Q_SIGNALS:
    void newAsked();
    void sampleAsked();
    void openAsked();
    void bookChosen(const QString& path);

private:
    void addRecent(const QString& path);
    MessageLabel* message_;
    QWidget* recent_;
};

} // namespace staveline::ui
