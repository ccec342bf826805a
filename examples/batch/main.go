// Command batch scales many doughs at once: a CSV table of breads in, the same table with the
// weights out, for a spreadsheet.
//
//	go run ./examples/batch < breads.csv
//
// Columns in: name, pieces, each (baked weight), loss, water, salt, levain (flour in it, of all flour;
// it is as wet as 100 %). Columns out: the same, then flour, water, salt and levain to weigh, and a
// problem where a line cannot be scaled; the other lines are.
package main

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strconv"
	"strings"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
)

var columns = []string{"name", "pieces", "each", "loss", "water", "salt", "levain"}

func main() {
	if err := scale(os.Stdin, os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "batch:", err)
		os.Exit(2)
	}
}

func scale(in io.Reader, out io.Writer) error {
	r, w := csv.NewReader(in), csv.NewWriter(out)
	head, err := r.Read()
	if !slices.Equal(head, columns) {
		return errors.Join(fmt.Errorf("want the columns %s", strings.Join(columns, ",")), err)
	}
	_ = w.Write(append(slices.Clone(columns), "flour_g", "water_g", "salt_g", "levain_g", "problem")) // a fault stays, for w.Error
	for {
		row, err := r.Read()
		if errors.Is(err, io.EOF) {
			w.Flush()
			return w.Error()
		} else if err != nil {
			return err
		}
		weights, err := weigh(row)
		problem := ""
		if err != nil {
			problem = strings.ReplaceAll(err.Error(), "\n", "; ")
		}
		_ = w.Write(append(append(row, weights[:]...), problem))
	}
}

// weigh scales one line: flour, water, salt and levain in grams.
func weigh(row []string) (out [4]string, err error) {
	var each quantity.Mass
	var p [4]quantity.Percent // loss, water, salt, levain
	wrong := func(column int, e error) {
		if e != nil {
			err = errors.Join(err, fmt.Errorf("%s: %w", columns[column], e))
		}
	}
	pieces, e := strconv.Atoi(row[1])
	if e != nil {
		wrong(1, fmt.Errorf("got %s, want a whole number", quantity.Excerpt(row[1])))
	}
	wrong(2, each.UnmarshalText([]byte(row[2])))
	for i := range p {
		wrong(3+i, p[i].UnmarshalText([]byte(row[3+i])))
	}
	if err != nil {
		return out, err
	}
	f := dough.Formula{Flours: []dough.Part{{Name: "flour", Percent: quantity.NewPercent(100)}}, Liquids: []dough.Part{{Name: "water", Percent: p[1], Kind: dough.KindWater}}, Salt: p[2]}
	if !p[3].IsZero() {
		f.Preferments = []dough.Preferment{{Name: "levain", Flour: p[3], Hydration: quantity.NewPercent(100)}}
	}
	batch, err := f.For(dough.Baked{Pieces: pieces, Each: each, Loss: p[0]})
	for _, line := range batch.FinalDough() {
		out[slices.Index([]string{"flour", "water", "salt", "levain"}, line.Name)] = strconv.FormatFloat(line.Mass.Grams(), 'f', 1, 64)
	}
	return out, err
}
