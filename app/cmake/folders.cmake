# SPDX-License-Identifier: GPL-3.0-or-later
# Sources of one folder are compiled STAVELINE_TOGETHER at a time, twelve unless told: most of a source's cost is what
# it includes. The tests take six at a time (AT_MOST), so that one edit does not compile a whole folder again. ALONE:
# folders or names (a pattern) whose sources use the same names for private things, as every lever's file does.
function(staveline_compile_together target)
  cmake_parse_arguments(ARG "" "ALONE;AT_MOST" "" ${ARGN})
  set(size ${STAVELINE_TOGETHER})
  if(ARG_AT_MOST AND ARG_AT_MOST LESS size)
    set(size ${ARG_AT_MOST})
  endif()
  if(size LESS 2)
    return()
  endif()
  get_target_property(sources ${target} SOURCES)
  list(FILTER sources INCLUDE REGEX "[.]cpp$")
  if(ARG_ALONE)
    list(FILTER sources EXCLUDE REGEX "${ARG_ALONE}")
  endif()
  set(folders "")
  foreach(source IN LISTS sources)
    get_filename_component(folder ${source} DIRECTORY)
    file(RELATIVE_PATH folder ${PROJECT_SOURCE_DIR} ${folder})
    string(MAKE_C_IDENTIFIER "${folder}" folder)
    list(APPEND folders ${folder})
    list(APPEND in_${folder} ${source})
  endforeach()
  list(REMOVE_DUPLICATES folders)
  foreach(folder IN LISTS folders)
    set(number 0)
    foreach(source IN LISTS in_${folder})
      math(EXPR batch "${number} / ${size}")
      set_source_files_properties(${source} PROPERTIES UNITY_GROUP "${folder}_${batch}")
      math(EXPR number "${number} + 1")
    endforeach()
  endforeach()
  set_target_properties(${target} PROPERTIES UNITY_BUILD ON UNITY_BUILD_MODE GROUP)
endfunction()

# Sources that read the tree they came from. Only these are told where it is: objects of all others are the same in
# every clone, and a compiler cache can share them.
function(staveline_tell_the_tree)
  set_source_files_properties(${ARGN} PROPERTIES COMPILE_DEFINITIONS
    "STAVELINE_SOURCE_DIR=\"${PROJECT_SOURCE_DIR}\";STAVELINE_BUILD_DIR=\"${PROJECT_BINARY_DIR}\"")
endfunction()
