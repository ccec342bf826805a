package mixing

import (
	"math"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// DoughChange is a change of a dough between two mixes: colder or warmer, more or less salt.
type DoughChange struct {
	// From and To are the temperatures of the dough; both not given: no change.
	From quantity.Temperature `json:"from,omitzero"`
	To   quantity.Temperature `json:"to,omitzero"`
	// SaltFrom and SaltTo are the salt in percent of the flour.
	SaltFrom quantity.Percent `json:"salt_from,omitzero"`
	SaltTo   quantity.Percent `json:"salt_to,omitzero"`
	// Development is the time to full development of the flour as a farinograph gives it; not given: 5 minutes.
	// Flours have 2 to 8.
	Development quantity.Elapsed `json:"development,omitzero"`
}

// DoughChanged is the answer of [DoughChange.Effect].
type DoughChanged struct {
	answer

	// Development is by how many minutes the development time grows, in minutes of a farinograph: use Times.
	Development float64 `json:"development_minutes"`
	// Times is the factor on the kneading time.
	Times float64 `json:"times"`
	// Water is by how many points of the flour the dough takes more water at the same consistency, and as if how
	// much less water it had at the same water.
	Water quantity.Percent `json:"water"`

	in DoughChange
}

// The figures of Hlynka (1962), one flour in a farinograph.
const (
	minutesPerDegree   = 0.39 // development longer for each °C colder
	pointsPerDegree    = 0.52 // points of absorption more for each °C colder
	minutesPerSalt     = 0.5  // development longer for each percent of salt
	pointsFirstSalt    = 2.3  // points of absorption less for the first percent of salt
	pointsSecondSalt   = 0.7  // and for the second, 3.0 in all
	usualDevelopment   = 5 * time.Minute
	mostSalt           = 3.0 // %
	leastDevelopment   = time.Minute
	longestDevelopment = 30 * time.Minute
)

// Effect answers what colder dough and salt do to kneading time and water.
//
//	Δt = 0.39·(T_from − T_to) + 0.5·(s_to − s_from)              minutes
//	k = (t + Δt) ÷ t
//	Δw = 0.52·(T_from − T_to) − (a(s_to) − a(s_from))            points of water
//
// T is the dough's temperature in °C, s the salt in percent of the flour, t the development time of the flour, a(s)
// the points of water that salt saves: 2.3 for 1 %, 3.0 for 2 %, straight between and on to 3 %. The minutes are
// those of a farinograph; in a mixer use the factor k. Dough 5 to 40 °C, salt 0 to 3 %, development 1 to 30 min. One
// flour was measured, at most 2 % of salt: take the direction as sure and the size as a third. Errors: ErrRequired,
// ErrOutOfRange; ErrModelRange when the development time would vanish. Source: Hlynka (1962).
func (in DoughChange) Effect() (DoughChanged, error) {
	var p quantity.Problems
	if !in.From.IsZero() || !in.To.IsZero() {
		quantity.Check(&p, "From", in.From, quantity.Celsius(5), quantity.Celsius(40))
		quantity.Check(&p, "To", in.To, quantity.Celsius(5), quantity.Celsius(40))
	}
	quantity.Check(&p, "SaltFrom", in.SaltFrom, quantity.Percent{}, quantity.NewPercent(mostSalt))
	quantity.Check(&p, "SaltTo", in.SaltTo, quantity.Percent{}, quantity.NewPercent(mostSalt))
	if in.Development == 0 {
		in.Development = quantity.Elapsed(usualDevelopment)
	}
	p.Duration("Development", in.Development.Duration(), leastDevelopment, longestDevelopment)
	if err := p.ErrFor(in); err != nil {
		return DoughChanged{}, err
	}
	r := DoughChanged{in: in}
	r.Development = minutesPerDegree*in.colder() + minutesPerSalt*(in.SaltTo.Points()-in.SaltFrom.Points())
	base := in.Development.Duration().Minutes()
	r.Times = (base + r.Development) / base
	if r.Times <= 0.1 {
		p.Add("Development", in.Development, quantity.Tell("mixing.want_development_time_warming_does_not",
			"a development time that the warming does not use up"),
			quantity.ErrModelRange)
		return DoughChanged{}, p.ErrFor(in)
	}
	r.Water = quantity.NewPercent(pointsPerDegree*in.colder() - (saltSaves(in.SaltTo) - saltSaves(in.SaltFrom)))
	return r, nil
}

// colder is by how many degrees the dough is colder.
func (in DoughChange) colder() float64 {
	if in.From.IsZero() {
		return 0
	}
	return in.From.Sub(in.To).Celsius()
}

// saltSaves is how many points of water salt saves.
func saltSaves(salt quantity.Percent) float64 {
	s := salt.Points()
	return pointsFirstSalt*math.Min(s, 1) + pointsSecondSalt*math.Max(s-1, 0)
}

// String says the factor and the water.
func (r DoughChanged) String() string { return r.Message().String() }

// Message says the factor and the water.
func (r DoughChanged) Message() working.Message {
	switch {
	case !(r.Times > 0 && r.Times < 1000) || !r.Water.IsValid():
		return working.Tell("mixing.no_change", "no change")
	case r.Water.Sign() < 0:
		return working.Tell("mixing.changed_softer",
			"%.2f times the kneading time; the dough is as soft as with %.1f points more water", r.Times,
			r.Water.Neg().Points())
	}
	return working.Tell("mixing.changed_stiffer", "%.2f times the kneading time; the dough is as stiff as with %.1f "+
		"points less water", r.Times, r.Water.Points())
}

// Working derives minutes, factor and water.
func (r DoughChanged) Working() working.Working {
	d := working.Derive(working.Tell("mixing.derive_change", "What temperature and salt do to kneading"))
	if r.Times == 0 {
		return d.Working()
	}
	in := r.in
	t := working.Given("t", working.Tell("mixing.symbol_development", "development time of the flour"), in.Development)
	minutes, points := working.Num(0), working.Num(0)
	if !in.From.IsZero() {
		from := working.Given("T_from", working.Tell("mixing.symbol_from", "dough before"), in.From)
		to := working.Given("T_to", working.Tell("mixing.symbol_to", "dough now"), in.To)
		minutes = working.Num(minutesPerDegree).Times(from.Minus(to))
		points = working.Num(pointsPerDegree).Times(from.Minus(to))
	}
	if in.SaltFrom != in.SaltTo {
		from := working.Given("s_from", working.Tell("mixing.symbol_salt_from", "salt before, of the flour"),
			in.SaltFrom)
		to := working.Given("s_to", working.Tell("mixing.symbol_salt_to", "salt now, of the flour"), in.SaltTo)
		minutes = minutes.Plus(working.Num(minutesPerSalt).Times(to.Minus(from)))
		saves := func(s working.Expr) working.Expr {
			return working.Num(pointsFirstSalt).Times(working.Min(s,
				1)).Plus(working.Num(pointsSecondSalt).Times(working.Max(s.Minus(1), 0)))
		}
		points = points.Minus(saves(to).Minus(saves(from)))
	}
	longer := d.Find(working.Finding{
		Name: working.Tell("mixing.longer", "development longer by"), Symbol: "Δt", By: minutes,
		Is:       working.Amount(r.Development, working.Minute, 2),
		Decimals: 2, Source: sources.Hlynka,
	})
	d.Find(working.Finding{
		Name: working.Tell("mixing.times_kneading", "factor on the kneading time"), Symbol: "k",
		By: t.Plus(longer).Over(t), Is: working.Amount(r.Times, "", 3),
		Decimals: 3, Source: working.Algebra(),
	})
	d.Find(working.Finding{
		Name:   working.Tell("mixing.water_points", "water more at the same consistency, points of the flour"),
		Symbol: "Δw", By: points,
		Is: working.Amount(r.Water.Points(), working.Percent, 2), Decimals: 2, Source: sources.Hlynka,
	})
	return d.Working()
}
