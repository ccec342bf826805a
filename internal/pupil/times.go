package pupil

import (
	"maps"
	"math"
)

// times are dose and rate, and planning backward.
func times() map[string]problem {
	const readyEN, readyDE = "The bread shall be cool by {ready:clock}. ", "Das Brot soll bis {ready:clock} ausgekühlt " +
		"sein. "
	return map[string]problem{
		"time from a dose": {
			english: "this culture works at a rate of {rate:number} in an hour. The dough needs a dose of {dose:number}. How " +
				"long",
			german: "arbeitet diese Kultur mit einer Rate von {rate:number} je Stunde. Der Teig braucht eine Gärdosis von " +
				"{dose:number}. Wie lange",
			unit:   hour,
			answer: func(n given) float64 { return n.of("dose") / n.of("rate") },
			mistakes: map[string]func(given) float64{
				"multiplied":     func(n given) float64 { return n.of("rate") * n.of("dose") },
				"upside_down":    func(n given) float64 { return n.of("rate") / n.of("dose") },
				"rate_forgotten": func(n given) float64 { return n.of("dose") },
			},
		},
		"warm, then cool": {
			english: "A dough needs a dose of {dose:number}. It stands for {warm:hours} at {T:degrees}, where the rate is " +
				"{fast:number} in an hour, and then at {C:degrees}, where it is {slow:number}. How long does it still take",
			german: "Ein Teig braucht eine Gärdosis von {dose:number}. Er steht {warm:hours} bei {T:degrees}, wo die Rate " +
				"{fast:number} je Stunde ist, und dann bei {C:degrees}, wo sie {slow:number} ist. Wie lange braucht er im " +
				"Kühlen noch",
			unit: hour,
			answer: func(n given) float64 {
				return (n.of("dose") - n.of("warm")*n.of("fast")) / n.of("slow")
			},
			mistakes: map[string]func(given) float64{
				"nothing_had": func(n given) float64 { return n.of("dose") / n.of("slow") },
				"time_off":    func(n given) float64 { return n.of("dose")/n.of("slow") - n.of("warm") },
				"warm_rate":   func(n given) float64 { return (n.of("dose") - n.of("warm")*n.of("fast")) / n.of("fast") },
			},
		},
		"less levain": {
			english: "With {before:percent} of the flour in the levain the dough took {took:hours} at {T:degrees}, where the " +
				"rate is {rate:number} in an hour. With a small levain the time grows by ln(p ÷ q) ÷ μ when its share falls " +
				"from p to q. How long does it take with {now:percent}",
			german: "Mit {before:percent} vom Mehl im Sauerteig brauchte der Teig {took:hours} bei {T:degrees}, wo die Rate " +
				"{rate:number} je Stunde ist. Bei wenig Sauerteig wächst die Zeit um ln(p ÷ q) ÷ μ, wenn sein Anteil von p auf q " +
				"fällt. Wie lange dauert es mit {now:percent}",
			unit: hour,
			answer: func(n given) float64 {
				return n.of("took") + math.Log(n.of("before")/n.of("now"))/n.of("rate")
			},
			mistakes: map[string]func(given) float64{
				"in_proportion": func(n given) float64 { return n.of("took") * n.of("before") / n.of("now") },
				"wrong_way":     func(n given) float64 { return n.of("took") - math.Log(n.of("before")/n.of("now"))/n.of("rate") },
				"longer_alone":  func(n given) float64 { return math.Log(n.of("before")/n.of("now")) / n.of("rate") },
			},
		},
		"into the oven": {
			english: readyEN + "It bakes for {bake:duration} and cools for {cool:duration}. When does it go into the oven",
			german:  readyDE + "Es backt {bake:duration} und kühlt {cool:duration} aus. Wann kommt es spätestens in den Ofen",
			unit:    "ready",
			answer:  func(n given) float64 { return n.of("ready") - n.of("bake") - n.of("cool") },
			mistakes: map[string]func(given) float64{
				"no_cooling":  func(n given) float64 { return n.of("ready") - n.of("bake") },
				"forward":     func(n given) float64 { return n.of("ready") + n.of("bake") + n.of("cool") },
				"out_of_oven": func(n given) float64 { return n.of("ready") - n.of("cool") },
			},
		},
		"back to the mixer": {
			english: readyEN + "Mixing takes {mix:duration}, bulk fermentation {bulk:duration}, shaping {shape:duration}, the " +
				"final proof {proof:duration}, baking {bake:duration}, cooling {cool:duration}. The oven heats for " +
				"{heat:duration} during the proof. When do you begin to mix",
			german: readyDE + "Kneten dauert {mix:duration}, Stockgare {bulk:duration}, Formen {shape:duration}, Stückgare " +
				"{proof:duration}, Backen {bake:duration}, Auskühlen {cool:duration}. Der Ofen heizt {heat:duration} lang " +
				"während " +
				"der Stückgare. Wann beginnst du spätestens zu kneten",
			unit:   "ready",
			answer: func(n given) float64 { return n.of("ready") - n.sum("mix", "bulk", "shape", "proof", "bake", "cool") },
			mistakes: map[string]func(given) float64{
				"preheat_in_line": func(n given) float64 {
					return n.of("ready") - n.sum("mix", "bulk", "shape", "proof", "bake", "cool", "heat")
				},
				"no_cooling":  func(n given) float64 { return n.of("ready") - n.sum("mix", "bulk", "shape", "proof", "bake") },
				"mixing_ends": func(n given) float64 { return n.of("ready") - n.sum("bulk", "shape", "proof", "bake", "cool") },
			},
		},
		"around the night": {
			english: readyEN +
				"Mixing takes {mix:duration}, bulk fermentation {bulk:duration}, shaping {shape:duration}, baking " +
				"{bake:duration}, cooling {cool:duration}. The shaped loaves stand in the cold for {least:number} to " +
				"{most:number} hours. The baker goes to bed at {bed:clock} and gets up at …. When does mixing begin",
			german: readyDE + "Kneten dauert {mix:duration}, Stockgare {bulk:duration}, Formen {shape:duration}, Backen " +
				"{bake:duration}, Auskühlen {cool:duration}. Die geformten Teiglinge stehen {least:number} bis {most:number} " +
				"Stunden " +
				"in der Kälte. Der Bäcker geht {bed:clock} schlafen und steht um … auf. Wann beginnt das Kneten",
			unit:   "ready",
			answer: func(n given) float64 { return n.shaped() - n.sum("shape", "bulk", "mix") },
			mistakes: map[string]func(given) float64{
				"asleep":            func(n given) float64 { return n.byCold() - n.sum("shape", "bulk", "mix") },
				"shaping_after_bed": func(n given) float64 { return n.shaped() - n.sum("bulk", "mix") },
				"mixing_ends":       func(n given) float64 { return n.shaped() - n.sum("shape", "bulk") },
			},
		},
	}
}

// byCold is when the shaped loaves have to be in the cold for their least time there.
func (g given) byCold() float64 { return g.of("ready") - g.sum("cool", "bake") - 60*g.of("least") }

// shaped is when they are shaped at the latest: then, or before the baker goes to bed.
func (g given) shaped() float64 { return math.Min(g.byCold(), g.of("bed")) }

func (g given) sum(names ...string) float64 {
	total := 0.0
	for _, name := range names {
		total += g.of(name)
	}
	return total
}

// problems are all kinds of questions.
func problems() map[string]problem {
	all := weights()
	maps.Copy(all, degrees())
	maps.Copy(all, times())
	return all
}
