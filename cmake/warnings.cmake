# SPDX-License-Identifier: GPL-3.0-or-later
# Warnings for our own targets only, never for dependencies or generated code.
add_library(staveline_flags INTERFACE)
target_compile_options(staveline_flags INTERFACE
  -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Werror
  # g++ 12 reports false positives on std::string concatenation at -O2: warn, do not fail.
  -Wno-error=restrict)
if(CMAKE_BUILD_TYPE STREQUAL "Release")
  # Another false positive of g++ 12, at -O3 only, on "x" + std::string(...).
  target_compile_options(staveline_flags INTERFACE -Wno-error=stringop-overflow)
endif()
if(STAVELINE_SANITIZE)
  target_compile_options(staveline_flags INTERFACE
    -fsanitize=address,undefined -fno-sanitize-recover=undefined -fno-omit-frame-pointer -O1
    # g++ 12 false positives with sanitizers and optimisation
    -Wno-error=maybe-uninitialized)
  target_link_options(staveline_flags INTERFACE -fsanitize=address,undefined)
endif()
