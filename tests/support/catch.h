// SPDX-License-Identifier: GPL-3.0-or-later
// The one place that knows which Catch2 is installed.
#pragma once

#if __has_include(<catch2/catch_all.hpp>)
#include <catch2/catch_all.hpp>
using Catch::Approx;
#else
#include <catch2/catch.hpp>
#endif
