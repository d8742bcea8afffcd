// SPDX-License-Identifier: GPL-3.0-or-later
// The README's examples work as printed: files are written, lines are run.
#include "program.h"

#include <nlohmann/json.hpp>
#include <sstream>
#include <vector>

using namespace staveline::testing;

namespace {

struct Example {
    std::string file; ///< name of the file to write; empty: lines to run
    std::string text;
};

/// Fenced blocks that follow "<!-- file: NAME -->" or "<!-- run -->".
std::vector<Example> examples(const std::string& markdown) {
    std::vector<Example> found;
    std::istringstream in(markdown);
    std::string line, file;
    bool marked = false, inside = false;
    while (std::getline(in, line)) {
        if (inside && line == "```") {
            inside = marked = false;
        } else if (inside) {
            found.back().text += line + "\n";
        } else if (line.starts_with("<!-- file: ")) {
            file = line.substr(11, line.size() - 11 - 4);
            marked = true;
        } else if (line == "<!-- run -->") {
            file.clear();
            marked = true;
        } else if (marked && line.starts_with("```")) {
            inside = true;
            found.push_back({file, ""});
        }
    }
    return found;
}

} // namespace

TEST_CASE("every example of the README runs as printed", "[app][readme]") {
    Terminal terminal;
    int files = 0, lines = 0;
    for (const auto& example : examples(readAll(STAVELINE_SOURCE_DIR "/README.md"))) {
        if (!example.file.empty()) {
            INFO(example.file);
            CHECK(nlohmann::json::accept(example.text));
            terminal.write(example.file, example.text);
            ++files;
            continue;
        }
        std::istringstream in(example.text);
        for (std::string line; std::getline(in, line); ++lines) {
            REQUIRE(line.starts_with("staveline "));
            terminal.expect(line.substr(10));
        }
    }
    CHECK(files == 6);
    CHECK(lines == 23);
}
