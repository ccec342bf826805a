package report

import "example.org/maslin/internal/oneway"

// answer is embedded in what goes out as JSON and does not come back.
type answer = oneway.Answer
