// SPDX-License-Identifier: GPL-3.0-or-later
// Power loss at any moment: of what was written since the last sync any part may be missing, a sector at a time.
// STAVELINE_CUTS sets how many moments, STAVELINE_SEED where to begin.
#include "book/disk_layer.h"
#include "book/helpers.h"

#include <fmt/core.h>
#include <map>

namespace staveline::book {

namespace {

constexpr std::size_t sector = 512;

/// A file as it would be found after the power came back.
class Surviving {
public:
    /// All that a sync has promised, and by chance more.
    [[nodiscard]] std::optional<std::string> content(std::mt19937_64& random) const {
        std::string bytes = safe_;
        bool there = durable_;
        for (const DiskCall& call : pending_) {
            there = there || random() % 2 == 0;
            apply(bytes, call, random, true);
        }
        return there ? std::optional(bytes) : std::nullopt;
    }
    void saw(const DiskCall& call, std::mt19937_64& random) {
        if (call.kind == DiskCall::synced)
            settle(random);
        else
            pending_.push_back(call);
    }
    void startWith(std::string bytes) {
        safe_ = std::move(bytes);
        durable_ = true;
    }

private:
    void settle(std::mt19937_64& random) {
        for (const DiskCall& call : pending_)
            apply(safe_, call, random, false);
        pending_.clear();
        durable_ = true; // the first sync of a new file syncs its folder too
    }
    static void apply(std::string& bytes, const DiskCall& call, std::mt19937_64& random, bool byChance) {
        if (call.kind == DiskCall::truncated && (!byChance || random() % 2 == 0))
            bytes.resize(call.at, '\0');
        for (std::size_t done = 0; done < call.bytes.size();) {
            const auto to = call.at + done;
            const auto count = std::min(call.bytes.size() - done, sector - to % sector);
            if (!byChance || random() % 2 == 0)
                put(bytes, to, call.bytes.substr(done, count));
            done += count;
        }
    }
    static void put(std::string& bytes, std::size_t to, const std::string& piece) {
        if (bytes.size() < to + piece.size())
            bytes.resize(to + piece.size(), '\0');
        bytes.replace(to, piece.size(), piece);
    }

    std::string safe_;
    bool durable_ = false; ///< its name is in the folder for sure
    std::vector<DiskCall> pending_;
};

/// What an acknowledged step has promised.
struct Promise {
    std::int64_t revision = 0;
    std::string rows;
};

struct Story {
    fs::path file;
    std::string start; ///< the file when the record begins
    std::vector<DiskCall> calls;
    std::vector<Promise> promises; ///< the first is the start; one for each acknowledged call
};

Story tell(const Scratch& scratch, std::uint64_t seed) {
    Story story;
    story.file = smallBook(scratch);
    story.start = bytesOf(story.file);
    RecordingDisk disk;
    {
        const auto book = opened(story.file);
        std::mt19937_64 random(seed);
        story.promises.push_back({book->revision(), sample::dump(*book)});
        for (int i = 0; i < 40; ++i) {
            REQUIRE(sample::randomStep(*book, random));
            disk.saw({DiskCall::acknowledged, "", 0, ""});
            story.promises.push_back({book->revision(), sample::dump(*book)});
        }
    }
    story.calls = disk.calls();
    return story;
}

/// The folder after the power went off behind the first `count` calls. Returns how many steps were acknowledged.
std::size_t cut(const Story& story, std::size_t count, const fs::path& folder, std::mt19937_64& random) {
    std::map<std::string, Surviving> files;
    files[story.file.string()].startWith(story.start);
    std::size_t acknowledged = 0;
    for (std::size_t i = 0; i < count; ++i) {
        const DiskCall& call = story.calls[i];
        if (call.kind == DiskCall::acknowledged)
            ++acknowledged;
        else if (call.kind == DiskCall::removed && (call.at == 1 || random() % 2 == 0))
            files.erase(call.file); // with its folder synced it is gone for sure
        else if (call.kind != DiskCall::removed)
            files[call.file].saw(call, random);
    }
    for (const auto& [name, file] : files)
        if (const auto content = file.content(random))
            writeBytes(folder / fs::path(name).filename(), *content);
    return acknowledged;
}

void checkSurvivor(const Story& story, std::size_t acknowledged, const fs::path& folder) {
    const auto book = opened(folder / story.file.filename());
    const Promise& last = story.promises[acknowledged];
    CHECK(book->revision() >= last.revision);
    CHECK(book->revision() <= last.revision + 1);
    const bool advanced = book->revision() > last.revision && acknowledged + 1 < story.promises.size();
    const bool asPromised = sample::dump(*book) == story.promises[acknowledged + (advanced ? 1 : 0)].rows;
    CHECK(asPromised);
    CHECK_FALSE(book->readOnly());
    CHECK(book->check()->sound());
}

} // namespace

TEST_CASE("After a power loss every acknowledged edit is there and none is half there") {
    const auto seed = setting("STAVELINE_SEED", 20260302);
    const auto cuts = setting("STAVELINE_CUTS", 500);
    INFO("STAVELINE_SEED=" << seed);
    std::mt19937_64 random(seed);
    const Scratch scratch;
    const Story story = tell(scratch, seed);
    REQUIRE(story.calls.size() > 400);
    for (std::size_t i = 0; i < cuts; ++i) {
        const auto count = random() % (story.calls.size() + 1);
        INFO("cut " << i << " behind call " << count);
        const Scratch found;
        checkSurvivor(story, cut(story, count, found.path(), random), found.path());
    }
}

TEST_CASE("The power-loss test itself notices a disk that does not sync") {
    std::mt19937_64 random(1);
    const Scratch scratch;
    Story story = tell(scratch, 1);
    const auto isSync = [](const DiskCall& call) { return call.kind == DiskCall::synced; };
    story.calls.erase(std::remove_if(story.calls.begin(), story.calls.end(), isSync), story.calls.end());
    int lost = 0;
    for (int i = 0; i < 20; ++i) {
        const Scratch found;
        const auto acknowledged = cut(story, story.calls.size(), found.path(), random);
        const auto book = Book::open(found / story.file.filename().string(), sample::schema());
        lost += !book || sample::dump(**book) != story.promises[acknowledged].rows || !(*book)->check()->sound();
    }
    CHECK(lost == 20);
}

TEST_CASE("An edit syncs journal, file and folder before it is acknowledged") {
    const Scratch scratch;
    const Story story = tell(scratch, 2);
    std::vector<DiskCall::Kind> order;
    std::vector<std::string> files;
    for (const DiskCall& call : story.calls) {
        if (call.kind == DiskCall::acknowledged && !order.empty())
            break; // a step that found nothing to redo leaves nothing before it
        if (call.kind != DiskCall::synced && call.kind != DiskCall::removed)
            continue;
        order.push_back(call.kind);
        files.push_back(fs::path(call.file).filename().string());
    }
    REQUIRE(order.size() >= 3);
    CHECK(order.front() == DiskCall::synced);
    CHECK(files.front() == "small.cellar-journal");
    CHECK(order.back() == DiskCall::removed); // the moment of the commit
    CHECK(files.back() == "small.cellar-journal");
    CHECK(order[order.size() - 2] == DiskCall::synced);
    CHECK(files[files.size() - 2] == "small.cellar");
    const auto removal = std::find_if(story.calls.begin(), story.calls.end(),
                                      [](const DiskCall& call) { return call.kind == DiskCall::removed; });
    CHECK(removal->at == 1); // and the folder is synced with it
}

} // namespace staveline::book
