// SPDX-License-Identifier: GPL-3.0-or-later
// What is wrong with a field, hung below it: it lies over the page, so that nothing moves when it comes or goes. It
// gives way to what it covers as soon as that has the focus; the field keeps its mark.
#pragma once

#include <QFrame>
#include <QPointer>

class QLineEdit;
class QToolButton;

namespace staveline::ui {

class MessageLabel;

class FieldMessage : public QFrame {
    Q_OBJECT
public:
    /// `edit`: in what is typed; it is marked while something is wrong.
    explicit FieldMessage(QLineEdit& edit);
    ~FieldMessage() override;
    void say(const QString& words);
    void clear();
    /// A button beside the words; none while the text is empty.
    void offer(const QString& text, const QString& spoken);
    [[nodiscard]] QToolButton* offerButton() const { return offer_; }
    [[nodiscard]] QString words() const;

Q_SIGNALS:
    void offerTaken();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    void hang(); ///< beside the field as it stands now, or out of sight
    void placeIn(const QWidget& host);
    void follow(QWidget* before, QWidget* focus);
    void mark(bool refused);

    QLineEdit& edit_;
    MessageLabel* message_;
    QToolButton* offer_;
    QPointer<QWidget> host_;
    bool givesWay_ = false;
};

/// The message of a field, wherever it hangs: each is taken down with the other.
class HungMessage {
public:
    explicit HungMessage(QLineEdit& edit) : message_(new FieldMessage(edit)) {}
    ~HungMessage() { delete message_; }
    HungMessage(const HungMessage&) = delete;
    HungMessage& operator=(const HungMessage&) = delete;
    /// None when the page it lay over has gone before.
    [[nodiscard]] FieldMessage* get() const { return message_; }
    void say(const QString& words) const {
        if (message_)
            message_->say(words);
    }
    void clear() const {
        if (message_)
            message_->clear();
    }
    void offer(const QString& text, const QString& spoken) const {
        if (message_)
            message_->offer(text, spoken);
    }
    [[nodiscard]] QString words() const { return message_ ? message_->words() : QString(); }

private:
    QPointer<FieldMessage> message_;
};

} // namespace staveline::ui
