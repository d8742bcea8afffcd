# SPDX-License-Identifier: GPL-3.0-or-later
# Warnings and sanitizers for our own targets only, never for dependencies or generated code.
# staveline_test_flags: what the tests' own sources are built with.
add_library(staveline_test_flags INTERFACE)
target_compile_options(staveline_test_flags INTERFACE
  # Errors where we look; whoever builds the program to use it may have another compiler.
  -Wall -Wextra -Wpedantic -Wshadow -Wconversion $<$<NOT:$<CONFIG:Release>>:-Werror>
  # g++ 12 reports false positives on std::string concatenation at -O2: warn, do not fail.
  $<$<CXX_COMPILER_ID:GNU>:-Wno-error=restrict>)

# staveline_flags: what the program is built with. Faults of memory and undefined behaviour are looked for here only: in
# the tests' own sources, which are as many, it would more than double the time to compile them (37 s against 16 s for six
# of the desk's).
add_library(staveline_flags INTERFACE)
target_link_libraries(staveline_flags INTERFACE staveline_test_flags)

if(STAVELINE_SANITIZE)
  # Without null and object-size, which the address sanitizer finds where they do harm, and alignment and vptr: together
  # a quarter of the time to compile (the largest batch of core/facts: 64 s with them, 49 s without). The fuzz preset
  # looks for all of it.
  target_compile_options(staveline_flags INTERFACE
    -fsanitize=address,undefined -fno-sanitize-recover=undefined -fno-sanitize=null,alignment,vptr,object-size
    -fno-omit-frame-pointer -O1
    # g++ 12 false positives with sanitizers and optimisation
    -Wno-error=maybe-uninitialized)
  target_link_options(staveline_test_flags INTERFACE -fsanitize=address,undefined)
endif()

# One kind of instrument a build, for the checks of that name (tests/fuzz/run, tests/tsan, tests/coverage).
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
