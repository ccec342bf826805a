package bakeday

import (
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"example.org/maslin/dough/quantity"
)

// What is taken when the bake does not say. They are common practice, no source, and only how
// long hands are busy; nothing about the dough is assumed.
const (
	usualFeeding   = quantity.Elapsed(10 * time.Minute)
	usualMixing    = quantity.Elapsed(25 * time.Minute)
	usualFold      = quantity.Elapsed(5 * time.Minute)
	usualFoldEvery = quantity.Elapsed(40 * time.Minute)
	usualShaping   = quantity.Elapsed(30 * time.Minute)
	usualFilling   = quantity.Elapsed(10 * time.Minute) // a batter into its tins
	usualFreshness = quantity.Elapsed(12 * time.Hour)
	usualWarmth    = quantity.Elapsed(30 * time.Minute)
	tooHotToEat    = 5 * time.Minute // after the oven
)

// What the baker may ask of rests and of bread that waits.
const (
	shortestRetard = 30 * time.Minute
	shortestRest   = 5 * time.Minute // of a preferment or soaker
	longestRest    = 96 * time.Hour
	longestFresh   = 7 * 24 * time.Hour
)

// What a name may be. Control and direction characters would change what is around them on a page.
const (
	maxName = 200
)

var nameWant = quantity.Tell("bakeday.want_at_most_200_bytes_text",
	"at most 200 bytes of text without control or direction characters")

// unprintable reports whether a name may not have a character.
func unprintable(r rune) bool { return unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) }

// printable reports whether a name can stand on a page.
func printable(name string) bool {
	return len(name) <= maxName && utf8.ValidString(name) && !strings.ContainsFunc(name, unprintable)
}

// withDefaults fills in what may be left out.
func (b Bake) withDefaults() Bake {
	usual := func(e *quantity.Elapsed, d quantity.Elapsed) {
		if *e == 0 {
			*e = d
		}
	}
	if b.Levain != nil {
		l := *b.Levain
		usual(&l.Takes, usualFeeding)
		if l.CultureHydration.IsZero() {
			l.CultureHydration = l.Hydration
		}
		b.Levain = &l
	}
	b.Preferments, b.Soakers = slices.Clone(b.Preferments), slices.Clone(b.Soakers)
	for i := range b.Preferments {
		usual(&b.Preferments[i].Takes, usualFeeding)
	}
	for i := range b.Soakers {
		usual(&b.Soakers[i].Takes, usualFeeding)
	}
	b.Mixing.Mixer = b.Mixer().Kind
	usual(&b.Mixing.Takes, usualMixing)
	if b.Bulk.Folds > 0 {
		usual(&b.Bulk.FoldEvery, usualFoldEvery)
		usual(&b.Bulk.FoldTakes, usualFold)
	}
	b.Bulk.Lamination = b.Bulk.Lamination.withDefaults()
	shaping := usualShaping
	if b.batter() {
		shaping = usualFilling
	}
	usual(&b.Shaping.Takes, shaping)
	if b.undivided() {
		r := *b.Retard
		usual(&r.WarmUp, usualUndividedProof)
		b.Retard = &r
	}
	b.Loaves.Warm = b.Loaves.Warm || b.Loaves.toOrder()
	if b.Loaves.Warm {
		usual(&b.Loaves.FreshWithin, usualWarmth)
	}
	usual(&b.Loaves.FreshWithin, usualFreshness)
	k := &b.Kitchen
	if k.Night.IsZero() {
		k.Night = k.Day
	}
	if k.Ice.IsZero() {
		k.Ice = quantity.Celsius(-18)
	}
	if k.Scale.IsZero() {
		k.Scale = quantity.Grams(1)
	}
	return b
}

