# SPDX-License-Identifier: GPL-3.0-or-later
# A room is a folder of core/ with a library of its own, so that a forbidden call does not link.
function(staveline_room name)
  cmake_parse_arguments(ARG "" "" "USES" ${ARGN})
  file(GLOB_RECURSE sources CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/core/${name}/*.cpp ${PROJECT_SOURCE_DIR}/core/${name}/*.h)
  add_library(staveline_${name} STATIC ${sources})
  set_target_properties(staveline_${name} PROPERTIES LINKER_LANGUAGE CXX)
  target_include_directories(staveline_${name} PUBLIC ${PROJECT_SOURCE_DIR}/core)
  list(TRANSFORM ARG_USES PREPEND staveline_)
  target_link_libraries(staveline_${name} PUBLIC ${ARG_USES} tl::expected PRIVATE staveline_flags fmt::fmt)
endfunction()
