// SPDX-License-Identifier: GPL-3.0-or-later
// The session is the only writer of the window, and tells of a change when the writer has taken in what came of it.
#include "ui/support.h"

namespace staveline::ui {
using namespace desk;
using namespace facts;
namespace {

static_assert(std::is_same_v<decltype(std::declval<Session&>().desk()), const Desk&>);

struct Open {
    testing::Scratch scratch;
    Session session{make()};
    int heard = 0;

    std::unique_ptr<Desk> make() {
        auto desk = *Desk::create(scratch / "a.cellar", [] { return testing::testToday; });
        testing::fillCellar(*desk);
        return desk;
    }
    [[nodiscard]] static Fact dip(double litres) { return DipFact{"Heron", testing::testToday, Litres{litres}, ""}; }
};

} // namespace

TEST_CASE("while it is told of a change the session knows the rows stored, and of no other", "[ui][session]") {
    Open o;
    std::vector<book::RowKey> told;
    QObject::connect(&o.session, &Session::changed, &o.session, [&] {
        ++o.heard;
        told = o.session.stored();
    });
    const auto done = o.session.record(Open::dip(200));
    REQUIRE(done);
    CHECK(told == done->rows);
    CHECK(o.session.stored().empty());
    o.session.undo();
    CHECK(told == done->rows); // gone, and named
    CHECK_FALSE(o.session.record(DipFact{"Nobody", testing::testToday, Litres{1}, ""}));
    CHECK(o.heard == 2);
}

TEST_CASE("a batch of the session is told of once, with the rows of all its edits", "[ui][session]") {
    Open o;
    std::size_t rows = 0;
    QObject::connect(&o.session, &Session::changed, &o.session, [&] {
        ++o.heard;
        rows = o.session.stored().size();
    });
    {
        const auto batch = o.session.batch();
        REQUIRE(o.session.record(Open::dip(200)));
        REQUIRE(o.session.record(Open::dip(199)));
        CHECK(o.heard == 0);
    }
    CHECK(o.heard == 1);
    CHECK(rows == 2);
}

} // namespace staveline::ui
