package dough

import (
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Cautions returns what can hurt, so far as the kinds of the ingredients tell: allergens, raw flour, food that spoils
// when it stands warm, oil with garlic, enzymes, ergot.
func (b Batch) Cautions() []working.Caution {
	out := []working.Caution{b.allergenCaution(), {
		Subject: "raw dough", Source: sources.RawFlour,
		Text: working.Tell("dough.caution_raw",
			"flour is a raw food, milling kills no germs, and only baking does: do not taste flour, dough or levain, and "+
				"do not try to heat-treat flour at home; wash hands and tools with soap; keep dough away from children's play "+
				"and from pets, in whose stomach it goes on rising and makes alcohol: an emergency"),
		Short: working.Tell("dough.caution_raw_short",
			"raw flour may carry germs: do not taste it; wash hands and tools; no dough for pets"),
	}}
	if spoils := b.perishable(); len(spoils) > 0 {
		out = append(out, working.Caution{
			Subject: "spoilage", Source: sources.FoodCode,
			Text: working.Tell("dough.caution_spoilage",
				"%v must not stand warm for long: keep it cold until use, and let the local food "+
					"code decide how long a dough or soaker may stay at room temperature", told(spoils)),
		})
	}
	if scalds := b.soaked(func(k SoakerKind) bool { return k == Scald }); len(scalds) > 0 {
		out = append(out, working.Caution{
			Subject: "spoilage", Source: sources.FoodCode,
			Text: working.Tell("dough.caution_scald",
				"%v is cooked food: kept above %.0f, then cooled within %v and used, or kept in the refrigerator; the local food "+
					"code decides", told(scalds), quantity.Celsius(60), quantity.Elapsed(2*time.Hour)),
		})
	}
	if flours := b.Share(KindGlutenFreeFlour); flours.Sign() > 0 && !b.Allergens().Has(Gluten) {
		out = append(out, working.Caution{
			Subject: "gluten-free", Source: sources.GlutenFreeClaim,
			Short: working.Tell("dough.short_gluten_free",
				"for somebody with celiac disease flour dust, a shared mixer, tin or bench is enough to make ill: clean all "+
					"first, and bake it before the others"),
			Text: working.Tell("dough.caution_gluten_free",
				"The ingredients carry no gluten; whether the bread may be called so, the law says: at most 20 mg in a kilogram "+
					"in the EU and the United States. Dust of other flour, a shared mixer, tin, cloth or bench brings more than "+
					"that. Clean everything first, bake it before other breads, and keep its levain and flour apart."),
		})
	}
	for _, c := range kindCautions() {
		if slices.ContainsFunc(b.c.items, func(it item) bool { return slices.Contains(c.kinds, it.kind) }) {
			out = append(out, c.Caution)
		}
	}
	return out
}

func (b Batch) allergenCaution() working.Caution {
	a := b.Allergens()
	carry := working.Tell("dough.allergens_none",
		"the ingredients are stated to carry none of the allergens known here")
	if eu, us := a&AllergensEU, a&AllergensUS; a != 0 {
		carry = working.Tell("dough.allergens", "the ingredients carry %v by the EU's list of 14, %v by the US list of 9",
			namedOf(eu), namedOf(us))
	}
	text := working.Tell("dough.caution_allergens",
		"%v; traces from the kitchen are not counted, and local labeling law decides what must be named", carry)
	if u := b.Unstated(); len(u) > 0 {
		text = working.Tell("dough.caution_allergens_unstated",
			"%v; nothing is stated about %v; traces from the kitchen are not counted, and local labeling law decides what "+
				"must be named", carry, told(u))
	}
	return working.Caution{Subject: "allergens", Text: text, Source: sources.AllergenLaw}
}

// namedOf lists a set in a sentence.
func namedOf(a Allergens) working.Message {
	if a == 0 {
		return working.Tell("dough.no_allergen", "none")
	}
	return told(a.List())
}

// kindCaution is a caution that ingredients of some kinds bring.
type kindCaution struct {
	kinds []Kind
	working.Caution
}

func kindCautions() []kindCaution {
	cold, warm := quantity.Celsius(5), quantity.Celsius(21)
	return []kindCaution{
		{[]Kind{KindCookedFilling}, working.Caution{
			Subject: "cooked filling", Source: sources.FoodCode,
			Short: working.Tell("dough.short_cooked_filling",
				"from the heat to %.0f within 2 hours, to %.0f within 6 in all, or it is thrown away", warm, cold),
			Text: working.Tell("dough.caution_cooked_filling",
				"Cool what was cooked, custard, porridge or filling, from %.0f to %.0f within 2 hours and to %.0f within 6 in "+
					"all: in shallow dishes, on ice, stirred. Spores of Bacillus cereus survive cooking. What misses the first "+
					"step is heated through again, to %.0f, or thrown away. A filled or topped bread may fall under other rules of "+
					"sale.",
				quantity.Celsius(57), warm, cold, quantity.Celsius(74)),
		}},
		{[]Kind{KindInfusedOil}, working.Caution{
			Subject: "garlic in oil", Source: sources.GarlicOil,
			Short: working.Tell("dough.short_infused_oil",
				"garlic or herbs in oil are kept at %.0f or colder and thrown away after 4 days", cold),
			Text: working.Tell("dough.caution_infused_oil",
				"Garlic or herbs in oil can grow botulism without a smell. Make it fresh, keep it at %.0f or colder, never in "+
					"the room, and throw it away after 4 days (advice differs: 4, 7 or 10 days; the shortest is taken), or freeze "+
					"it.", cold),
		}},
		{[]Kind{KindImprover, KindMalt}, working.Caution{
			Subject: "enzymes", Source: sources.HSEEnzymes,
			Short: working.Tell("dough.short_enzymes", "malt and improver powders can cause asthma: raise no dust of them"),
			Text: working.Tell("dough.caution_enzymes",
				"The enzymes of improvers, and of malt flour, are potent causes of asthma: take liquid, paste or "+
					"dust-suppressed forms, weigh them low and slowly, and let nobody with asthma handle the powder. Improvers "+
					"may hold soy, milk or gluten: read the label."),
		}},
		{[]Kind{KindWholeRye}, working.Caution{
			Subject: "ergot", Source: sources.ErgotLimits,
			Short: working.Tell("dough.short_ergot",
				"rye you mill yourself: pick out purple-black, horn-like grains first"),
			Text: working.Tell("dough.caution_ergot",
				"Before you mill rye yourself, pick out purple-black, horn-like grains: they are ergot, and baking does not "+
					"reliably destroy its poison, of which dust on clean-looking grain carries some. In the EU grain may hold "+
					"0.2 g/kg of them, and rye flour 500 µg/kg of the poison, 250 from 1 July 2028."),
		}},
	}
}

// perishable lists what spoils when it stands warm: milk, dairy and eggs, and wet soakers.
func (b *Batch) perishable() []string {
	var out []string
	for i := range b.c.items {
		if it := &b.c.items[i]; it.kind == KindMilk || it.kind == KindDairy || it.kind == KindEgg {
			out = append(out, it.name)
		}
	}
	return append(out, b.soaked(func(k SoakerKind) bool { return k != Scald })...)
}

// soaked names the parts that are wetted beforehand without fermenting, of some kinds.
func (b *Batch) soaked(of func(SoakerKind) bool) []string {
	var out []string
	for i := 1; i < len(b.c.nodes); i++ {
		if n := &b.c.nodes[i]; !n.fermented && of(n.soaker) {
			out = append(out, n.name)
		}
	}
	return out
}
