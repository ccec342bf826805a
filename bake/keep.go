package bake

import (
	"math"
	"strconv"
	"time"

	"example.org/maslin/dough/quantity"
)

// StoredLoaf is a loaf and where it has lain or will lie, in order, from about two hours after the oven.
type StoredLoaf struct {
	Style Style  `json:"style"`
	Stays []Stay `json:"stays"`
}

// Stay is a time at one temperature of the crumb.
type Stay struct {
	For quantity.Elapsed     `json:"for"`
	At  quantity.Temperature `json:"at"`
}

// Staleness is how far a crumb has firmed, of all that it ever will.
type Staleness struct {
	answer

	// Share of the firming that is done; 0 % as it came out, 100 % as firm as it gets. No probability is claimed: the
	// constants are good to ±30 %.
	Share quantity.Range[quantity.Percent] `json:"share"`
	// After are the likely shares at the end of each stay.
	After []quantity.Percent `json:"after"`
	// AtRoom is the time at 21 °C that would have firmed it as far.
	AtRoom quantity.Elapsed `json:"at_room"`
	// Keeps is for how long a loaf of the style is usually eaten with pleasure, in a bread box or a bag.
	Keeps quantity.Range[quantity.Elapsed] `json:"keeps"`

	in StoredLoaf
}

// keepRow is for how long bread of a style is good, in hours. From memory: baguette 4 to 8 h, white tin 2 to 3 days,
// wheat sourdough 3 to 5, half rye 5 to 7, rye 7 to 10, brioche 2 to 3; the rest is judgment between them.
type keepRow struct{ from, to time.Duration }

// stalePoint is a time constant of firming, in days, at a temperature in °C.
type stalePoint struct{ celsius, days float64 }

// staling are the time constants of the firming of white crumb (sources.StalingTable). Between them the logarithm
// goes in a straight line.
var staling = [...]stalePoint{{-1, 1.37}, {10, 2.57}, {21, 3.68}, {32, 5.5}}

const (
	stalingSpread = 0.3   // of the time constant, either way
	frozenAt      = -12.0 // °C and colder: nothing retrogrades (sources.Barcenas2003)
)

// stalingDays is the time constant at a temperature; infinite in the freezer.
func stalingDays(celsius float64) float64 {
	if celsius <= frozenAt {
		return math.Inf(1)
	}
	a, b := stalingBetween(celsius)
	return a.days * math.Pow(b.days/a.days, (celsius-a.celsius)/(b.celsius-a.celsius))
}

// stalingBetween are the points on either side of a temperature.
func stalingBetween(celsius float64) (a, b stalePoint) {
	i := 1
	for i < len(staling)-1 && celsius > staling[i].celsius {
		i++
	}
	return staling[i-1], staling[i]
}

// Staling answers: how stale is the crumb after lying here and there?
//
//	S = 1 − e^(−Σ t ÷ τ(T))     τ = 1.37 d at −1 °C, 2.57 at 10, 3.68 at 21, 5.5 at 32; ln τ linear between
//
// S is the share of the firming that is done, t the time at the temperature T, τ its time constant; in the freezer, at
// −12 °C and colder, nothing is added. Firming is fastest just above freezing: a refrigerator stales bread faster than
// a bread box. It speaks of the crumb of wheat bread and of its starch; crust that softens, crumb that dries and mold
// are told beside it. Fat makes the end softer and not later, so the share is the same.
// Valid range: −1 to 32 °C, and −12 °C and colder for frozen bread; a stay of at most a year, 100 stays.
// Accuracy: the form is measured; the constants are from memory of a later table and good to ±30 %, which the range
// holds. Rye, sourdough, malt and a long bake stale slower, an unwrapped loaf dries besides.
// Errors: [quantity.ErrRequired], [quantity.ErrOutOfRange], [quantity.ErrModelRange] for a temperature outside.
// Source: Cornford, Axford and Elton (1964); adding up over changing temperature, a later study; Bárcenas and others
// (2003) for the freezer.
func (l StoredLoaf) Staling() (Staleness, error) {
	var p quantity.Problems
	styles.Check(&p, "Style", l.Style)
	if len(l.Stays) == 0 {
		p.Required("Stays", quantity.Tell("bake.want_at_least_one_stay_how",
			"at least one stay: how long and at what temperature"))
	}
	if len(l.Stays) > mostStays {
		p.Int("Stays", len(l.Stays), 1, mostStays)
		return Staleness{}, p.ErrFor(l)
	}
	done := 0.0
	s := Staleness{in: l}
	for i, stay := range l.Stays {
		path := "Stays[" + strconv.Itoa(i) + "]"
		p.Duration(path+".For", stay.For.Duration(), time.Minute, 366*24*time.Hour)
		if !quantity.Check(&p, path+".At", stay.At, quantity.Celsius(-80), quantity.Celsius(60)) {
			continue
		}
		c := stay.At.Celsius()
		if c > frozenAt && c < staling[0].celsius || c > staling[len(staling)-1].celsius {
			p.Add(path+".At", stay.At, quantity.Tell("bake.want_minus_1_c_to_32",
				"−1 °C to 32 °C, or −12 °C and colder for frozen bread"),
				quantity.ErrModelRange)
			continue
		}
		done += stay.For.Duration().Hours() / 24 / stalingDays(c)
		s.After = append(s.After, quantity.NewPercent(100*firmed(done)))
	}
	if err := p.ErrFor(l); err != nil {
		return Staleness{}, err
	}
	s.Share = quantity.Range[quantity.Percent]{
		Low:    quantity.NewPercent(100 * firmed(done/(1+stalingSpread))),
		Likely: quantity.NewPercent(100 * firmed(done)),
		High:   quantity.NewPercent(100 * firmed(done/(1-stalingSpread))),
	}
	s.AtRoom = quantity.Elapsed(hoursOf(done * 24 * stalingDays(roomCelsius)))
	keeps := rowOf(l.Style).keeps
	s.Keeps = quantity.Range[quantity.Elapsed]{
		Low: quantity.Elapsed(keeps.from * time.Hour), High: quantity.Elapsed(keeps.to * time.Hour),
	}
	return s, nil
}

const (
	mostStays   = 100
	roomCelsius = 21.0 // °C, one of the points of the constants
)

// hoursOf is a time to the minute.
func hoursOf(h float64) time.Duration {
	return time.Duration(h * float64(time.Hour)).Round(time.Minute)
}

func firmed(exposure float64) float64 { return -math.Expm1(-exposure) }
