package house

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/maslin/dough/working"
)

var update = flag.Bool("update", false, "write which sentences of derivations use which terms of the glossary")

// lexicon are the words and turns by which the terms of the glossary stand in the sentences of derivations.
var lexicon = map[string]string{
	"absorption_ratio": `absorption`, "bakers_percentage": `percentages|of all flour|percent of the flour`,
	"desired_dough_temperature": `dough temperature wanted`, "dough_yield": `dough yield`, "friction_factor": `friction`,
	"gluten": `gluten`, "heat_capacity": `heat capacity`, "heat_of_wetting": `heat of hydration|wetting`,
	"hydration": `hydration|water over flour`, "inoculation": `inoculation`,
	"largest_remainder": `largest remainder|on the scale`,
	"latent_heat":       `latent|melting`, "levain": `levain`, "preferment": `preferments?`,
	"prefermented_flour": `prefermented|flour in `,
	"scaling_weight":     `scaling weight|dough per piece`, "seed": `seed|starter`, "specific_volume": `volume of a gram`,
	"amplitude": `amplitude`, "bulk": `bulk`, "curve": `curves?`, "dose": `dose`, "pace": `pace`,
	"probability": `early|late|low end|high end|ranges?`, "rate": `rates?|growth|doubl\w+|grows?`,
	"retard": `retard|refrigerator`,
	"rise":   `rise|risen|rises`, "slack": `slack`, "spread": `spread`,
	"altitude":  `altitude|geopotential|sea level|atmosphere|barometer`,
	"bake_loss": `loss|losses|loses`, "biot": `Biot|Bi`, "boiling_point": `boiling|boils`,
	"carry_over": `carry-over|share of the distance gained`,
	"core":       `core`, "diffusivity": `diffusivity`, "doneness": `target|bake-out|baked out`,
	"eigenvalue": `eigenvalue`,
	"lead":       `lead`, "time_constant": `time constant`,
	"axis": `axis`, "nominal_weight": `nominal`, "series": `series|first term`, "simpson": `Simpson's rule`,
	"staling":  `firmed|firming|firms`,
	"capacity": `capacity|fit|takes at a time`, "carbon_dioxide": `carbon dioxide|gas`, "cells": `cells`,
	"coefficient": `coefficient`, "conductivity": `conductivity|conducts|conduction`,
	"degrees_of_freedom": `degrees of freedom|Student`,
	"density":            `density`, "exponent": `exponent|power`, "factor": `factors?`,
	"fermentation": `fermentation|ripe|ripens|peak`,
	"index":        `index`, "lactobacilli": `lactobacilli`, "logarithm": `logarithm|log|ln`, "mash": `mash|scald`,
	"moisture":         `moisture`,
	"percentage_point": `percent|%%`, "porosity": `porosity|pores`, "precision": `precision|weight of the (reading|bake)`,
	"pressure": `pressure`, "quantile": `quantile|standard deviations`, "residual": `residuals?`,
	"share": `shares?|part of|proportion`,
	"slope": `slope|sensitivity`, "solids": `solids`, "solutes": `solutes|press`,
	"specific_heat":      `specific heat`,
	"standard_deviation": `standard deviation|spread`, "tin_factor": `tin factor`, "variance": `variance|squares?|squared`,
	"yeasts": `cerevisiae|humilis`, "yield": `usable part|yield`,
}

// longer are terms that hold the word of another one, which they do not mean.
var longer = map[string]string{"capacity": "heat capacity", "factor": "friction factor"}

// derivation are the identifiers of what a derivation calls its symbols and steps.
var derivation = regexp.MustCompile(`\.(symbol|derive|step|part|column)_`)

var wordForm = regexp.MustCompile(`[A-Za-z][A-Za-z'-]*`)

// Every word that a derivation calls something by is plain, or explained in the glossary; and which of its terms a
// sentence uses is written down where derivations find it.
func TestGlossaryExplainsEveryTerm(t *testing.T) {
	root := filepath.Join("..", "..")
	english, _, err := Sentences(root)
	if err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(filepath.Join("testdata", "plainwords.txt"))
	if err != nil {
		t.Fatal(err)
	}
	plain := map[string]bool{}
	for _, w := range strings.Fields(string(text)) {
		plain[w] = true
	}
	var keys []string
	forms := map[string]*regexp.Regexp{}
	for _, term := range working.Terms() {
		keys = append(keys, term.Key)
		form, ok := lexicon[term.Key]
		if !ok {
			t.Errorf("the glossary has %s, which no word leads to", term.Key)
			continue
		}
		forms[term.Key] = regexp.MustCompile(`(^|[^A-Za-z-])(` + form + `)([^A-Za-z-]|$)`)
	}
	for key := range lexicon {
		if !slices.Contains(keys, key) {
			t.Errorf("the glossary has no %s", key)
		}
	}
	var lines []string
	unknown, used := map[string]string{}, map[string]bool{}
	for id, sentence := range english {
		if !derivation.MatchString(id) {
			continue
		}
		var uses []string
		rest := sentence
		for _, key := range keys {
			without := sentence
			if other := longer[key]; other != "" {
				without = strings.ReplaceAll(sentence, other, "")
			}
			if form := forms[key]; form != nil && form.MatchString(without) {
				uses = append(uses, key)
				rest = form.ReplaceAllString(form.ReplaceAllString(rest, "$1 $3"), "$1 $3")
			}
		}
		for _, w := range wordForm.FindAllString(regexp.MustCompile(`%[\[\]0-9.]*[a-z]`).ReplaceAllString(rest, ""), -1) {
			if len(w) > 4 && !plain[strings.ToLower(w)] {
				unknown[strings.ToLower(w)] = id
			}
		}
		if len(uses) > 0 {
			lines = append(lines, id+" "+strings.Join(uses, " "))
		}
		for _, key := range uses {
			used[key] = true
		}
	}
	for w, id := range unknown {
		t.Errorf("%q, as in %s, is neither plain nor in the glossary", w, id)
	}
	slices.Sort(lines)
	want := "package working\n\n// termUses are the terms of the glossary that the names of symbols and steps use, by " +
		"identifier;" +
		"\n// written by go test ./internal/house -run Glossary -update.\nconst termUses = `\n" +
		strings.Join(lines, "\n") + "\n`\n"
	path := filepath.Join(root, "dough", "working", "termuses.go")
	if *update {
		if err := os.WriteFile(path, []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if got, err := os.ReadFile(path); err != nil || string(got) != want {
		t.Error(fmt.Sprint("termuses.go is not what the sentences use; go test ./internal/house -run Glossary -update ", err))
	}
	for _, key := range keys {
		if !used[key] && key != "slack" && key != "doneness" {
			t.Logf("%s is in the glossary and in no name of a derivation", key)
		}
	}
}
