// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/parse.h"

#include "quantity/text.h"
#include "support/property.h"

#include <clocale>
#include <cmath>
#include <fmt/core.h>
#include <limits>
#include <locale>

namespace staveline {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr Range anything{-1e9, 1e9};

double valueOf(std::string_view text, Range range = anything) {
    const auto parsed = parseNumber(text, range);
    INFO('"' << text << '"');
    REQUIRE(parsed);
    return *parsed;
}
Fault faultOf(std::string_view text, Range range = anything) {
    const auto parsed = parseNumber(text, range, "/field");
    INFO('"' << text << '"');
    REQUIRE_FALSE(parsed);
    return parsed.error();
}
std::string keyOf(std::string_view text) {
    return faultOf(text).cause.key;
}
/// What the remedy offers; NaN when it offers nothing.
double offered(const Fault& fault) {
    for (const auto& argument : fault.remedy.arguments)
        if (argument.name == "instead")
            return std::get<Amount>(argument.value).value;
    return std::numeric_limits<double>::quiet_NaN();
}
double offeredGravity(std::string_view text) {
    const auto parsed = parseGravity(text, "/gravity_sg");
    INFO('"' << text << '"');
    REQUIRE_FALSE(parsed);
    CHECK(parsed.error().path == "/gravity_sg");
    return offered(parsed.error());
}

class CommaMark : public std::numpunct<char> {
    char do_decimal_point() const override { return ','; }
    char do_thousands_sep() const override { return '.'; }
    std::string do_grouping() const override { return "\3"; }
};

/// A locale with a comma as decimal mark while it lives: the C++ one always, the C one where the system has it.
class CommaLocale {
public:
    CommaLocale() : before_(std::locale::global(std::locale(std::locale::classic(), new CommaMark))) {
        for (const auto* name : {"de_DE.UTF-8", "fr_FR.UTF-8", "de_DE", "nl_NL.UTF-8"})
            if (std::setlocale(LC_ALL, name))
                break;
    }
    ~CommaLocale() {
        std::locale::global(before_);
        std::setlocale(LC_ALL, "C");
    }
    CommaLocale(const CommaLocale&) = delete;
    CommaLocale& operator=(const CommaLocale&) = delete;

private:
    std::locale before_;
};

} // namespace

TEST_CASE("Point and comma are both decimal marks") {
    CHECK(valueOf("1.048") == 1.048);
    CHECK(valueOf("1,048") == 1.048);
    CHECK(valueOf("12") == 12);
    CHECK(valueOf(" 12 \t\n") == 12);
    CHECK(valueOf("-0,5") == -0.5);
    CHECK(valueOf("+3.5") == 3.5);
    CHECK(valueOf(".5") == 0.5);
    CHECK(valueOf("5,") == 5);
    CHECK(valueOf("007") == 7);
}

TEST_CASE("What could mean two numbers is refused") {
    for (const auto* text : {"1.234,5", "1,234.5", "1,048,000", "1.048.000", "1..5", ",,", "1,2,"})
        CHECK(keyOf(text) == "quantity.two_marks");
    CHECK(faultOf("1.234,5").remedy.key == "quantity.no_groups");
    for (const auto* text : {"1 048", "1'048", "1_048",
                             "1\xC2\xA0"
                             "048",
                             "1\xE2\x80\xAF"
                             "048"})
        CHECK(keyOf(text) == "quantity.not_a_number");
}

TEST_CASE("What is no number is refused") {
    for (const auto* text : {"abc", "1e3", "0x1A", "nan", "NaN", "inf", "-inf", "Infinity", "1.0f", "12 P", "5%",
                             "-",   "+",   ".",    "--1", "+-1", "1-2", "1/2",  "½",        "٣",    "１２"})
        CHECK(keyOf(text) == "quantity.not_a_number");
    CHECK(keyOf("") == "quantity.empty");
    CHECK(keyOf(" \t ") == "quantity.empty");
    CHECK(keyOf(std::string(400, '9')) == "quantity.not_a_number");
    CHECK(keyOf(std::string("1\0", 2)) == "quantity.not_a_number");
}

TEST_CASE("Both ends of a range are allowed, what lies outside is refused with the range") {
    CHECK(valueOf("0", {0, 10}) == 0);
    CHECK(valueOf("10", {0, 10}) == 10);
    const auto above = faultOf("11", {0, 10});
    CHECK(above.kind == FaultKind::input);
    CHECK(above.path == "/field");
    CHECK(render(above.cause) == "11 is more than the largest value allowed, 10.");
    CHECK(render(faultOf("-0.1", {0, 10}).cause) == "-0.1 is less than the smallest value allowed, 0.");
    CHECK(render(faultOf("-1", {0.5, 10}).remedy) == "Give a value from 0.5 to 10.");
}

TEST_CASE("An open end of a range is not written as a number") {
    CHECK(valueOf("0", {0, infinity}) == 0);
    CHECK(render(faultOf("-1", {0, infinity}).remedy) == "Give 0 or more.");
    CHECK(render(faultOf("1", {-infinity, 0}).remedy) == "Give 0 or less.");
}

