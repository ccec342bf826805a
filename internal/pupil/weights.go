package pupil

// weights are percentages, levains and losses.
func weights() map[string]problem {
	return map[string]problem{
		"water of a formula": {
			english: "100 % flour, {water:percent} water and {salt:percent} salt. You take {flour:mass} of flour. How much " +
				"water",
			german: "100 % Mehl, {water:percent} Wasser und {salt:percent} Salz. Du nimmst {flour:mass} Mehl. Wie viel Wasser",
			unit:   "flour",
			answer: func(n given) float64 { return n.of("flour") * n.of("water") / 100 },
			mistakes: map[string]func(given) float64{
				"share_of_dough": func(n given) float64 {
					return n.of("flour") * n.of("water") / (100 - n.of("water") - n.of("salt"))
				},
				"share_of_total": func(n given) float64 {
					return n.of("flour") * n.of("water") / (100 + n.of("water") +
						n.of("salt"))
				},
				"dry_only": func(n given) float64 { return n.of("flour") * (100 - n.of("water")) / 100 },
			},
		},
		"flour for pieces": {
			english: "You want {pieces:number} pieces of {each:mass} from a dough of 100 % flour, {water:percent} water and " +
				"{salt:percent} salt. How much flour",
			german: "Du willst {pieces:number} Stück zu je {each:mass} aus einem Teig mit 100 % Mehl, {water:percent} Wasser " +
				"und " +
				"{salt:percent} Salz. Wie viel Mehl",
			unit: "each",
			answer: func(n given) float64 {
				return n.of("pieces") * n.of("each") / (1 + n.of("water")/100 + n.of("salt")/100)
			},
			mistakes: map[string]func(given) float64{
				"share_of_dough": func(n given) float64 {
					return n.of("pieces") * n.of("each") * (100 - n.of("water") - n.of("salt")) / 100
				},
				"one_piece":      func(n given) float64 { return n.of("each") / (1 + (n.of("water")+n.of("salt"))/100) },
				"salt_forgotten": func(n given) float64 { return n.of("pieces") * n.of("each") / (1 + n.of("water")/100) },
			},
		},
		"too much water": {
			english: "A dough of {flour:mass} of flour should get {water:percent} water, but {poured:mass} was poured in. " +
				"How much flour do you add",
			german: "Ein Teig aus {flour:mass} Mehl sollte {water:percent} Wasser bekommen, aber {poured:mass} kamen hinein. " +
				"Wie viel Mehl gibst du zu",
			unit:   "flour",
			answer: func(n given) float64 { return n.of("poured")/(n.of("water")/100) - n.of("flour") },
			mistakes: map[string]func(given) float64{
				"weight_for_weight": func(n given) float64 { return n.of("poured") - n.of("flour")*n.of("water")/100 },
				"wrong_way": func(n given) float64 {
					return (n.of("poured") - n.of("flour")*n.of("water")/100) * n.of("water") / 100
				},
			},
		},
		"weight of a levain": {
			english: "Of {flour:mass} of flour, {share:percent} goes into the levain, which has {wet:percent} of its own " +
				"flour " +
				"in water. How much does the levain weigh",
			german: "Von {flour:mass} Mehl kommen {share:percent} in den Sauerteig, der {wet:percent} seines eigenen Mehls an " +
				"Wasser hat. Wie viel wiegt der Sauerteig",
			unit:   "flour",
			answer: func(n given) float64 { return n.of("flour") * n.of("share") / 100 * (1 + n.of("wet")/100) },
			mistakes: map[string]func(given) float64{
				"flour_alone":  func(n given) float64 { return n.of("flour") * n.of("share") / 100 },
				"water_alone":  func(n given) float64 { return n.of("flour") * n.of("share") / 100 * n.of("wet") / 100 },
				"of_all_flour": func(n given) float64 { return n.of("flour") * (n.of("share") + n.of("wet")) / 100 },
			},
		},
		"water to pour": {
			english: "A dough has {flour:mass} of flour and {water:percent} water in all. {share:percent} of the flour is in " +
				"a " +
				"levain of {wet:percent} hydration. How much water do you pour",
			german: "Ein Teig hat {flour:mass} Mehl und insgesamt {water:percent} Wasser. {share:percent} vom Mehl sind in " +
				"einem " +
				"Sauerteig, der {wet:percent} seines eigenen Mehls an Wasser hat. Wie viel Wasser schüttest du",
			unit: "flour",
			answer: func(n given) float64 {
				return n.of("flour") * (n.of("water")/100 - n.of("share")/100*n.of("wet")/100)
			},
			mistakes: map[string]func(given) float64{
				"levain_twice": func(n given) float64 { return n.of("flour") * n.of("water") / 100 },
				"whole_levain": func(n given) float64 {
					return n.of("flour")*n.of("water")/100 - n.of("flour")*n.of("share")/100*(1+n.of("wet")/100)
				},
				"share_of_water": func(n given) float64 {
					return n.of("flour") * n.of("water") / 100 * (1 - n.of("share")/100)
				},
			},
		},
		"starter for a levain": {
			english: "You need {want:mass} of ripe levain, and {keep:mass} to keep as the next culture. It is fed with " +
				"{flour:number} part… of flour and {water:number} part… of water to one part of culture. How much culture",
			german: "Du brauchst {want:mass} reifen Sauerteig und willst {keep:mass} als nächstes Anstellgut aufheben. " +
				"Gefüttert " +
				"wird mit {flour:number} Teil… Mehl und {water:number} Teil… Wasser auf einen Teil Anstellgut. Wie viel Anstellgut",
			unit: "want",
			answer: func(n given) float64 {
				return (n.of("want") + n.of("keep")) / (1 + n.of("flour") + n.of("water"))
			},
			mistakes: map[string]func(given) float64{
				"nothing_kept": func(n given) float64 { return n.of("want") / (1 + n.of("flour") + n.of("water")) },
				"starter_no_part": func(n given) float64 {
					return (n.of("want") + n.of("keep")) / (n.of("flour") + n.of("water"))
				},
				"flour_parts_alone": func(n given) float64 { return (n.of("want") + n.of("keep")) / n.of("flour") },
			},
		},
		"loss in percent": {
			english: "A piece of dough of {dough:mass} gives a loaf of {loaf:mass}. How much did it lose, in percent of the " +
				"dough",
			german: "Eine Teigeinlage von {dough:mass} gibt ein Brot von {loaf:mass}. Wie viel hat es verloren, in Prozent " +
				"vom Teig",
			unit:   "%",
			answer: func(n given) float64 { return 100 * (1 - n.of("loaf")/n.of("dough")) },
			mistakes: map[string]func(given) float64{
				"of_bread":   func(n given) float64 { return 100 * (n.of("dough") - n.of("loaf")) / n.of("loaf") },
				"what_stays": func(n given) float64 { return 100 * n.of("loaf") / n.of("dough") },
			},
		},
		"dough for a loaf": {
			english: "A loaf shall weigh {loaf:mass} when it is cool. It loses {loss:percent} of the dough in the oven. How " +
				"much " +
				"dough",
			german: "Ein Brot soll kalt {loaf:mass} wiegen. Im Ofen verliert es {loss:percent} vom Teig. Wie viel Teig",
			unit:   "loaf",
			answer: func(n given) float64 { return n.of("loaf") / (1 - n.of("loss")/100) },
			mistakes: map[string]func(given) float64{
				"added":     func(n given) float64 { return n.of("loaf") * (1 + n.of("loss")/100) },
				"taken_off": func(n given) float64 { return n.of("loaf") * (1 - n.of("loss")/100) },
			},
		},
		"dough for a batch": {
			english: "{loaves:number} loaves shall weigh {loaf:mass} each when they are cool. They lose {loss:percent} of the " +
				"dough in the oven, and {bowl:percent} of the dough mixed stays in the bowl",
			german: "{loaves:number} Brote sollen kalt je {loaf:mass} wiegen. Im Ofen verlieren sie {loss:percent} vom Teig, " +
				"und " +
				"{bowl:percent} vom gekneteten Teig bleiben in Kessel",
			unit: "loaf",
			answer: func(n given) float64 {
				return n.of("loaves") * n.of("loaf") / (1 - n.of("loss")/100) / (1 - n.of("bowl")/100)
			},
			mistakes: map[string]func(given) float64{
				"losses_added": func(n given) float64 {
					return n.of("loaves") * n.of("loaf") / (1 - (n.of("loss")+n.of("bowl"))/100)
				},
				"added": func(n given) float64 {
					return n.of("loaves") * n.of("loaf") * (1 + (n.of("loss")+n.of("bowl"))/100)
				},
				"bowl_forgotten": func(n given) float64 { return n.of("loaves") * n.of("loaf") / (1 - n.of("loss")/100) },
				"one_loaf": func(n given) float64 {
					return n.of("loaf") / (1 - n.of("loss")/100) / (1 - n.of("bowl")/100)
				},
			},
		},
	}
}
