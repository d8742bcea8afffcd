// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/on_book.h"

#include "desk/json.h"
#include "desk/whole_file.h"

#include <filesystem>
#include <fmt/core.h>
#include <fstream>
#include <iostream>
#include <iterator>
#include <set>

namespace staveline::app {
namespace {

/// Each notice once.
class Notices {
public:
    void say(const desk::Desk& desk) {
        for (const auto& notice : desk.notices())
            if (std::string words = render(notice); said_.insert(words).second)
                fmt::print(stderr, "{}\n", words);
    }

private:
    std::set<std::string> said_;
};

} // namespace

desk::Clock clockOf(const Options& options) {
    return options.today ? desk::Clock([day = *options.today] { return day; }) : desk::Clock(desk::systemToday);
}

int onBook(const Options& options, book::OpenMode mode, const std::function<int(desk::Desk&)>& work) {
    auto desk = desk::Desk::open(options.book, clockOf(options), mode);
    if (!desk)
        return complain(desk.error(), options);
    if (auto looked = (*desk)->check(); !looked)
        return complain(looked.error(), options);
    (*desk)->speakIn(unitsOf(options));
    Notices notices;
    notices.say(**desk);
    const int status = work(**desk);
    notices.say(**desk);
    return (*desk)->damages().empty() ? status : statusOf(FaultKind::storage);
}

Result<std::string> readFile(const std::string& path) {
    if (path == "-")
        return std::string(std::istreambuf_iterator<char>(std::cin), {});
    std::error_code unknown;
    const bool folder = std::filesystem::is_directory(path, unknown); // the library opens it, then throws
    std::ifstream in;
    if (!folder)
        in.open(path, std::ios::binary);
    std::string text(std::istreambuf_iterator<char>(in), {});
    if (folder || (!in.good() && !in.eof()))
        return fail({FaultKind::storage, "", say("app.cannot_read").with("file", path), say("app.cannot_read.remedy")});
    return text;
}

int deliver(const std::string& text, const Options& options) {
    if (options.out == "-") {
        fmt::print("{}", text);
        return 0;
    }
    if (auto written = desk::writeWhole(options.out, text); !written) {
        written.error().path = "/out";
        return complain(written.error(), options);
    }
    fmt::print("{}", options.json ? desk::toJson("file", options.out)
                                  : render(say("app.written").with("file", options.out)) + "\n");
    return 0;
}

} // namespace staveline::app
