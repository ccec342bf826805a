package bake

import (
	"strconv"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// String prints "42 % of its firming is done (34 % to 54 %): as after 2 days at 21 °C".
func (s Staleness) String() string { return s.message().String() }

func (s Staleness) message() working.Message {
	if len(s.in.Stays) == 0 {
		return working.Tell("bake.no_stays", "no loaf was stored")
	}
	return working.Tell("bake.staleness", "%.0f of its firming is done (%.0f to %.0f): as after %v at %.0f",
		s.Share.Likely, s.Share.Low, s.Share.High, roundedStay(s.AtRoom), quantity.Celsius(roomCelsius))
}

// roundedStay rounds a time of storage to the hour, a shorter one to ten minutes: nothing is known to the minute.
func roundedStay(e quantity.Elapsed) quantity.Elapsed {
	step := 10 * time.Minute
	if e.Duration() >= 12*time.Hour {
		step = time.Hour
	}
	return quantity.Elapsed(e.Duration().Round(step))
}

// Report tells the share, stay by stay, how long such bread is good, and how to keep it longer.
func (s Staleness) Report() report.Report {
	r := report.Report{Headline: s.message()}
	if len(s.in.Stays) == 0 {
		return r
	}
	r.Sections = []report.Section{
		{Key: "stays", Blocks: []report.Block{s.table()}},
		{Key: "keeping", Title: working.Tell("bake.title_keeping", "Keeping it"), Blocks: []report.Block{s.advice()}},
	}
	r.RestsOn = []working.Message{
		working.Tell("bake.staling_rests", "the firming of white crumb from two hours after the oven; its constants are "+
			"from memory and good to ±30 %%"),
		working.Tell("bake.staling_slower", "rye, sourdough, malt, fat and a long bake make bread softer for longer; an "+
			"unwrapped loaf dries besides"),
	}
	r.Sources = []working.Source{sources.Cornford1964, sources.StalingTable, sources.Barcenas2003,
		sources.CooksStaling}
	r.Cautions = []working.Caution{moldCaution(), ropeCaution()}
	return r
}

func (s Staleness) table() report.Grid {
	t := report.Grid{Key: "stays", Columns: []report.GridColumn{
		{Key: "for", Title: working.Tell("bake.column_for", "for"), Right: true},
		{Key: "at", Title: working.Tell("bake.column_at", "at"), Right: true},
		{Key: "after", Title: working.Tell("bake.column_firmed", "firmed after it"), Right: true},
		{Key: "note"},
	}}
	for i, stay := range s.in.Stays {
		note := report.Cell{}
		switch c := stay.At.Celsius(); {
		case c <= frozenAt:
			note = report.Of(working.Tell("bake.stay_frozen", "frozen: the starch stands still"))
		case c < coldBox:
			note = report.Of(working.Tell("bake.stay_refrigerator", "bread firms fastest just above freezing"))
		}
		t.Rows = append(t.Rows, []report.Cell{
			report.Of(stay.For), report.Rounded(stay.At, 0), report.Rounded(s.After[i], 0), note,
		})
	}
	return t
}

// coldBox is below what a room has and above what a refrigerator has, °C.
const coldBox = 10.0

func (s Staleness) advice() report.List {
	keeps := working.Tell("bake.keeps_hours", "bread of the style %v is usually good for %d to %d hours", s.in.Style,
		int(s.Keeps.Low.Duration().Hours()), int(s.Keeps.High.Duration().Hours()))
	if s.Keeps.Low >= quantity.Elapsed(24*time.Hour) {
		keeps = working.Tell("bake.keeps_days", "bread of the style %v is usually good for %d to %d days", s.in.Style,
			int(s.Keeps.Low.Duration().Hours()/24), int(s.Keeps.High.Duration().Hours()/24))
	}
	return report.List{
		keeps,
		working.Tell("bake.keep_no_refrigerator", "keep it in a bread box or a cloth, not in the refrigerator: there it "+
			"firms about twice as fast by these constants, and some say six times"),
		working.Tell("bake.keep_freeze", "to keep it longer, freeze it on the day it is baked, cool, airtight and at "+
			"%.0f, for one to three months; thaw it wrapped in the room, about %v to %v for %v, never in the refrigerator",
			quantity.Celsius(-18), quantity.Elapsed(2*time.Hour), quantity.Elapsed(4*time.Hour), quantity.Grams(500)),
		working.Tell("bake.keep_refresh", "heated until the core passes %.0f it is soft again for some hours, each time "+
			"drier", quantity.Celsius(65)),
	}
}

func moldCaution() working.Caution {
	return working.Caution{
		Subject: "mold", Source: sources.MoldAdvice,
		Short: working.Tell("bake.short_mold", "a moldy loaf is thrown away whole: mold reaches deeper than it shows"),
		Text: working.Tell("bake.caution_mold",
			"Throw a moldy loaf away whole and do not sniff it: bread is soft, and mold reaches deeper in it than it shows. "+
				"Wrapped bread molds first, often within 3 to 5 days in a warm room."),
	}
}

// Working derives the share.
func (s Staleness) Working() working.Working {
	d := working.Derive(working.Tell("bake.derive_staling", "Firming of a stored loaf"))
	var parts []working.Expr
	for i, stay := range s.in.Stays {
		c, n := stay.At.Celsius(), strconv.Itoa(i+1)
		t := working.Given("t_"+n, working.Tell("bake.symbol_stay", "stay %d", i+1),
			working.Amount(stay.For.Duration().Hours()/24, "d", 4))
		if c <= frozenAt {
			parts = append(parts, t.Times(working.Num(0)))
			continue
		}
		a, b := stalingBetween(c)
		at := working.Given("T_"+n, working.Tell("bake.symbol_stay_at", "temperature of stay %d", i+1),
			working.Amount(c, degreesC, 1))
		ratio := at.Minus(working.Num(a.celsius)).Over(working.Num(b.celsius).Minus(working.Num(a.celsius)))
		tau := d.Find(working.Finding{
			Name: working.Tell("bake.step_stay_tau", "time constant of stay %d", i+1), Symbol: "τ_" + n,
			By: working.Num(a.days).Times(working.Num(b.days).Over(working.Num(a.days)).ToThe(ratio)),
			Is: working.Amount(stalingDays(c), "d", 3), Source: sources.StalingTable,
		})
		parts = append(parts, t.Over(tau))
	}
	if len(parts) == 0 {
		return d.Working()
	}
	sum := working.Sum(parts...)
	for _, v := range []struct {
		name   working.Message
		symbol string
		spread float64
		is     quantity.Percent
	}{
		{working.Tell("bake.step_least_firm", "least share, constants 30 %% longer"), "S_least", 1 + stalingSpread,
			s.Share.Low},
		{working.Tell("bake.step_likely_firm", "likely share"), "S_likely", 1, s.Share.Likely},
		{working.Tell("bake.step_most_firm", "most, constants 30 %% shorter"), "S_most", 1 - stalingSpread, s.Share.High},
	} {
		by := sum
		if v.spread != 1 {
			by = by.Over(working.Num(v.spread))
		}
		d.Find(working.Finding{
			Name: v.name, Symbol: v.symbol, Decimals: 1, Is: v.is, Source: sources.Cornford1964,
			By: working.Num(100).Times(working.Num(1).Minus(working.Exp(by.Neg()))),
		})
	}
	return d.Working()
}