// check reports everything that is wrong with the bake itself, in field order. What the rooms find
// in their own inputs is added by them.
func (b *Bake) check() error {
	var p quantity.Problems
	celsius, percent := quantity.Celsius, quantity.NewPercent
	minutes := func(path string, e quantity.Elapsed, low, high time.Duration) {
		p.Duration(path, e.Duration(), low, high)
	}
	if b.Wanted.IsZero() {
		p.Required("Wanted", wishWant)
	}
	p.Int("Loaves.Pieces", b.Loaves.Pieces, 1, 1000)
	quantity.Check(&p, "Loaves.Baked", b.Loaves.Baked, quantity.Grams(20), quantity.Kilograms(10))
	quantity.Check(&p, "Loaves.Loss", b.Loaves.Loss, percent(0), percent(40))
	minutes("Loaves.FreshWithin", b.Loaves.FreshWithin, 0, longestFresh)
	p.Join("", b.from(ofFormula, b.formula().Check()))
	b.checkBeforehand(&p)
	if _, raised := b.yeast(); b.Levain == nil && !raised {
		p.Required("Levain", quantity.Tell("bakeday.want_levain_or_line_yeast_under",
			"a levain, or a line of yeast under other with its kind"))
	}
	if l := b.Levain; l != nil {
		quantity.Check(&p, "Levain.Prefermented", l.Prefermented, percent(0.5), percent(100))
		if !l.RipeNow || !l.Inoculation.IsZero() {
			quantity.Check(&p, "Levain.Inoculation", l.Inoculation, percent(1), percent(500))
		}
		minutes("Levain.FedAgo", l.FedAgo, 0, 72*time.Hour)
		if l.RipeNow && l.FedAgo > 0 {
			p.Add("Levain.FedAgo", l.FedAgo, quantity.Tell("bakeday.want_nothing_levain_ripe_now",
				"nothing for a levain that is ripe now"), quantity.ErrInconsistent)
		}
		quantity.Check(&p, "Levain.CultureAtHand", l.CultureAtHand, quantity.Mass{}, quantity.Kilograms(1000))
		if !l.Temperature.IsZero() {
			quantity.Check(&p, "Levain.Temperature", l.Temperature, celsius(5), celsius(40))
		}
		minutes("Levain.Takes", l.Takes, time.Minute, 4*time.Hour)
	}
	quantity.Check(&p, "Mixing.Temperature", b.Mixing.Temperature, celsius(10), celsius(40))
	b.checkMixer(&p)
	quantity.Check(&p, "Mixing.Warming", b.Mixing.Warming, quantity.DeltaCelsius(-10), quantity.DeltaCelsius(20))
	minutes("Mixing.Takes", b.Mixing.Takes, time.Minute, 4*time.Hour)
	quantity.Check(&p, "Bulk.Rise", b.Bulk.Rise, percent(10), percent(400))
	switch box := b.Bulk.Box; {
	case box.IsZero():
	case box.IsValid() && box.Compare(celsius(10)) < 0:
		p.Add("Bulk.Box", box, quantity.Tell("bakeday.want_box_warm",
			"%v to %v: the cold is under retard, of shaped loaves or, with undivided, of the dough before it is divided",
			celsius(10), celsius(38)), quantity.ErrOutOfRange)
	default:
		quantity.Check(&p, "Bulk.Box", box, celsius(10), celsius(38))
	}
	p.Int("Bulk.Folds", b.Bulk.Folds, 0, 12)
	if b.Bulk.Folds > 0 {
		minutes("Bulk.FoldEvery", b.Bulk.FoldEvery, 5*time.Minute, 12*time.Hour)
		minutes("Bulk.FoldTakes", b.Bulk.FoldTakes, time.Minute, time.Hour)
	}
	b.checkLamination(&p)
	b.checkAdditions(&p)
	b.checkNotes(&p)
	minutes("Shaping.Takes", b.Shaping.Takes, time.Minute, 8*time.Hour)
	if r := b.Retard; r != nil {
		least := shortestRetard
		if p.Duration("Retard.AtLeast", r.AtLeast.Duration(), shortestRetard, longestRest) {
			least = r.AtLeast.Duration()
		}
		minutes("Retard.AtMost", r.AtMost, least, longestRest)
		minutes("Retard.WarmUp", r.WarmUp, 0, 12*time.Hour)
	}
	if !b.Oven.Temperature.IsZero() {
		quantity.Check(&p, "Oven.Temperature", b.Oven.Temperature, celsius(120), celsius(500))
	}
	if !b.Oven.Then.IsZero() {
		quantity.Check(&p, "Oven.Then", b.Oven.Then, celsius(100), celsius(500))
	}
	p.Int("Oven.Pots", b.Oven.Pots, 0, 1000)
	p.Int("Oven.Together", b.Oven.Together, 0, 1000)
	minutes("Oven.Preheat", b.Oven.Preheat, 0, 6*time.Hour)
	minutes("Oven.Reheat", b.Oven.Reheat, 0, 2*time.Hour)
	minutes("Oven.Covered", b.Oven.Covered, 0, 4*time.Hour)
	minutes("Oven.Uncovered", b.Oven.Uncovered, 0, 4*time.Hour)
	b.checkBaking(&p)
	b.Levers.check(&p)
	b.Kitchen.check(&p, b.Retard != nil)
	b.checkRoom(&p)
	return p.Err()
}

