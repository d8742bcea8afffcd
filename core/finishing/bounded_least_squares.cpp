// SPDX-License-Identifier: GPL-3.0-or-later
#include "finishing/bounded_least_squares.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace staveline::finishing {
namespace {

using Row = std::vector<double>;
using Matrix = std::vector<Row>;

enum class Place { atNothing, atMost, between };
using Places = std::vector<Place>;

/// Gauss with the largest pivot; `system` has its right-hand side as last column. None: singular.
std::optional<Row> solved(Matrix system) {
    const std::size_t n = system.size();
    for (std::size_t column = 0; column < n; ++column) {
        std::size_t pivot = column;
        for (std::size_t row = column + 1; row < n; ++row)
            if (std::abs(system[row][column]) > std::abs(system[pivot][column]))
                pivot = row;
        if (!(std::abs(system[pivot][column]) > 1e-300))
            return std::nullopt;
        std::swap(system[column], system[pivot]);
        for (std::size_t row = 0; row < n; ++row) {
            const double factor = row == column ? 0 : system[row][column] / system[column][column];
            for (std::size_t k = column; factor != 0 && k <= n; ++k)
                system[row][k] -= factor * system[column][k];
        }
    }
    Row x(n);
    for (std::size_t i = 0; i < n; ++i)
        x[i] = system[i][n] / system[i][i];
    return x;
}

/// Enough to choose among equal answers, too little to move one.
double evening(const ShareProblem& problem) {
    double size = 0;
    for (const Row& row : problem.rows)
        for (const double value : row)
            size = std::max(size, value * value);
    return 1e-10 * std::max(size, 1e-6);
}

/// The system of the free shares and the multiplier of their sum, with what is left to be reached by them.
Matrix systemOf(const ShareProblem& problem, const std::vector<std::size_t>& free, const Row& fixed) {
    const std::size_t m = free.size();
    const double ridge = evening(problem);
    Matrix system(m + 1, Row(m + 2, 0));
    for (std::size_t i = 0; i < m; ++i) {
        system[i][i] += ridge;
        system[i][m] = system[m][i] = 1;
        for (std::size_t r = 0; r < problem.rows.size(); ++r) {
            double left = problem.aims[r];
            for (std::size_t k = 0; k < fixed.size(); ++k)
                left -= problem.rows[r][k] * fixed[k];
            for (std::size_t j = 0; j < m; ++j)
                system[i][j] += problem.rows[r][free[i]] * problem.rows[r][free[j]];
            system[i][m + 1] += problem.rows[r][free[i]] * left;
        }
    }
    system[m][m + 1] = 1;
    for (const double share : fixed)
        system[m][m + 1] -= share;
    return system;
}

std::optional<Row> sharesAt(const ShareProblem& problem, const Places& places) {
    Row shares(places.size(), 0);
    std::vector<std::size_t> free;
    for (std::size_t i = 0; i < places.size(); ++i)
        if (places[i] == Place::between)
            free.push_back(i);
        else if (places[i] == Place::atMost)
            shares[i] = problem.most[i];
    double sum = 0;
    for (const double share : shares)
        sum += share;
    if (free.empty())
        return std::abs(sum - 1) < 1e-9 ? std::optional(shares) : std::nullopt;
    const auto found = solved(systemOf(problem, free, shares));
    for (std::size_t i = 0; found && i < free.size(); ++i)
        shares[free[i]] = (*found)[i];
    return found ? std::optional(shares) : std::nullopt;
}

bool keepsLimits(const ShareProblem& problem, const Row& shares) {
    constexpr double rounding = 1e-9;
    for (std::size_t i = 0; i < shares.size(); ++i)
        if (!(shares[i] >= -rounding && shares[i] <= problem.most[i] + rounding))
            return false;
    return true;
}

double unevenness(const Row& shares) {
    double sum = 0;
    for (const double share : shares)
        sum += share * share;
    return sum;
}

/// The next way of placing all shares; false after the last.
bool advance(Places& places) {
    for (Place& place : places) {
        if (place != Place::between) {
            place = static_cast<Place>(static_cast<int>(place) + 1);
            return true;
        }
        place = Place::atNothing;
    }
    return false;
}

} // namespace

double squaredMiss(const ShareProblem& problem, const std::vector<double>& shares) {
    double sum = 0;
    for (std::size_t r = 0; r < problem.rows.size(); ++r) {
        double miss = -problem.aims[r];
        for (std::size_t i = 0; i < shares.size(); ++i)
            miss += problem.rows[r][i] * shares[i];
        sum += miss * miss;
    }
    return sum;
}

std::optional<std::vector<double>> nearestShares(const ShareProblem& problem) {
    const double even = evening(problem);
    std::optional<Row> best;
    double least = 0;
    Places places(problem.most.size(), Place::atNothing);
    do {
        auto shares = sharesAt(problem, places);
        if (!shares || !keepsLimits(problem, *shares))
            continue;
        const double cost = squaredMiss(problem, *shares) + even * unevenness(*shares);
        if (!best || cost < least) {
            best = std::move(shares);
            least = cost;
        }
    } while (advance(places));
    if (best)
        for (std::size_t i = 0; i < best->size(); ++i)
            (*best)[i] = std::clamp((*best)[i], 0.0, problem.most[i]);
    return best;
}

} // namespace staveline::finishing
