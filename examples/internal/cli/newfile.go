package cli

import (
	"fmt"
	"strings"

	"example.org/maslin/dough/quantity"
)

// file is the bake file, with a comment on every line that is not plain.
func (b *newBake) file() string {
	var f strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&f, format+"\n", args...) }
	key := func(name, value, comment string) {
		text := fmt.Sprintf("%-13s = %s", name, tomlText(value))
		if comment != "" {
			text = fmt.Sprintf("%-34s # %s", text, comment)
		}
		line("%s", text)
	}
	plain := func(name, value, comment string) {
		line("%s", fmt.Sprintf("%-34s # %s", fmt.Sprintf("%-13s = %s", name, value), comment))
	}

	line("# A bake file. Plan it with: maslin plan FILE")
	line("# Every quantity has its unit: g, kg, oz, lb; °C, °F; %%; m, ft; h, min. Percentages are of all the")
	line("# flour, the levain's included.")
	line("")
	key("name", b.name, "")
	key("wanted", b.wanted, `a weekday and a time, or a date: "2026-11-28 12:30"`)
	key("salt", "2 %", "")
	line("")
	line("[loaves]")
	plain("pieces", b.pieces, "how many")
	key("baked", b.baked, "each, when cool")
	key("style", "lean hearth", "core temperature and bake loss follow it")
	key("shape", "round", "round, long, thin, tin or ball")
	line("")
	b.flours(line, key)
	line("[[liquid]]")
	key("name", "water", "")
	key("percent", b.hydration, "")
	line("")
	if b.leaven == "yeast" {
		line("[[other]]")
		key("name", "instant yeast", "")
		key("percent", "0.7 %", "")
		key("kind", "instant yeast", "or: fresh yeast, active dry yeast")
	} else {
		line("[levain]                           # built from a culture kept in the refrigerator")
		key("prefermented", "12 %", "flour in the levain, of all flour")
		key("hydration", "100 %", "of the levain: as much water as flour")
		key("inoculation", "40 %", "culture, of the flour it is fed with")
	}
	line("")
	line("[mixing]")
	key("temperature", "25 °C", "of the dough, when mixed")
	key("mixer", b.mixer, "hand, planetary, spiral or processor")
	line(`# warming     = "3 Δ°C"             # how much mixing warms the dough: measure it once; a guide value until then`)
	line("")
	line("[bulk]")
	if b.leaven == "yeast" {
		key("rise", "150 %", "in all, when the loaves go into the oven: 100 % is doubled")
	} else {
		key("rise", "75 %", "in all, when the loaves go into the oven: 100 % is doubled")
		plain("folds", "2", "times that the dough is stretched and folded")
		key("fold_every", "45 min", "")
	}
	line("")
	line("[shaping]")
	key("takes", "30 min", "dividing and resting included")
	line("")
	if b.leaven == "levain" && b.cold == "yes" {
		line("[retard]                           # shaped loaves in the refrigerator")
		key("at_least", "8 h", "")
		key("at_most", "16 h", "")
		line("")
	}
	line("[oven]")
	key("temperature", "240 °C", "")
	line("# pots        = 2                  # covered pots, one loaf each; more loaves are baked in rounds")
	line("# together    = 4                  # without pots: loaves that fit in the oven at once")
	key("preheat", "45 min", "")
	key("covered", "20 min", "lid on, or with steam")
	key("uncovered", "20 min", "about; the core temperature decides")
	line("")
	line("[kitchen]")
	if b.zoneGuessed {
		line(`# This computer does not say in which time zone it is: write yours, such as "Europe/Zurich" or "America/Denver".`)
	}
	key("zone", b.zone, "all times of day here are by this clock")
	key("asleep", "22:30 to 06:30", "no step that needs hands is put here")
	line(`# away        = "08:00 to 17:00 on Monday"  # nor here`)
	key("altitude", b.altitude, "above the sea: water boils cooler up high")
	key("day", b.day, "at its warmest")
	key("night", b.night, "at its coldest")
	if b.leaven == "levain" {
		key("refrigerator", "4 °C", "")
	}
	key("tap", b.tap, "the coldest water from the tap")
	key("scale", "1 g", "what the kitchen scale can tell apart")
	key("fine_scale", "0.1 g", "for salt and yeast; leave it out if there is none")
	if b.mixer != "hand" {
		line("")
		line("[[kitchen.mixer]]")
		key("kind", b.mixer, "")
		key("bowl", b.bowl, "whether the dough fits, and in how many batches")
	}
	return f.String()
}

// flours writes one flour, or two that make up 100 %.
func (b *newBake) flours(line func(string, ...any), key func(name, value, comment string)) {
	rye, _ := quantity.ParsePercent(b.rye) // checked when it was given
	wheat := quantity.NewPercent(100).Sub(rye)
	one := func(name, percent, kind string) {
		line("[[flour]]")
		key("name", name, "")
		key("percent", percent, "all flours together are 100 %")
		key("kind", kind, "")
		line("")
	}
	if !wheat.IsZero() {
		one("wheat bread flour", wheat.String(), "wheat")
	}
	if !rye.IsZero() {
		one("whole rye flour", b.rye, "whole rye")
	}
}

// tomlText writes a text as a TOML string.
func tomlText(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range strings.ToValidUTF8(s, "\uFFFD") {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r < 0x20 || r == 0x7f:
			fmt.Fprintf(&b, `\u%04X`, r)
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}
