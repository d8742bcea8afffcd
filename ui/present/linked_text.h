// SPDX-License-Identifier: GPL-3.0-or-later
// Messages whose numbers can be followed: each argument with an origin becomes a link to it.
#pragma once

#include "ui/present/text.h"

#include <QUrl>

namespace staveline::ui {

/// HTML; everything a brewer typed is escaped. Empty for an empty message.
[[nodiscard]] QString linkedHtml(const Message& message, const DisplayUnits& units = {});
/// The whole message as one link, for an input that has an origin of its own.
[[nodiscard]] QString wholeLinkHtml(const Message& message, const Origin& origin, const DisplayUnits& units = {});
/// Some argument says where it comes from.
[[nodiscard]] bool hasLinks(const Message& message);
/// What a link leads to; none when it is none of ours.
[[nodiscard]] std::optional<Origin> originOf(const QString& link);

} // namespace staveline::ui
