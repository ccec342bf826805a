package bench

import "math"

// roundTo rounds to one part in n.
func roundTo(x float64, n float64) float64 { return math.Round(x*n) / n }