// moved is a room's problem at a field of the bake; its data path is derived from the bake's own names.
func moved(e *quantity.InputError, path string) *quantity.InputError {
	return &quantity.InputError{GoPath: path, Code: e.Code, Got: e.Got, Want: e.Want, Low: e.Low, High: e.High, Err: e.Err}
}

// atFields puts what is wrong at fields that the input has, which is a bake or an order: whoever sent it finds them in
// it. What a room calls its own inputs is cut off.
func atFields(input any, err error) error {
	switch e := err.(type) {
	case *quantity.InputError:
		if path := knownPath(reflect.TypeOf(input), e.GoPath); path != "" && path != e.GoPath {
			return quantity.DataPaths(input, moved(e, path))
		}
	case interface{ Unwrap() []error }:
		var all []error
		for _, inner := range e.Unwrap() {
			all = append(all, atFields(input, inner))
		}
		return errors.Join(all...)
	}
	return quantity.DataPaths(input, err)
}

// knownPath is as much of a Go path as leads through fields of the type.
func knownPath(t reflect.Type, path string) string {
	known, rest := "", path
	for rest != "" {
		for t.Kind() == reflect.Pointer {
			t = t.Elem()
		}
		var end int
		switch {
		case rest[0] == '[':
			end = strings.IndexByte(rest, ']') + 1
			if end == 0 || t.Kind() != reflect.Slice {
				return known
			}
			t = t.Elem()
		default:
			if end = strings.IndexAny(rest, ".["); end < 0 {
				end = len(rest)
			}
			if t.Kind() != reflect.Struct {
				return known
			}
			f, ok := t.FieldByName(rest[:end])
			if !ok || !f.IsExported() {
				return known
			}
			t = f.Type
		}
		known = path[:len(path)-len(rest)+end]
		rest = strings.TrimPrefix(rest[end:], ".")
	}
	return known
}

// asWritten moves what is wrong with a bake in percent to where it is written as a weight. Where the amounts
// themselves are not clear, what follows from them says nothing and is left out.
func (b *Bake) asWritten(err error, unclear bool) error {
	if err == nil {
		return nil
	}
	weights := map[string]string{}
	for i, l := range b.Flours {
		if !l.Weight.IsZero() {
			weights[fmt.Sprintf("Flours[%d].Percent", i)] = fmt.Sprintf("Flours[%d].Weight", i)
		}
	}
	for _, a := range b.amounts() {
		if !a.mass.IsZero() {
			weights[a.share] = a.weight
		}
	}
	if b.weighed() && b.Loaves.Baked.IsZero() {
		weights["Loaves.Baked"] = "Loaves.Scaling"
	}
	var p quantity.Problems
	for _, e := range quantity.InputErrors(err) {
		field, _, _ := strings.Cut(e.GoPath, ".")
		field, _, _ = strings.Cut(field, "[")
		switch field {
		case "Flours", "Liquids", "Salt", "Others", "Inclusions", "Levain", "Preferments", "Soakers", "Loaves":
			if unclear {
				continue
			}
		}
		if at, ok := weights[e.GoPath]; ok {
			e = moved(e, at)
		}
		p.Join("", e)
	}
	if p.Err() == nil && !unclear {
		return err
	}
	return p.Err()
}
