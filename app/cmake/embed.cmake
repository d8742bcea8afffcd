# SPDX-License-Identifier: GPL-3.0-or-later
file(GLOB files RELATIVE ${ROOT}/resources ${ROOT}/resources/data/* ${ROOT}/resources/texts/*/* ${ROOT}/demo-data/*.json
  ${ROOT}/resources/changes/* ${ROOT}/CHANGELOG.md)
list(SORT files)
set(body "// Generated from resources/; do not edit.\n#include \"resources/resources.h\"\n\n#include <array>\n\n")
string(APPEND body "namespace staveline::resources {\nusing namespace std::string_view_literals;\nnamespace {\nstruct Entry { std::string_view path, text; };\n")
list(LENGTH files count)
string(APPEND body "constexpr std::array<Entry, ${count}> entries{{\n")
foreach(name IN LISTS files)
  file(READ ${ROOT}/resources/${name} text)
  string(REPLACE "../" "" name "${name}")
  string(APPEND body "{\"${name}\", R\"~embed~(${text})~embed~\"sv},\n")
endforeach()
string(APPEND body "}};\n} // namespace\n")
string(APPEND body [[
std::string_view find(std::string_view path) {
    for (const auto& entry : entries)
        if (entry.path == path)
            return entry.text;
    return {};
}
std::vector<std::string_view> under(std::string_view folder) {
    std::vector<std::string_view> found;
    for (const auto& entry : entries)
        if (entry.path.starts_with(folder))
            found.push_back(entry.text);
    return found;
}
} // namespace staveline::resources
]])
file(WRITE ${OUT} "${body}")
