package dough

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/enum"
)

// Role says as what an ingredient stands in a formula or on a weighing list.
type Role uint8

// The roles, in the order in which lines are listed.
const (
	RoleFlour Role = iota
	RoleLiquid
	RoleSalt
	RoleOther
	RoleInclusion
	RoleStarter    // ripe starter that starts a preferment
	RolePreferment // a preferment or soaker made beforehand, weighed as a whole
)

var roleWords = enum.Of[Role]("role", "flour", "liquid", "salt", "other", "inclusion", "starter", "preferment")

// String names the role.
func (r Role) String() string { return roleWords.String(r) }

// MarshalText implements encoding.TextMarshaler.
func (r Role) MarshalText() ([]byte, error) { return roleWords.Marshal(r) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (r *Role) UnmarshalText(text []byte) error { return roleWords.Unmarshal(r, text) }

// DoughLine is one ingredient with its weight.
type DoughLine struct {
	Name string        `json:"name"`
	Kind Kind          `json:"kind,omitzero"`
	Role Role          `json:"role"`
	Mass quantity.Mass `json:"mass"`
	// Percent is the baker's percentage: in the overall formula of total flour, and on a
	// weighing list of the flour on the same list (zero where that has none).
	Percent quantity.Percent `json:"percent,omitzero"`
}

// String prints "780 g bread flour (80 %)", rounded for reading; the fields are exact.
func (l DoughLine) String() string {
	text := shown(l.Mass) + " " + l.Name
	if !l.Percent.IsZero() {
		text += " (" + shownPercent(l.Percent) + ")"
	}
	return text
}

// shown prints a mass rounded for reading.
func shown(m quantity.Mass) string { return readable(m).String() }

// readable rounds a mass for reading: to 0.1 g, below 10 g to 0.01 g and below 1 g to 0.001 g.
func readable(m quantity.Mass) quantity.Mass {
	size := m
	if size.Sign() < 0 {
		size = size.Neg()
	}
	step := quantity.Micrograms(100_000)
	switch {
	case size.Compare(quantity.Micrograms(1_000_000)) < 0:
		step = quantity.Micrograms(1000)
	case size.Compare(quantity.Micrograms(10_000_000)) < 0:
		step = quantity.Micrograms(10_000)
	}
	rounded, _ := m.RoundTo(step)
	return rounded
}

// shownPercent rounds a percentage for reading, to 0.01 %.
func shownPercent(p quantity.Percent) string {
	rounded, _ := quantity.Micrograms(millionths(p)).RoundTo(quantity.Micrograms(10_000))
	return percentOf(micrograms(rounded)).String()
}

// ofListFlour fills in percentages of the flour on the list itself.
func ofListFlour(lines []DoughLine) {
	var flour quantity.Mass
	for _, l := range lines {
		if l.Role == RoleFlour {
			flour = flour.Add(l.Mass)
		}
	}
	if flour.Sign() <= 0 {
		return
	}
	for i := range lines {
		lines[i].Percent = lines[i].Mass.PercentOf(flour)
	}
}
