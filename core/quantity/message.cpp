// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/message.h"

#include <utility>

namespace staveline {

Message::Message() = default;
Message::Message(std::string_view textKey, std::vector<Argument> with) : key(textKey), arguments(std::move(with)) {}
Message::Message(const Message& other) = default;
Message::Message(Message&& other) noexcept = default;
Message& Message::operator=(const Message& other) = default;
Message& Message::operator=(Message&& other) noexcept = default;
Message::~Message() = default;
bool Message::operator==(const Message& other) const = default;

Message&& Message::with(std::string_view name, std::string_view text, const Origin& origin) && {
    add(name, std::string(text), origin);
    return std::move(*this);
}

Message&& Message::with(std::string_view name, std::int64_t count, const Origin& origin) && {
    add(name, count, origin);
    return std::move(*this);
}

Message&& Message::with(std::string_view name, Amount amount, const Origin& origin) && {
    add(name, amount, origin);
    return std::move(*this);
}

Message&& Message::with(std::string_view name, std::chrono::sys_days day, const Origin& origin) && {
    add(name, day, origin);
    return std::move(*this);
}

void Message::add(std::string_view name, ArgumentValue value, const Origin& origin) {
    arguments.push_back({std::string(name), std::move(value), origin});
}

Message say(std::string_view key) {
    return Message(key);
}

} // namespace staveline
