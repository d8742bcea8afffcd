// SPDX-License-Identifier: GPL-3.0-or-later
// A drawing among the words of a paper; it is painted as its SVG says, so that lines stay lines.
#pragma once

#include <QObject>
#include <QTextFormat>
#include <QTextObjectInterface>

namespace staveline::ui {

/// Under which a document finds who draws its pictures.
inline constexpr int pictureKind = QTextFormat::UserObject + 1;

/// Of a character that stands for the drawing, as wide as `width` unless it would be higher than a page.
[[nodiscard]] QTextCharFormat pictureFormat(const QByteArray& svg, double width);

class PictureObject : public QObject, public QTextObjectInterface {
    Q_OBJECT
    Q_INTERFACES(QTextObjectInterface)
public:
    using QObject::QObject;
    QSizeF intrinsicSize(QTextDocument* document, int position, const QTextFormat& format) override;
    void drawObject(QPainter* painter, const QRectF& rect, QTextDocument* document, int position,
                    const QTextFormat& format) override;
};

} // namespace staveline::ui
