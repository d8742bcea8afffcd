// SPDX-License-Identifier: GPL-3.0-or-later
// What stands behind a number: the formula in words, what went into it, and where that is written. Numbers among the
// inputs have origins of their own, so a brewer can follow the explanation to its end.
#pragma once

#include "advice/advise.h"

namespace staveline::advice {

struct ExplanationInput {
    Message text;  ///< one line: "from the sitting of 3 Apr: 6.6 ± 0.8"; arguments carry their origins
    Origin origin; ///< nowhere: the explanation ends here
};
struct Explanation {
    Message title;                        ///< "Acidity at the next draw: 5.1"
    Message formula;                      ///< in words and symbols; empty when there is none
    std::vector<ExplanationInput> inputs; ///< may be empty
    std::string source; ///< text of the source, as in resources/data/sources.csv; empty: this vessel's own book
};
/// What is being explained: the advice and which of its proposals (1-based; 0: leave it alone).
struct ExplanationSubject {
    const AdviceInput& input;
    const Advice& advice;
    int proposal = 0;
    std::size_t move = 0; ///< for where a move goes from and to
};
/// `origin` is that of an argument. Nowhere, a move or a parameter that is not there: fault at "/origin".
[[nodiscard]] Result<Explanation> explain(const ExplanationSubject& subject, const Origin& origin);

/// What would put each score on target for sure, or take it off: "acidity of 5.4 or less would be on target". Empty
/// where nothing near would.
[[nodiscard]] std::vector<Message> whatWouldChange(const AdviceInput& input);

} // namespace staveline::advice
