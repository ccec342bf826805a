package exercise

import (
	"time"

	"example.org/maslin/dough/working"
)

// backward is planning from the end: out of the oven, back to the mixer, and around a night.
func backward(d *dice, hard Difficulty) *sheet {
	day := time.Date(2026, time.November, 28, 0, 0, 0, 0, time.UTC)
	at := func(hour, minute int) time.Time {
		return day.Add(time.Duration(hour)*time.Hour + time.Duration(minute)*time.Minute)
	}
	ready := at(d.between(11, 18, 1), d.between(0, 45, 15))
	cool, bake := d.between(60, 150, 15), d.between(30, 60, 5)
	end := symbol("t_end", working.Tell("exercise.symbol_wanted", "bread is wanted"), ready)
	tc := symbol("c", working.Tell("exercise.symbol_cooling", "cooling"), minutes(cool))
	tb := symbol("b", working.Tell("exercise.symbol_bake", "baking"), minutes(bake))
	if hard == OneStep {
		out := newSheet(working.Tell("exercise.backward_oven",
			"The bread shall be cool by %v. It bakes for %v and cools for %v. When does it go into the oven at the latest?",
			ready, minutes(bake), minutes(cool)))
		out.find(working.Tell("exercise.find_into_oven", "into the oven at the latest"), "t_oven", working.Clock, 0,
			end.Minus(tc).Minus(tb))
		out.tolerance = 1
		out.slip("no_cooling", working.Tell("exercise.slip_no_cooling", "the cooling was forgotten"), end.Minus(tb))
		out.slip("forward", working.Tell("exercise.slip_forward", "baking and cooling were added instead of taken off"),
			end.Plus(tc).Plus(tb))
		out.slip("out_of_oven", working.Tell("exercise.slip_out_of_oven", "the time out of the oven was given"),
			end.Minus(tc))
		return out
	}
	proof, shape, bulk, mix := d.between(60, 120, 15), d.between(20, 45, 5), d.between(180, 330, 15), d.between(15,
		30, 5)
	ts := symbol("s", working.Tell("exercise.symbol_shaping", "dividing and shaping"), minutes(shape))
	tu := symbol("u", working.Tell("exercise.symbol_bulk", "bulk fermentation"), minutes(bulk))
	tm := symbol("m", working.Tell("exercise.symbol_mixing", "mixing"), minutes(mix))
	start := working.Tell("exercise.find_mixing", "mixing begins at the latest")
	if hard == Usual {
		tp := symbol("p", working.Tell("exercise.symbol_proof", "final proof"), minutes(proof))
		preheat := d.between(30, 60, 5)
		out := newSheet(working.Tell("exercise.backward_mix",
			"The bread shall be cool by %v. Mixing takes %v, bulk fermentation %v, shaping %v, the final proof %v, baking "+
				"%v, cooling %v. "+
				"The oven heats for %v during the proof. When do you begin to mix at the latest?", ready, minutes(mix),
			minutes(bulk), minutes(shape), minutes(proof), minutes(bake), minutes(cool), minutes(preheat)))
		oven := out.find(working.Tell("exercise.find_into_oven", "into the oven at the latest"), "t_oven",
			working.Clock, 0, end.Minus(tc).Minus(tb))
		shaped := out.find(working.Tell("exercise.find_shaping", "shaping begins at the latest"), "t_shape",
			working.Clock, 0, oven.Minus(tp).Minus(ts))
		out.find(start, "t_mix", working.Clock, 0, shaped.Minus(tu).Minus(tm))
		out.tolerance = 1
		th := symbol("h", working.Tell("exercise.symbol_preheat", "heating the oven"), minutes(preheat))
		out.slip("preheat_in_line", working.Tell("exercise.slip_preheat",
			"heating the oven was put in line, though it happens during the proof"),
			shaped.Minus(tu).Minus(tm).Minus(th))
		out.slip("no_cooling", working.Tell("exercise.slip_no_cooling", "the cooling was forgotten"),
			shaped.Minus(tu).Minus(tm).Plus(tc))
		out.slip("mixing_ends", working.Tell("exercise.slip_mixing_ends",
			"the end of mixing was given instead of its beginning"), shaped.Minus(tu))
		return out
	}
	up := at(6, 0)
	bed := at(d.between(21, 23, 1)-24, d.between(0, 30, 30))
	least, most := d.between(7, 9, 1), d.between(12, 16, 1)
	oven := ready.Add(-time.Duration(cool+bake) * time.Minute)
	cold := oven.Sub(bed)
	if shortest := time.Duration(least) * time.Hour; cold <= shortest+10*time.Minute ||
		cold > time.Duration(most)*time.Hour {
		return nil
	}
	if shaping := oven.Add(-time.Duration(least) * time.Hour); !shaping.After(bed.Add(30 * time.Minute)) {
		return nil
	}
	tr := symbol("r", working.Tell("exercise.symbol_least_cold", "least time in the cold"),
		time.Duration(least)*time.Hour)
	bt := symbol("t_bed", working.Tell("exercise.symbol_bed", "the baker goes to bed"), bed)
	out := newSheet(working.Tell("exercise.backward_night",
		"The bread shall be cool by %v. Mixing takes %v, bulk fermentation %v, shaping %v, baking %v, cooling %v. The "+
			"shaped loaves stand in the cold for %d to %d "+
			"hours. The baker goes to bed at %v and gets up at %t. When does mixing begin at the latest?",
		ready, minutes(mix), minutes(bulk), minutes(shape), minutes(bake), minutes(cool), least, most, bed, up))
	ovenAt := out.find(working.Tell("exercise.find_into_oven", "into the oven at the latest"), "t_oven", working.Clock,
		0, end.Minus(tc).Minus(tb))
	byCold := out.find(working.Tell("exercise.find_shaped_by_cold", "shaped at the latest, by the cold"), "t_cold",
		working.Clock, 0, ovenAt.Minus(tr))
	shaped := out.find(working.Tell("exercise.find_shaped", "shaped at the latest: before bed"), "t_shaped",
		working.Clock, 0, working.Min(byCold, bt))
	out.find(start, "t_mix", working.Clock, 0, shaped.Minus(ts).Minus(tu).Minus(tm))
	out.tolerance = 1
	out.slip("asleep", working.Tell("exercise.slip_asleep",
		"the least time in the cold was taken off, which has the baker shape asleep"),
		byCold.Minus(ts).Minus(tu).Minus(tm))
	out.slip("shaping_after_bed", working.Tell("exercise.slip_shaping_after_bed",
		"shaping was begun at bedtime instead of ended"), shaped.Minus(tu).Minus(tm))
	out.slip("mixing_ends", working.Tell("exercise.slip_mixing_ends",
		"the end of mixing was given instead of its beginning"), shaped.Minus(ts).Minus(tu))
	return out
}
