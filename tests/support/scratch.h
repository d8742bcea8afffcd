// SPDX-License-Identifier: GPL-3.0-or-later
// A folder that goes with the test.
#pragma once

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <unistd.h>

namespace staveline::testing {

class Scratch {
public:
    Scratch() {
        static int count = 0;
        folder_ = std::filesystem::temp_directory_path() /
                  ("staveline-" + std::to_string(getpid()) + "-" + std::to_string(++count));
        std::filesystem::create_directories(folder_);
    }
    Scratch(const Scratch&) = delete;
    Scratch& operator=(const Scratch&) = delete;
    ~Scratch() {
        std::error_code ignored;
        std::filesystem::remove_all(folder_, ignored);
    }
    [[nodiscard]] std::filesystem::path operator/(const std::string& name) const { return folder_ / name; }
    [[nodiscard]] const std::filesystem::path& path() const { return folder_; }

private:
    std::filesystem::path folder_;
};

inline std::string readAll(const std::filesystem::path& path) {
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}
inline void writeAll(const std::filesystem::path& path, const std::string& text) {
    std::ofstream(path, std::ios::binary) << text;
}

} // namespace staveline::testing
