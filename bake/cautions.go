package bake

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// OvenCautions says what can hurt at a hot oven: heat, steam, lids, glass, enamel, children, dust. Local
// codes and the makers' manuals go before anything said here.
func OvenCautions() []working.Caution {
	return []working.Caution{
		{Subject: "burns", Text: working.Say("Oven, pot, lid, stone and rack burn at a touch, and a lid looks the same hot or cold. Use dry gloves that cover the wrist; a wet glove carries the heat through."), Source: sources.OvenJudgment("safe handling of hot vessels")},
		{Subject: "steam", Text: working.Say("Open the oven and lift a lid away from you and let the steam out before you reach in. Pour water for steam only into a pan meant for it, with a long spout and the face turned away."), Source: sources.OvenJudgment("safe handling of steam")},
		{Subject: "hot glass, enamel and iron", Text: working.Say("No water on the glass of an oven door, on hot glass, enamel or cast iron, and no hot vessel on a cold or wet surface: it can burst. Preheat the oven before glass goes in, never from freezer to oven, and throw chipped glass away."), Source: sources.GlassOvenware},
		{Subject: "children and animals", Text: working.Say("Keep them away from the open door, and from pots left to cool."), Source: sources.OvenJudgment("safe kitchen")},
		{Subject: "first aid", Text: working.Say("Cool a burn at once under cool running water for 20 minutes, no ice, no butter, then cover it with clean film; call for help when it is large, deep, or on face or hands."), Source: sources.BurnsFirstAid},
		{Subject: "flour dust", Text: working.Say("Dust little and from low down and never blow flour away: breathed for years it causes asthma, and a cloud of it near a flame or glowing element can ignite."), Source: sources.HSEFlourDust},
		{Subject: "rules", Text: working.Say("In a business, local fire, gas, food and labor codes decide, and gas and electrical work is for licensed people."), Source: sources.OvenJudgment("local codes come first")},
	}
}

// FoodCautions says what temperature and time cannot promise.
func FoodCautions() []working.Caution {
	return []working.Caution{
		{Subject: "never a promise", Text: working.Say("A core temperature or a log reduction is information, not a proof that food is safe: fillings, dry crusts and what lands on the loaf after baking are outside of it. In a business a validated process and the food authority decide."), Source: sources.Channaiah2016},
		{Subject: "raw dough", Text: working.Say("Raw flour and dough are not food: do not taste, wash hands and tools."), Source: sources.OvenJudgment("raw flour is a raw food, public health advice")},
		{Subject: "acrylamide", Text: working.Say("It forms in the crust above %v when it is dry. Bake golden, not dark. EU benchmark levels: 50 µg/kg for soft wheat bread, 100 µg/kg for other soft bread.", quantity.Celsius(120)), Source: sources.AcrylamideRule},
		{Subject: "rope", Text: working.Say("Spores of Bacillus survive in a core that only just reaches boiling. Cool loaves fast on a rack, keep them dry and not warm, and throw bread away that smells of overripe fruit or pulls strings; toasting does not rescue it."), Source: sources.RopeSpores},
	}
}

func colorCaution() working.Caution {
	return working.Caution{Subject: "crust", Text: working.Say("The color of the crust is a criterion of its own that no number here can see: a strong fire browns a loaf that is not baked."), Source: sources.GuideBakeTimes}
}
