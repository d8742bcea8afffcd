# SPDX-License-Identifier: GPL-3.0-or-later
# A static library drops objects that nobody names, so the list of levers is made from the file names in levers/:
# ferulic_rest.cpp defines `Lever makeLever::ferulicRest()`.
file(GLOB lever_files CONFIGURE_DEPENDS ${CMAKE_CURRENT_LIST_DIR}/levers/*.cpp)
set(declarations "")
set(calls "")
foreach(file IN LISTS lever_files)
  get_filename_component(stem ${file} NAME_WE)
  string(REPLACE "_" ";" words ${stem})
  list(POP_FRONT words function)
  foreach(word IN LISTS words)
    string(SUBSTRING ${word} 0 1 first)
    string(SUBSTRING ${word} 1 -1 rest)
    string(TOUPPER ${first} first)
    string(APPEND function ${first}${rest})
  endforeach()
  string(APPEND declarations "Lever ${function}();\n")
  string(APPEND calls "        ${function}(),\n")
endforeach()
file(CONFIGURE OUTPUT ${PROJECT_BINARY_DIR}/generated/advice/lever_list.h @ONLY CONTENT
"// SPDX-License-Identifier: GPL-3.0-or-later
// Made by core/advice/levers.cmake.
#pragma once

#include \"advice/lever.h\"

namespace staveline::advice::makeLever {

@declarations@
inline std::vector<Lever> all() {
    return {
@calls@    };
}

} // namespace staveline::advice::makeLever
")
target_include_directories(staveline_advice PRIVATE ${PROJECT_BINARY_DIR}/generated)
