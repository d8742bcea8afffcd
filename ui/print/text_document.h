// SPDX-License-Identifier: GPL-3.0-or-later
// From the document model to rich text for paper: black on white, no colour carries meaning.
#pragma once

#include "sheet/document.h"

#include <QFont>
#include <QTextFormat>

#include <memory>

class QTextDocument;

namespace staveline::ui {

/// Layout units to the point; large, so that fonts are laid out as designed and not to a screen's pixels.
inline constexpr double unitsPerPoint = 8;

/// A property of tables that must stand on one page.
inline constexpr int keptWhole = QTextFormat::UserProperty;

[[nodiscard]] QFont paperFont(double points, bool bold = false);
/// `width` of a page's text in layout units.
[[nodiscard]] std::unique_ptr<QTextDocument> textDocument(const sheet::Document& document, double width);

} // namespace staveline::ui
