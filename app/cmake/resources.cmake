# SPDX-License-Identifier: GPL-3.0-or-later
# Turns resources/data, resources/texts and the sample cellar into string views inside one library.
file(GLOB resource_files CONFIGURE_DEPENDS
  ${PROJECT_SOURCE_DIR}/resources/data/* ${PROJECT_SOURCE_DIR}/resources/texts/*/*
  ${PROJECT_SOURCE_DIR}/resources/changes/* ${PROJECT_SOURCE_DIR}/CHANGELOG.md ${PROJECT_SOURCE_DIR}/demo-data/*.json)
set(embedded ${PROJECT_BINARY_DIR}/embedded_resources.cpp)
add_custom_command(OUTPUT ${embedded}
  COMMAND ${CMAKE_COMMAND} -DROOT=${PROJECT_SOURCE_DIR} -DOUT=${embedded}
          -P ${PROJECT_SOURCE_DIR}/app/cmake/embed.cmake
  DEPENDS ${resource_files} ${PROJECT_SOURCE_DIR}/app/cmake/embed.cmake
  VERBATIM)
add_library(staveline_resources STATIC ${embedded} ${PROJECT_SOURCE_DIR}/resources/resources.h)
target_include_directories(staveline_resources PUBLIC ${PROJECT_SOURCE_DIR})
