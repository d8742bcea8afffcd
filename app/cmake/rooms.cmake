# SPDX-License-Identifier: GPL-3.0-or-later
# A room is a folder of core/ with a library of its own, so that a forbidden call does not link.
# NUMERIC: where the time of an answer is spent.
function(staveline_room name)
  cmake_parse_arguments(ARG "NUMERIC" "" "USES" ${ARGN})
  file(GLOB_RECURSE sources CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/core/${name}/*.cpp ${PROJECT_SOURCE_DIR}/core/${name}/*.h)
  add_library(staveline_${name} STATIC ${sources})
  set_target_properties(staveline_${name} PROPERTIES LINKER_LANGUAGE CXX)
  target_include_directories(staveline_${name} PUBLIC ${PROJECT_SOURCE_DIR}/core)
  list(TRANSFORM ARG_USES PREPEND staveline_)
  target_link_libraries(staveline_${name} PUBLIC ${ARG_USES} tl::expected PRIVATE staveline_flags fmt::fmt)
  if(ARG_NUMERIC)
    target_compile_options(staveline_${name} PRIVATE $<$<CONFIG:Release>:-O3>)
  endif()
  if(name STREQUAL "quantity")
    target_precompile_headers(staveline_quantity PRIVATE ${PROJECT_SOURCE_DIR}/core/quantity/text.h
      ${PROJECT_SOURCE_DIR}/core/quantity/fault.h <algorithm> <cmath> <functional> <map> <optional> <set> <string>
      <variant> <vector> <fmt/core.h>)
  elseif(NOT ARG_NUMERIC)
    target_precompile_headers(staveline_${name} REUSE_FROM staveline_quantity)
  endif()
  staveline_compile_together(staveline_${name} ALONE "levers/|/(reader|brew_sheet|write_html|answers|phenol_release|mash_kinetics|primary|parse)[.]cpp")
endfunction()
