package sources

import "example.org/maslin/dough/working"

// References of package schedule.
var (
	// TemporalNetworks: networks of differences, their earliest and latest solutions.
	TemporalNetworks = working.Source{
		Key:    "Dechter 1991",
		Author: "Dechter, Meiri and Pearl",
		Title:  "Temporal constraint networks, Artificial Intelligence 49:61",
		Year:   1991,
	}
	// RestrictedDisjunctions: a single time in a union of intervals keeps the problem easy.
	RestrictedDisjunctions = working.Source{
		Key:    "Kumar 2005",
		Author: "Kumar",
		Title:  "On the tractability of restricted disjunctive temporal problems, ICAPS",
		Year:   2005,
	}
)
