package bake

import (
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/trial"
)

// oneOfEach are answers to every question, of the village hall's kitchen at 1,150 m.
func oneOfEach() map[string]trial.Told {
	g, c, pct, hall := quantity.Grams, quantity.Celsius, quantity.NewPercent, At(quantity.Meters(1150))
	minute := func(n int) quantity.Elapsed { return quantity.Elapsed(time.Duration(n) * time.Minute) }
	lean, rolls := Goal{Style: LeanHearth, Place: hall}, Goal{Style: SoftRoll, Place: hall}
	readings := []Sample{{minute(12), c(39)}, {minute(22), c(68)}, {minute(27), c(80)}, {minute(31), c(86)}}
	return map[string]trial.Told{
		"target of a hearth loaf":  trial.Must(lean.Target()),
		"target of a rich loaf":    trial.Must(Goal{Style: Enriched, Place: hall}.Target()),
		"verdict, core and weight": trial.Must(LoafReading{Goal: lean, Core: c(94.5), Dough: g(886), Loaf: g(785)}.Judge()),
		"verdict, core alone":      trial.Must(LoafReading{Goal: lean, Core: c(95.2)}.Judge()),
		"verdict, by its time":     trial.Must(LoafReading{Core: c(98.2), Held: minute(10), InOven: minute(45)}.Judge()),
		"verdict on rolls":         trial.Must(LoafReading{Goal: rolls, Core: c(91), Dough: g(85), Loaf: g(76)}.Judge()),
		"time left, two readings":  trial.Must(Probe{Goal: lean, Samples: readings[1:3]}.TimeLeft()),
		"time left, many":          trial.Must(Probe{Goal: lean, Samples: readings}.TimeLeft()),
		"time left, one exponential": trial.Must(Probe{Goal: lean, Approach: Exponential,
			Samples: readings[1:3]}.TimeLeft()),
		"carry-over": trial.Must(TakenOut{Place: hall, Core: c(88)}.CarryOver()),
		"bake time":  trial.Must(OvenPiece{Style: LeanHearth, Dough: g(886), Cold: true}.BakeTime()),
		"bake time by a known bake": trial.Must(OvenPiece{Style: LeanHearth, Dough: g(1300), KnownDough: g(886),
			KnownTime: minute(44)}.BakeTime()),
		"arrival": trial.Must(UnprobedLoaf{Goal: Goal{Place: hall}, Dough: g(886), Start: c(5)}.Arrival()),
		"program in pots": trial.Must(OvenLoad{Style: LeanHearth, Dough: g(886), Pieces: 6, Vessel: Pot, Together: 2,
			Cold: true, Rescore: true}.Program()),
		"program of bagels": trial.Must(OvenLoad{Style: Bagel, Dough: g(110), Pieces: 20, Together: 10}.Program()),
		"program in tins":   trial.Must(OvenLoad{Style: Pan, Dough: g(800), Pieces: 4}.Program()),
		"dial":              trial.Must(OvenSetting{Wanted: c(230), Fan: true, Off: quantity.DeltaCelsius(-10)}.Dial()),
		"usual loss":        trial.Must(LeanHearth.UsualLoss(g(886))),
		"loss of bread":     trial.Must(Rye.LossOfBread(g(1000))),
		"scaling":           trial.Must(PromisedLoaf{Baked: g(780), Loss: pct(12)}.Scaling()),
		"scaling of bread": trial.Must(PromisedLoaf{Baked: g(780), Loss: pct(12), Basis: OfBread,
			Cooling: pct(2)}.Scaling()),
		"average weight": trial.Must(PackedWeight{Nominal: g(400)}.Limits()),
		"solids":         trial.Must(Solids{Water: pct(62), OtherSolids: pct(2)}.LeastLoss()),
		"weighed loss":   trial.Must(WeighedLoaf{Dough: g(886), Baked: g(772)}.Loss()),
		"cooling":        trial.Must(CoolingLoaf{Style: LeanHearth, Baked: g(780), From: c(94), Room: c(22)}.Time()),
		"cooling of a batch": trial.Must(CoolingLoaf{Style: Pan, Shape: Tin, Baked: g(720), Room: c(27),
			Loses: pct(1.5)}.Time()),
		"cooling, two readings": trial.Must(CoolingProbe{Room: c(22), Samples: []Sample{{minute(30), c(62)},
			{minute(45), c(50)}}}.TimeLeft()),
		"cooling, three readings": trial.Must(CoolingProbe{Room: c(22), Samples: []Sample{{minute(15), c(77)},
			{minute(30), c(62)}, {minute(45), c(50)}}}.TimeLeft()),
		"bake-out": trial.Must(OvenBake{Style: LeanHearth, Dough: g(886), Place: hall, Phases: []HeatPhase{
			{Oven: c(245), For: minute(22), Wet: true}, {Oven: c(225), For: minute(26)}}}.BakeOut()),
		"color": trial.Must(DryCrust{Surface: []Sample{{0, c(100)}, {minute(20), c(190)}, {minute(26), c(190)}}}.Color()),
		"staling": trial.Must(StoredLoaf{Style: Pan, Stays: []Stay{{For: 24 * 60 * minute(1), At: c(21)},
			{For: 24 * 60 * minute(1), At: c(4)}}}.Staling()),
		"learned loss": trial.Must(LossLog{Style: LeanHearth, Loaves: []WeighedLoaf{{g(886), g(771)}, {g(884), g(772)},
			{g(888), g(769)}, {g(890), g(779)}}}.Learn()),
	}
}

// Pages and workings of one answer of each kind, with the numbers of their pictures, as they are told today: nothing is
// lost from one, and none of its numbers moves, without somebody seeing it. Where the figures come from, and that every
// line of arithmetic holds, the other tests know.
func TestWholeAnswers(t *testing.T) {
	for name, a := range oneOfEach() {
		trial.KeptAnswer(t, strings.NewReplacer(" ", "-", ",", "").Replace(name), a, 1500)
	}
}
