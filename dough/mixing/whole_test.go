package mixing_test

import (
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/trial"
)

type told interface {
	Report() report.Report
	Working() working.Working
}

// must is the answer to a question that has one.
func must[T told](answer T, err error) told {
	if err != nil {
		panic(err)
	}
	return answer
}

// One answer of each kind as it is told today, page and derivation. Where the figures come from, and that each line of
// arithmetic holds, the other tests know; here stands that nothing is lost, and that no number moves unseen.
func TestWholeAnswers(t *testing.T) {
	c, g := quantity.Celsius, quantity.Grams
	hot := hall()
	hot.Others = []mixing.Factor{{Kind: mixing.FlourFactor, Temperature: c(31)}, {Kind: mixing.RoomFactor,
		Temperature: c(33)}}
	hot.Friction, hot.Pour, hot.Tap = quantity.DeltaCelsius(14), quantity.Kilograms(1.9), c(17)
	cold := hall()
	for i := range cold.Others {
		cold.Others[i].Temperature = c(5)
	}
	cold.Pour, cold.Tap = quantity.Kilograms(1.9), c(12)
	warm := hallBalance()
	warm.WaterTemperature = c(17)
	for i := range warm.Ingredients {
		warm.Ingredients[i].Temperature = c(29)
	}
	learned, err := hallLog().Learn()
	if err != nil {
		t.Fatal(err)
	}
	b := planned(18, 20, 23, 20, 3*time.Minute, 5*time.Minute)
	compared, err := hallBalance().Compare(hall())
	if err != nil {
		t.Fatal(err)
	}
	us := working.Telling{Reader: working.Reader{Units: working.USCustomary}, Level: working.WithNumbers, Width: 110}
	for name, a := range map[string]told{
		"dough-change": must(mixing.DoughChange{From: c(24), To: c(28), SaltFrom: quantity.MustPercent("1 %"),
			SaltTo: quantity.MustPercent("2 %")}.Effect()),
		"less-salt": must(mixing.DoughChange{SaltFrom: quantity.MustPercent("2 %"),
			Development: quantity.Elapsed(4 * time.Minute)}.Effect()),
		"scald": must(mixing.Scald{Flour: g(500), FlourTemperature: c(20), Water: g(1000), Bowl: 0.8}.Pour()),
		"scald-high": must(mixing.Scald{Flour: g(500), FlourTemperature: c(5), Water: g(500),
			Altitude: quantity.Meters(2500)}.Pour()),
		"kneading-household": must(kneaded(mixing.Planetary, mixing.EnrichedDough, 5, 550, 150, 100).Kneading()),
		"kneading-spiral":    must(kneaded(mixing.Spiral, mixing.MixedRyeDough, 40, 750, 0, 0).Kneading()),
		"sticking": must(mixing.Sticking{Mix: kneaded(mixing.Spiral, mixing.WheatDough, 20, 600, 0, 0), Rested: true,
			Kneaded: quantity.Elapsed(9 * time.Minute)}.Advise()),
		"scraped": must(mixing.Sticking{Mix: kneaded(mixing.Planetary, mixing.WheatDough, 5, 730, 0, 0),
			Kneaded: quantity.Elapsed(15 * time.Minute)}.Advise()),
		"bowl-household": must(kneaded(mixing.Planetary, mixing.WheatDough, 5, 550, 0, 0).Fit()),
		"bowl-spiral":    must(kneaded(mixing.Spiral, mixing.WheatDough, 30, 650, 0, 0).Fit()),
		"bowl-spelt":     must(kneaded(mixing.Planetary, mixing.SpeltDough, 20, 450, 0, 0).Fit()),
		"table": must(mixing.WaterTable{Target: c(25), Mixer: mixing.Spiral, Levain: c(24),
			Flour: []quantity.Temperature{c(15), c(20), c(25)}, Room: []quantity.Temperature{c(18), c(22)}}.Water()),
		"factors": must(hall().Water()), "too-warm": must(hot.Water()), "too-cold": must(cold.Water()),
		"friction": must(mixing.Measured{Dough: c(24), Water: c(30), Others: []mixing.Factor{
			{Kind: mixing.FlourFactor, Temperature: c(18)}, {Kind: mixing.RoomFactor, Temperature: c(19)}}}.Friction()),
		"replaced-by-ice": must(mixing.IceWater{Water: g(40_000), Tap: c(20), Need: c(10)}.Replace()),
		"added-ice":       must(mixing.IceWater{Water: g(40_000), Tap: c(20), Need: c(10)}.Add()),
		"usual-warming":   must(mixing.Planetary.Prior()),
		"bowl": must(mixing.Mix{Mixer: mixing.Planetary, Bowl: quantity.Liters(7), Dough: g(5320), Flour: g(3055),
			Water: g(2200)}.Fit()),
		"balance":       must(hallBalance().Final()),
		"balance-water": must(hallBalance().WaterFor(c(25))),
		"balance-warm":  must(hallBalance().WaterFor(c(34))),
		"balance-cool":  must(hallBalance().WaterFor(c(14))),
		"balance-flour": must(hallBalance().FlourFor(c(25))),
		"balance-ice":   must(warm.IceFor(c(25))),
		"compared":      compared,
		"learned":       learned,
		"predicted": must(learned.Predict(planned(18, 27, 23, 20, 3*time.Minute, 5*time.Minute),
			quantity.MustPercent("80 %"))),
		"minutes-left": must(learned.MinutesLeft(mixing.Running{Now: c(23.5), Limit: c(26), Speed: 2,
			Probability: quantity.MustPercent("80 %")})),
		"poured": must(mixing.Planned{Target: c(25), Ingredients: []mixing.Portion{b.Ingredients[0], b.Ingredients[2]},
			Water: b.Ingredients[1].Mass, Room: b.Bowl, Learned: learned, Speeds: b.Speeds}.Pour()),
	} {
		page := a.Report().Markdown(report.Options{}) + "\n" + a.Working().Text(110)
		if short := us.Text(a.Working()); len(short) < 2500 {
			page += "\n" + short
		}
		trial.Kept(t, "answers/"+name+".md", strings.TrimRight(page, "\n")+"\n")
	}
}
