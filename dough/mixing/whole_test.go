package mixing_test

import (
	"testing"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/trial"
)

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
	for name, a := range map[string]trial.Told{
		"dough-change": trial.Must(mixing.DoughChange{From: c(24), To: c(28), SaltFrom: quantity.MustPercent("1 %"),
			SaltTo: quantity.MustPercent("2 %")}.Effect()),
		"less-salt": trial.Must(mixing.DoughChange{SaltFrom: quantity.MustPercent("2 %"),
			Development: quantity.Elapsed(4 * time.Minute)}.Effect()),
		"scald": trial.Must(mixing.Scald{Flour: g(500), FlourTemperature: c(20), Water: g(1000), Bowl: 0.8}.Pour()),
		"scald-high": trial.Must(mixing.Scald{Flour: g(500), FlourTemperature: c(5), Water: g(500),
			Altitude: quantity.Meters(2500)}.Pour()),
		"kneading-household": trial.Must(kneaded(mixing.Planetary, mixing.EnrichedDough, 5, 550, 150, 100).Kneading()),
		"kneading-spiral":    trial.Must(kneaded(mixing.Spiral, mixing.MixedRyeDough, 40, 750, 0, 0).Kneading()),
		"sticking": trial.Must(mixing.Sticking{Mix: kneaded(mixing.Spiral, mixing.WheatDough, 20, 600, 0, 0), Rested: true,
			Kneaded: quantity.Elapsed(9 * time.Minute)}.Advise()),
		"scraped": trial.Must(mixing.Sticking{Mix: kneaded(mixing.Planetary, mixing.WheatDough, 5, 730, 0, 0),
			Kneaded: quantity.Elapsed(15 * time.Minute)}.Advise()),
		"bowl-household": trial.Must(kneaded(mixing.Planetary, mixing.WheatDough, 5, 550, 0, 0).Fit()),
		"bowl-spiral":    trial.Must(kneaded(mixing.Spiral, mixing.WheatDough, 30, 650, 0, 0).Fit()),
		"bowl-spelt":     trial.Must(kneaded(mixing.Planetary, mixing.SpeltDough, 20, 450, 0, 0).Fit()),
		"table": trial.Must(mixing.WaterTable{Target: c(25), Mixer: mixing.Spiral, Levain: c(24),
			Flour: []quantity.Temperature{c(15), c(20), c(25)}, Room: []quantity.Temperature{c(18), c(22)}}.Water()),
		"factors": trial.Must(hall().Water()), "too-warm": trial.Must(hot.Water()), "too-cold": trial.Must(cold.Water()),
		"friction": trial.Must(mixing.Measured{Dough: c(24), Water: c(30), Others: []mixing.Factor{
			{Kind: mixing.FlourFactor, Temperature: c(18)}, {Kind: mixing.RoomFactor, Temperature: c(19)}}}.Friction()),
		"replaced-by-ice": trial.Must(mixing.IceWater{Water: g(40_000), Tap: c(20), Need: c(10)}.Replace()),
		"added-ice":       trial.Must(mixing.IceWater{Water: g(40_000), Tap: c(20), Need: c(10)}.Add()),
		"usual-warming":   trial.Must(mixing.Planetary.Prior()),
		"bowl": trial.Must(mixing.Mix{Mixer: mixing.Planetary, Bowl: quantity.Liters(7), Dough: g(5320), Flour: g(3055),
			Water: g(2200)}.Fit()),
		"balance":       trial.Must(hallBalance().Final()),
		"balance-water": trial.Must(hallBalance().WaterFor(c(25))),
		"balance-warm":  trial.Must(hallBalance().WaterFor(c(34))),
		"balance-cool":  trial.Must(hallBalance().WaterFor(c(14))),
		"balance-flour": trial.Must(hallBalance().FlourFor(c(25))),
		"balance-ice":   trial.Must(warm.IceFor(c(25))),
		"compared":      compared,
		"learned":       learned,
		"predicted": trial.Must(learned.Predict(planned(18, 27, 23, 20, 3*time.Minute, 5*time.Minute),
			quantity.MustPercent("80 %"))),
		"minutes-left": trial.Must(learned.MinutesLeft(mixing.Running{Now: c(23.5), Limit: c(26), Speed: 2,
			Probability: quantity.MustPercent("80 %")})),
		"poured": trial.Must(mixing.Planned{Target: c(25), Ingredients: []mixing.Portion{b.Ingredients[0], b.Ingredients[2]},
			Water: b.Ingredients[1].Mass, Room: b.Bowl, Learned: learned, Speeds: b.Speeds}.Pour()),
	} {
		trial.KeptAnswer(t, name, a, 2500)
	}
}
