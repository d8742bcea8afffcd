# SPDX-License-Identifier: GPL-3.0-or-later
# Warnings and sanitizers for our own targets only, never for dependencies or generated code.
# staveline_test_flags: what the tests' own sources are built with.
add_library(staveline_test_flags INTERFACE)
target_compile_options(staveline_test_flags INTERFACE
  -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Werror
  # g++ 12 reports false positives on std::string concatenation at -O2: warn, do not fail.
  -Wno-error=restrict)
if(CMAKE_BUILD_TYPE STREQUAL "Release")
  # Another false positive of g++ 12, at -O3 only, on "x" + std::string(...).
  target_compile_options(staveline_test_flags INTERFACE -Wno-error=stringop-overflow)
endif()

# staveline_flags: what the program is built with. Undefined behaviour is looked for here only: in the tests' own
# sources it would double the time to compile them.
add_library(staveline_flags INTERFACE)
target_link_libraries(staveline_flags INTERFACE staveline_test_flags)

if(STAVELINE_SANITIZE)
  target_compile_options(staveline_test_flags INTERFACE
    -fsanitize=address -fno-omit-frame-pointer -O1
    # g++ 12 false positives with sanitizers and optimisation
    -Wno-error=maybe-uninitialized)
  target_compile_options(staveline_flags INTERFACE -fsanitize=undefined -fno-sanitize-recover=undefined)
  target_link_options(staveline_test_flags INTERFACE -fsanitize=address,undefined)
endif()
