package planner

// Truth is what is known of a question. The zero value is that it is not known, so that an answer cut short is never
// taken for a no.
type Truth int8

// The truths.
const (
	Unsure Truth = iota // not settled within the effort or the time
	No
	Yes
)

// truth is the answer of something that was settled.
func truth(yes bool) Truth {
	if yes {
		return Yes
	}
	return No
}

// mostUnsure is how many unsettled questions [Least] puts up with: each of them may have taken all of its effort.
const mostUnsure = 3

// Least finds the least x from 1 to most for which try(x) is Yes, given that try stays Yes once it is.
//
// proven says that all is known: no smaller x will do, or, when least is 0, none up to most. When it is not proven
// least is the smallest x that was seen to do, or 0 when none was. Method: doubling, then bisection.
func Least(most int, try func(int) Truth) (least int, proven bool) {
	if most < 1 {
		return 0, true
	}
	seen, unsure := false, 0
	switch try(most) {
	case No:
		return 0, true
	case Yes:
		seen = true
	default: // less may be settled sooner
		unsure++
	}
	refuted, low, high := 0, 0, most // refuted is the greatest no; low may be unsettled
	doubling := true
	for high-low > 1 && unsure < mostUnsure {
		mid := low + (high-low)/2
		if doubling {
			mid = min(mid, max(1, 2*low))
		}
		switch try(mid) {
		case Yes:
			seen, high, doubling = true, mid, false
		case No:
			refuted, low = mid, mid
		default:
			low = mid
			unsure++
		}
	}
	if !seen {
		return 0, false
	}
	return high, refuted == high-1
}
