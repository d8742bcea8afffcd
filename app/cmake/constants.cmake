# SPDX-License-Identifier: GPL-3.0-or-later
# Makes "quantity/constants.h" from the tables of constants, so that a value stands in its row and nowhere else: the row
# "plan.malt_heat,0.41,..." is `constants::plan::maltHeat`, a row without a group stands in `constants` itself.
set(constant_tables ${PROJECT_SOURCE_DIR}/resources/data/parameters.csv
    ${PROJECT_SOURCE_DIR}/resources/data/brewing_constants.csv ${PROJECT_SOURCE_DIR}/resources/data/rules.csv
    ${PROJECT_SOURCE_DIR}/resources/data/finishing_constants.csv)
set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${constant_tables})

# malt_heat -> maltHeat
function(staveline_camel out name)
  string(REPLACE "_" ";" words ${name})
  list(POP_FRONT words result)
  foreach(word IN LISTS words)
    string(SUBSTRING ${word} 0 1 first)
    string(SUBSTRING ${word} 1 -1 rest)
    string(TOUPPER ${first} first)
    string(APPEND result ${first}${rest})
  endforeach()
  set(${out} ${result} PARENT_SCOPE)
endfunction()

set(definitions "")
foreach(table IN LISTS constant_tables)
  file(STRINGS ${table} rows ENCODING UTF-8)
  foreach(row IN LISTS rows)
    if(row MATCHES "^(name|id),value,")
      continue()
    endif()
    if(NOT row MATCHES "^(([a-z]+)\\.)?([A-Za-z0-9_]+),(-?[0-9.]+),")
      message(FATAL_ERROR "${table}: no name and number in: ${row}")
    endif()
    set(group ${CMAKE_MATCH_2})
    set(value ${CMAKE_MATCH_4})
    staveline_camel(name ${CMAKE_MATCH_3})
    if(group)
      string(APPEND definitions "namespace ${group} {\ninline constexpr double ${name} = ${value};\n}\n")
    else()
      string(APPEND definitions "inline constexpr double ${name} = ${value};\n")
    endif()
  endforeach()
endforeach()
file(CONFIGURE OUTPUT ${PROJECT_BINARY_DIR}/generated/quantity/constants.h @ONLY CONTENT
"// SPDX-License-Identifier: GPL-3.0-or-later
// Made by app/cmake/constants.cmake from resources/data: units, ranges, sources and meanings stand there.
#pragma once

namespace staveline::constants {

@definitions@
} // namespace staveline::constants
")
target_include_directories(staveline_quantity PUBLIC ${PROJECT_BINARY_DIR}/generated)
