package pupil

import "math"

// degrees are water, altitude and cooling.
func degrees() map[string]problem {
	const mixerEN, mixerDE = "from the mixer at {want:degrees}", "Der Teig soll mit {want:degrees} aus der Maschine kommen"
	return map[string]problem{
		"three factors": {
			english: mixerEN + ". The flour is at {flour:degrees}, the room at {room:degrees}, and the friction factor is " +
				"{friction:difference} for three factors. How warm must the water be",
			german: mixerDE + ". Das Mehl hat {flour:degrees}, der Raum {room:degrees}, und der Reibungsfaktor ist " +
				"{friction:difference} für drei Faktoren. Wie warm muss das Wasser sein",
			unit:   "want",
			answer: func(n given) float64 { return 3*n.of("want") - n.of("flour") - n.of("room") - n.of("friction") },
			mistakes: map[string]func(given) float64{
				"two_factors": func(n given) float64 { return 2*n.of("want") - n.of("room") - n.of("friction") },
				"friction_added": func(n given) float64 {
					return 3*n.of("want") - n.of("flour") - n.of("room") +
						n.of("friction")
				},
				"friction_forgotten": func(n given) float64 { return 3*n.of("want") - n.of("flour") - n.of("room") },
			},
		},
		"four factors": {
			english: mixerEN +
				". The flour is at {flour:degrees}, the room at {room:degrees}, the levain at {levain:degrees}, " +
				"and the friction factor is {friction:difference} for four factors. How warm must the water be",
			german: mixerDE +
				". Das Mehl hat {flour:degrees}, der Raum {room:degrees}, der Sauerteig {levain:degrees}, und der " +
				"Reibungsfaktor ist {friction:difference} für vier Faktoren. Wie warm muss das Wasser sein",
			unit: "want",
			answer: func(n given) float64 {
				return 4*n.of("want") - n.of("flour") - n.of("room") - n.of("levain") - n.of("friction")
			},
			mistakes: map[string]func(given) float64{
				"three_factors": func(n given) float64 { return 3*n.of("want") - n.of("flour") - n.of("room") - n.of("friction") },
				"friction_added": func(n given) float64 {
					return 4*n.of("want") - n.of("flour") - n.of("room") - n.of("levain") + n.of("friction")
				},
				"friction_forgotten": func(n given) float64 {
					return 4*n.of("want") - n.of("flour") - n.of("room") - n.of("levain")
				},
			},
		},
		"friction in other degrees": {
			english: mixerEN + ", the flour is at {flour:degrees}, the room at {room:degrees}. A book gives a friction factor " +
				"of {friction:degrees} for three factors. How warm must the water be",
			german: mixerDE + ", das Mehl hat {flour:degrees}, der Raum {room:degrees}. Ein Buch gibt einen Reibungsfaktor " +
				"von {friction:degrees} für drei Faktoren an. Wie warm muss das Wasser sein",
			unit: "want",
			answer: func(n given) float64 {
				friction := n.of("friction") * 5 / 9
				if n["friction"].unit == celsius {
					friction = n.of("friction") * 9 / 5
				}
				return 3*n.of("want") - n.of("flour") - n.of("room") - friction
			},
			mistakes: map[string]func(given) float64{
				"difference_as_point": func(n given) float64 {
					friction := (n.of("friction") - 32) * 5 / 9
					if n["friction"].unit == celsius {
						friction = n.of("friction")*9/5 + 32
					}
					return 3*n.of("want") - n.of("flour") - n.of("room") - friction
				},
				"not_converted": func(n given) float64 { return 3*n.of("want") - n.of("flour") - n.of("room") - n.of("friction") },
			},
		},
		"ice": {
			english: "{all:mass} of water should act as if it were at {need:degrees}, but the tap gives {tap:degrees}. " +
				"Melting " +
				"ice cools as much as warming the same weight of water by {melting:difference}. How much of the water",
			german: "{all:mass} Wasser sollen wirken, als hätten sie {need:degrees}, aber die Leitung gibt {tap:degrees}. " +
				"Schmelzendes Eis kühlt so viel, wie dasselbe Gewicht Wasser um {melting:difference} zu erwärmen. Wie viel vom " +
				"Wasser",
			unit: "all",
			answer: func(n given) float64 {
				return n.of("all") * (n.of("tap") - n.of("need")) / (n.of("tap") - n.zero("tap") + n.of("melting"))
			},
			mistakes: map[string]func(given) float64{
				"melting_alone": func(n given) float64 { return n.of("all") * (n.of("tap") - n.of("need")) / n.of("melting") },
				"ice_on_top": func(n given) float64 {
					return n.of("all") * (n.of("tap") - n.of("need")) / (n.of("need") - n.zero("tap") + n.of("melting"))
				},
				"tap_alone": func(n given) float64 {
					return n.of("all") * (n.of("tap") - n.zero("tap")) / (n.of("tap") - n.zero("tap") + n.of("melting"))
				},
			},
		},
		"boiling point": {
			english: "Water boils at {sea:degrees} by the sea. A rule says: one degree less for every {step:length} of " +
				"altitude. At what temperature does it boil at {height:length}",
			german: "Am Meer siedet Wasser bei {sea:degrees}. Eine Regel sagt: ein Grad weniger je {step:length} Höhe. Bei " +
				"welcher Temperatur siedet es auf {height:length}",
			unit:   "sea",
			answer: func(n given) float64 { return n.of("sea") - n.of("height")/n.of("step") },
			mistakes: map[string]func(given) float64{
				"added":     func(n given) float64 { return n.of("sea") + n.of("height")/n.of("step") },
				"no_change": func(n given) float64 { return n.of("sea") },
				"ten_times": func(n given) float64 { return n.of("sea") - n.of("height")/n.of("step")/10 },
			},
		},
		"core here": {
			english: "By the sea this bread is done at a core of {core:degrees}. Here water boils at {boils:degrees}, and the " +
				"loaf comes out {margin:difference} below that at the latest. At which core is it done here",
			german: "Am Meer ist dieses Brot bei einem Kern von {core:degrees} fertig. Hier siedet Wasser bei " +
				"{boils:degrees}, " +
				"und herausgenommen wird es spätestens {margin:difference} darunter. Bei welchem Kern ist es hier fertig",
			unit:   "core",
			answer: func(n given) float64 { return math.Min(n.of("core"), n.of("boils")-n.of("margin")) },
			mistakes: map[string]func(given) float64{
				"lowered":     func(n given) float64 { return n.of("core") - (n.sea("core") - n.of("boils")) },
				"no_margin":   func(n given) float64 { return n.of("boils") },
				"sea_level":   func(n given) float64 { return n.of("core") },
				"twice_lower": func(n given) float64 { return n.of("core") - n.of("margin") },
			},
		},
		"core at an altitude": {
			english: "By the sea this bread is done at a core of {core:degrees}, and water boils at {sea:degrees}. A rule " +
				"says: " +
				"one degree less for every {step:length} of altitude. The loaf comes out {margin:difference} below the boiling " +
				"point at the latest. At which core is it done at {height:length}",
			german: "Am Meer ist dieses Brot bei einem Kern von {core:degrees} fertig, und Wasser siedet bei {sea:degrees}. " +
				"Eine " +
				"Regel sagt: ein Grad weniger je {step:length} Höhe. Herausgenommen wird es spätestens {margin:difference} unter " +
				"dem Siedepunkt. Bei welchem Kern ist es auf {height:length} fertig",
			unit: "core",
			answer: func(n given) float64 {
				return math.Min(n.of("core"), n.of("sea")-n.of("height")/n.of("step")-n.of("margin"))
			},
			mistakes: map[string]func(given) float64{
				"lowered":     func(n given) float64 { return n.of("core") - n.of("height")/n.of("step") },
				"no_margin":   func(n given) float64 { return n.of("sea") - n.of("height")/n.of("step") },
				"sea_level":   func(n given) float64 { return n.of("core") },
				"twice_lower": func(n given) float64 { return n.of("core") - n.of("margin") },
			},
		},
		"core after a time": {
			english: "The core of a loaf is at {core:degrees}, the room at {room:degrees}. Its distance from the room halves " +
				"every {halves:duration}. How warm is the core after {time:duration}",
			german: "Der Kern eines Brotes hat {core:degrees}, der Raum {room:degrees}. Sein Abstand vom Raum halbiert sich " +
				"alle " +
				"{halves:duration}. Wie warm ist der Kern nach {time:duration}",
			unit: "core",
			answer: func(n given) float64 {
				return n.of("room") + (n.of("core")-n.of("room"))*math.Pow(0.5, n.of("time")/n.of("halves"))
			},
			mistakes: map[string]func(given) float64{
				"temperature_halved": func(n given) float64 { return n.of("core") / math.Pow(2, n.of("time")/n.of("halves")) },
				"room_forgotten": func(n given) float64 {
					return (n.of("core") - n.of("room")) / math.Pow(2, n.of("time")/n.of("halves"))
				},
				"once": func(n given) float64 { return (n.of("core") + n.of("room")) / 2 },
			},
		},
		"time to a core": {
			english: "The core of a loaf is at {core:degrees}, the room at {room:degrees}. Its distance from the room halves " +
				"every {halves:duration}. When can it be sliced at {end:degrees}",
			german: "Der Kern eines Brotes hat {core:degrees}, der Raum {room:degrees}. Sein Abstand vom Raum halbiert sich " +
				"alle " +
				"{halves:duration}. Wann kann es bei {end:degrees} angeschnitten werden",
			unit: minute,
			answer: func(n given) float64 {
				return n.of("halves") * math.Log2((n.of("core")-n.of("room"))/(n.of("end")-n.of("room")))
			},
			mistakes: map[string]func(given) float64{
				"straight_line": func(n given) float64 {
					return n.of("halves") * (n.of("core") - n.of("end")) / ((n.of("core") - n.of("room")) / 2)
				},
				"one_halving_short": func(n given) float64 {
					return n.of("halves") * (math.Log2((n.of("core")-n.of("room"))/(n.of("end")-n.of("room"))) - 1)
				},
				"ratio_as_count": func(n given) float64 {
					return n.of("halves") * (n.of("core") - n.of("room")) / (n.of("end") - n.of("room"))
				},
			},
		},
		"time from two readings": {
			english: "The core of a loaf was at {core:degrees} and is at {now:degrees} now, {apart:duration} later; the room " +
				"is " +
				"at {room:degrees}. How long until it can be sliced at {end:degrees}",
			german: "Der Kern eines Brotes hatte {core:degrees} und hat jetzt {now:degrees}, {apart:duration} später; der " +
				"Raum " +
				"hat {room:degrees}. Wie lange noch, bis es bei {end:degrees} angeschnitten werden kann",
			unit: minute,
			answer: func(n given) float64 {
				return n.of("apart") * math.Log((n.of("now")-n.of("room"))/(n.of("end")-n.of("room"))) /
					math.Log((n.of("core")-n.of("room"))/(n.of("now")-n.of("room")))
			},
			mistakes: map[string]func(given) float64{
				"straight_line": func(n given) float64 {
					return n.of("apart") * (n.of("now") - n.of("end")) / (n.of("core") - n.of("now"))
				},
				"from_the_start": func(n given) float64 {
					return n.of("apart") * math.Log((n.of("core")-n.of("room"))/(n.of("end")-n.of("room"))) /
						math.Log((n.of("core")-n.of("room"))/(n.of("now")-n.of("room")))
				},
				"no_room": func(n given) float64 {
					return n.of("apart") * math.Log(n.of("now")/n.of("end")) / math.Log(n.of("core")/n.of("now"))
				},
			},
		},
	}
}
