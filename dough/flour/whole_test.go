package flour_test

import (
	"testing"

	"example.org/maslin/dough/flour"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/trial"
)

// threeFlours are the flours of the village hall: of 12 % together, 9·0.2 + 12·0.5 + 14·0.3, and all free to move.
func threeFlours() flour.FlourBlend {
	return flour.FlourBlend{Target: percent(12.5), Total: quantity.Kilograms(20), Flours: []flour.FlourLot{
		{Name: "cake", Protein: percent(9), Share: percent(20)}, {Name: "bread", Protein: percent(12), Share: percent(50)},
		{Protein: percent(14), Share: percent(30)},
	}}
}

// One answer of each kind as it is told today, page and derivation. Where the figures come from, and that each line of
// arithmetic holds, the other tests know; here stands that nothing is lost, and that no number moves unseen.
func TestWholeAnswers(t *testing.T) {
	two := flour.FlourBlend{Target: percent(12.5), Flours: []flour.FlourLot{
		{Name: "soft", Protein: percent(10)}, {Protein: percent(14)}}}
	free, held, out, fixed := threeFlours(), threeFlours(), threeFlours(), threeFlours()
	held.Target, held.Flours[2].Most = percent(12.3), percent(35)
	out.Target, out.Flours[2].Most, out.Flours[0].Least = percent(13), percent(40), percent(10)
	for i := range fixed.Flours {
		fixed.Flours[i].Least, fixed.Flours[i].Most = fixed.Flours[i].Share, fixed.Flours[i].Share
	}
	fixed.Target = percent(12)
	alike := flour.FlourBlend{Target: percent(12), Flours: []flour.FlourLot{
		{Protein: percent(12), Share: percent(40), Most: percent(30)}, {Protein: percent(12), Share: percent(35)},
		{Protein: percent(12), Share: percent(25)}}}
	gluten := flour.GlutenBoost{Protein: percent(10), Target: percent(12), Flour: quantity.Grams(1000)}
	unweighed := gluten
	unweighed.Flour, unweighed.Gluten, unweighed.Target = quantity.Mass{}, percent(75), percent(17)
	drier := flour.FlourBasis{Value: percent(12), From: percent(14)}
	absorbs := flour.FlourBasis{Value: percent(60), From: percent(14), To: percent(10)}
	every := flour.FlourStrength{Hydration: percent(70), W: 260, Protein: percent(11.5), PL: 0.55, FallingNumber: 150,
		Absorption: percent(58)}
	for name, a := range map[string]trial.Told{
		"square": trial.Must(two.Shares()), "free": trial.Must(free.Shares()), "held": trial.Must(held.Shares()),
		"out-of-reach": trial.Must(out.Shares()), "fixed": trial.Must(fixed.Shares()), "alike": trial.Must(alike.Shares()),
		"gluten": trial.Must(gluten.Doses()), "much-gluten": trial.Must(unweighed.Doses()),
		"dry": trial.Must(drier.Protein()), "absorption": trial.Must(absorbs.Absorption()),
		"strength": trial.Must(every.Judge()),
		"strong":   trial.Must(flour.FlourStrength{Hydration: percent(60), W: 450}.Judge()),
		"no-blend": flour.BlendedFlours{}, "no-gluten": flour.GlutenDoses{}, "no-value": flour.OnBasis{},
		"no-opinion": flour.StrengthAdvice{},
	} {
		trial.KeptAnswer(t, name, a, 0)
	}
}
