package dough

import "example.org/maslin/dough/quantity"

// Weights returns the batch as weights: what is weighed at mixing, and what had been made
// beforehand. Weights.Batch leads back to the same weights and, within the rounding of
// percentages to a millionth of a point, to the same formula.
func (b Batch) Weights() Weights {
	if len(b.work) == 0 {
		return Weights{Name: b.c.name, Final: b.bowl(b.mass)}
	}
	prefs, soakers := b.weightsBelow(0)
	return Weights{Name: b.c.name, Final: b.bowl(b.work[0].own), Preferments: prefs, Soakers: soakers}
}

func (b *Batch) bowl(own []quantity.Mass) Bowl {
	var bowl Bowl
	for j := range b.c.items {
		it := &b.c.items[j]
		if own[j].IsZero() {
			continue
		}
		w := Weight{Name: it.name, Mass: own[j], Kind: it.kind, Water: it.water, Contains: it.contains}
		switch it.role {
		case RoleFlour:
			bowl.Flours = append(bowl.Flours, w)
		case RoleLiquid:
			bowl.Liquids = append(bowl.Liquids, w)
		case RoleSalt:
			bowl.Salt = own[j]
		case RoleOther:
			bowl.Others = append(bowl.Others, w)
		case RoleInclusion:
			bowl.Inclusions = append(bowl.Inclusions, w)
		}
	}
	return bowl
}

func (b *Batch) weightsBelow(k int) (prefs []PrefermentWeights, soakers []SoakerWeights) {
	for i := k + 1; i < len(b.work); i++ {
		n, w := &b.c.nodes[i], &b.work[i]
		if n.parent != k {
			continue
		}
		own, starter := b.weighedFor(i)
		bowl := b.bowl(own)
		var used quantity.Mass
		if w.given != nil {
			used = w.given.used
		}
		if !n.fermented {
			soakers = append(soakers, SoakerWeights{Name: n.name, Kind: n.soaker, Bowl: bowl, Used: used})
			continue
		}
		pf := PrefermentWeights{Name: n.name, Kind: n.kind, Bowl: bowl, Used: used}
		if s := n.seed; !s.Percent.IsZero() {
			pf.Seed = SeedWeights{Mass: starter, Hydration: s.Hydration, Blend: s.Blend, Account: s.Account}
			if n.starter != nobody {
				pf.Seed.Mass = own[n.starter]
			}
			if s.Account == SeedCounted &&
				len(s.Blend) == 0 { // the preferment's flours as a whole, not only the new ones
				for j, share := range n.seedBlend {
					if !share.IsZero() {
						pf.Seed.Blend = append(pf.Seed.Blend, Part{Name: b.c.items[j].name, Percent: share})
					}
				}
			}
		}
		pf.Preferments, pf.Soakers = b.weightsBelow(i)
		prefs = append(prefs, pf)
	}
	return prefs, soakers
}
