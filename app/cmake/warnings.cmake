# SPDX-License-Identifier: GPL-3.0-or-later
# Warnings and sanitizers for our own targets only, never for dependencies or generated code.
# staveline_test_flags: what the tests' own sources are built with.
add_library(staveline_test_flags INTERFACE)
target_compile_options(staveline_test_flags INTERFACE
  -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Werror
  # g++ 12 reports false positives on std::string concatenation at -O2: warn, do not fail.
  $<$<CXX_COMPILER_ID:GNU>:-Wno-error=restrict>)
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
  # Without null and object-size, which the address sanitizer finds where they do harm, and alignment and vptr: together
  # a quarter of the time to compile (the largest batch of core/facts: 64 s with them, 49 s without). The fuzz preset
  # looks for all of it.
  target_compile_options(staveline_flags INTERFACE -fsanitize=undefined -fno-sanitize-recover=undefined
    -fno-sanitize=null,alignment,vptr,object-size)
  target_link_options(staveline_test_flags INTERFACE -fsanitize=address,undefined)
endif()

# One kind of instrument a build, for the checks of that name (tests/fuzz/run, tests/tsan, tests/coverage). Lines are
# counted on the sanitised build, so that one build and one run of the tests serve both.
if(STAVELINE_INSTRUMENT STREQUAL "fuzz")
  # -w: warnings are those of g++, which compiles what runs.
  target_compile_options(staveline_test_flags INTERFACE -fsanitize=fuzzer-no-link,address,undefined
    -fno-sanitize-recover=all -fno-omit-frame-pointer -O1 -w)
  target_link_options(staveline_test_flags INTERFACE -fsanitize=address,undefined)
elseif(STAVELINE_INSTRUMENT STREQUAL "thread")
  target_compile_options(staveline_test_flags INTERFACE -fsanitize=thread -fno-omit-frame-pointer -O1)
  target_link_options(staveline_test_flags INTERFACE -fsanitize=thread)
elseif(STAVELINE_INSTRUMENT STREQUAL "coverage")
  target_compile_options(staveline_flags INTERFACE --coverage)
  target_link_options(staveline_test_flags INTERFACE --coverage)
elseif(STAVELINE_INSTRUMENT)
  message(FATAL_ERROR "STAVELINE_INSTRUMENT: fuzz, thread or coverage, not ${STAVELINE_INSTRUMENT}")
endif()