TEST_CASE("A forgotten decimal mark is offered when only one place fits") {
    CHECK(offered(faultOf("1048", {0.98, 1.2})) == Approx(1.048));
    CHECK(offered(faultOf("34", {2.5, 7})) == Approx(3.4));
    CHECK(offered(faultOf("345", {2.5, 7})) == Approx(3.45));
    CHECK(std::isnan(offered(faultOf("35", {0, 10}))));    // 3.5 or 0.35
    CHECK(std::isnan(offered(faultOf("34.5", {2.5, 7})))); // its mark is there
    CHECK(std::isnan(offered(faultOf("80", {2.5, 7}))));
    CHECK(render(faultOf("1048", {0.98, 1.2}).remedy) == "Did you mean 1.048?");
}

TEST_CASE("A gravity is read with either mark, at both ends of its range") {
    CHECK(parseGravity("1.048").value().sg == 1.048);
    CHECK(parseGravity("1,048").value().sg == 1.048);
    CHECK(parseGravity("0.980"));
    CHECK(parseGravity("1,200"));
    CHECK_FALSE(parseGravity("0.979"));
    CHECK_FALSE(parseGravity("1.201"));
    CHECK_FALSE(parseGravity("1.0.48"));
    CHECK_FALSE(parseGravity(""));
}

TEST_CASE("A gravity without its mark, or in points, is offered as it was meant") {
    CHECK(offeredGravity("1048") == Approx(1.048));
    CHECK(offeredGravity("998") == Approx(0.998));
    CHECK(offeredGravity("10485") == Approx(1.0485));
    CHECK(offeredGravity("48") == Approx(1.048));
    CHECK(offeredGravity("48,5") == Approx(1.0485));
    CHECK(std::isnan(offeredGravity("104"))); // 1.04 or 1.104
    CHECK(std::isnan(offeredGravity("12")));  // points or degrees Plato
    CHECK(std::isnan(offeredGravity("4800")));
    CHECK(std::isnan(offeredGravity("-1")));
    CHECK(render(parseGravity("1048").error().remedy) == "Did you mean 1.048?");
}

TEST_CASE("A locale with a comma changes neither reading nor showing") {
    const CommaLocale comma;
    CHECK(valueOf("1.048") == 1.048);
    CHECK(valueOf("1,048") == 1.048);
    CHECK(parseGravity("1.048").value().sg == 1.048);
    CHECK(plainNumber("1.048").value() == 1.048);
    CHECK_FALSE(plainNumber("1,048"));
    CHECK(show(SpecificGravity{1.048}) == "1.048");
    CHECK(show(std::int64_t{1048}) == "1048");
    CHECK(show(Litres{1250}) == "1250 L");
}

TEST_CASE("Every number shown is read back, with either mark") {
    CHECK_PROPERTY("show, then parse", [] {
        const double value = *rc::gen::inRange(-10'000'000, 10'000'000) / 1000.0;
        auto text = show(Number{value, 3});
        RC_ASSERT(std::abs(parseNumber(text, anything).value() - value) < 1e-9);
        std::replace(text.begin(), text.end(), '.', ',');
        RC_ASSERT(std::abs(parseNumber(text, anything).value() - value) < 1e-9);
    });
}

TEST_CASE("Any text is a number in range or a fault at its field") {
    CHECK_PROPERTY("total", [](const std::string& text) {
        const auto parsed = parseNumber(text, {0, 10}, "/x");
        if (parsed)
            RC_ASSERT(*parsed >= 0 && *parsed <= 10);
        else
            RC_ASSERT(parsed.error().path == "/x");
    });
}

TEST_CASE("Numbers of data files take a point and an exponent, whole") {
    CHECK(plainNumber("1.5").value() == 1.5);
    CHECK(plainNumber("-1.5e-3").value() == -0.0015);
    for (const auto* text : {"", " 1", "1 ", "+1", "1,5", "1.5x", "nan", "inf", "1e999", "0x1p3"}) {
        INFO(text);
        CHECK_FALSE(plainNumber(text));
    }
}

TEST_CASE("The shortest decimals that say the value") {
    CHECK(shortest(12) == Number{12, 0});
    CHECK(shortest(0.98) == Number{0.98, 2});
    CHECK(shortest(1.048).decimals == 3);
    CHECK(shortest(1.0 / 3).decimals == 6);
    CHECK(shortest(-2.5).decimals == 1);
}

TEST_CASE("An excerpt is short and never ends inside a character") {
    CHECK(excerpt("1048") == "1048");
    CHECK(excerpt(std::string(40, 'a')) == std::string(40, 'a'));
    CHECK(excerpt(std::string(41, 'a')) == fmt::format("{}...", std::string(40, 'a')));
    std::string degrees;
    for (int i = 0; i < 30; ++i)
        degrees += "x°"; // three bytes each
    const auto first = [&](std::size_t bytes) { return std::string_view(degrees).substr(0, bytes); };
    CHECK(excerpt(degrees) == fmt::format("{}...", first(40))); // 13 pairs and an x
    CHECK(excerpt("x" + degrees) == fmt::format("x{}...", first(39)));
    CHECK(excerpt("xx" + degrees) == fmt::format("xx{}...", first(37)));
}

} // namespace staveline
