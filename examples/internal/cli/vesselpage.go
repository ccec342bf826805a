package cli

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/vessel"
)

func vesselPage(p *page, u units, f *vesselFlags, r vesselFound) {
	of := map[string]string{"tin": "tin of ", "basket": "proofing basket of ", "bowl": "bowl, lined with a cloth, of "}[r.kind]
	volume := u.system().Volume
	whole := func(m quantity.Mass) string { return u.mass(rounded(m)) }
	switch {
	case r.jar != nil:
		p.para(0, "Put "+u.mass(r.jar.Dough)+" of dough into the jar")
		p.line("")
		marks(p, u, r.jar.FillLine)
		p.line("")
		for _, n := range r.jar.Notes {
			p.para(2, u.say(n))
		}
	case r.lines != nil:
		p.para(0, "Marks on the tub, from its floor")
		p.line("")
		marks(p, u, *r.lines)
		p.line("")
		if !r.lines.Measured {
			p.para(2, "the start is reckoned from the weight, within about 7 %: press the dough level, measure it, and use --start")
		}
		p.para(2, "height is volume only where the sides are straight")
	case r.need != nil:
		n := r.need
		text := "A " + of + "about " + volume(n.Likely) + " for " + u.mass(f.dough) + " of dough"
		if n.Low != n.High {
			text += " (" + volume(n.Low) + " to " + volume(n.High) + ")"
		}
		p.para(0, text)
	default:
		text := whole(r.low) + " to " + whole(r.high)
		if r.low == r.high {
			text = whole(r.low)
		}
		if r.likely.Sign() > 0 {
			text = "about " + whole(r.likely) + " (" + text + ")"
		}
		p.para(0, upperFirst(text)+" of dough for a "+of+volume(r.box))
	}
	switch r.kind {
	case "tin":
		p.line("")
		p.para(2, "for a loaf of this kind: "+f.loaf.String()+"; the volume is that of the tin filled with water to the rim")
	case "basket", "bowl":
		if r.proof == nil {
			p.line("")
		} else {
			section(p, "Round baskets, as published")
			var rows [][]string
			for _, b := range r.proof.Round {
				fits := ""
				if b.Fits {
					fits = "fits"
				}
				rows = append(rows, []string{u.system().Length(b.Diameter), whole(b.Low) + " to " + whole(b.High), fits})
			}
			p.rows(2, "rll", rows)
		}
		p.para(2, "weigh the water that fills yours to the rim: a gram is a milliliter")
	}
}

// upperFirst starts a line with a capital letter.
func upperFirst(text string) string {
	if text != "" && text[0] >= 'a' && text[0] <= 'z' {
		return string(text[0]-'a'+'A') + text[1:]
	}
	return text
}

func marks(p *page, u units, r vessel.FillLine) {
	rows := [][]string{{"start", u.system().Length(r.Start), ""}}
	for _, m := range r.Marks {
		above := ""
		if m.Above {
			above = "above the rim"
		}
		rows = append(rows, []string{"+" + m.Rise.String(), u.system().Length(m.Height), above})
	}
	p.rows(2, "rrl", rows)
}

type vesselAnswer struct {
	Format string           `json:"format"`
	Vessel string           `json:"vessel"`
	Loaf   *vessel.TinLoaf  `json:"loaf,omitempty"`
	Volume *quantity.Volume `json:"volume,omitempty"`
	Dough  *doughRangeData  `json:"dough,omitempty"`
	Needs  *volumesData     `json:"volume_needed,omitempty"`
	Start  *quantity.Length `json:"start,omitempty"`
	Marks  []markData       `json:"marks,omitempty"`
	Put    *quantity.Mass   `json:"put_in,omitempty"`
	Notes  []string         `json:"notes,omitempty"`
}

type doughRangeData struct {
	Low    quantity.Mass  `json:"low"`
	Likely *quantity.Mass `json:"likely,omitempty"`
	High   quantity.Mass  `json:"high"`
}

type volumesData struct {
	Low    quantity.Volume `json:"low"`
	Likely quantity.Volume `json:"likely"`
	High   quantity.Volume `json:"high"`
}

type markData struct {
	Rise   quantity.Percent `json:"rise"`
	Height quantity.Length  `json:"height"`
	Above  bool             `json:"above_the_rim"`
}

func vesselData(f *vesselFlags, r vesselFound) vesselAnswer {
	out := vesselAnswer{Format: "maslin vessel 1", Vessel: r.kind}
	if r.kind == "tin" {
		out.Loaf = &f.loaf
	}
	switch {
	case r.lines != nil:
		out.Start = &r.lines.Start
		for _, m := range r.lines.Marks {
			out.Marks = append(out.Marks, markData{m.Rise, m.Height, m.Above})
		}
		if r.jar != nil {
			out.Put, out.Notes = &r.jar.Dough, metric(r.jar.Notes)
		}
	case r.need != nil:
		out.Needs = &volumesData{r.need.Low, r.need.Likely, r.need.High}
	default:
		out.Volume, out.Dough = &r.box, &doughRangeData{Low: r.low, High: r.high}
		if r.likely.Sign() > 0 {
			out.Dough.Likely = &r.likely
		}
	}
	return out
}
