// SPDX-License-Identifier: GPL-3.0-or-later
// Property tests: a failing RapidCheck property fails the Catch2 case and prints its seed and counterexample.
#pragma once

#include "support/catch.h"

#include <rapidcheck.h>

#define CHECK_PROPERTY(description, ...) CHECK(rc::check(description, __VA_ARGS__))
