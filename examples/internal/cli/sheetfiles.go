package cli

import (
	"bytes"
	"encoding/csv"
	"errors"
	"strconv"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/examples/internal/bakesheet"
	"example.org/maslin/examples/internal/outfile"
	"example.org/maslin/internal/textpage"
	"example.org/maslin/schedule/bakeday"
	"github.com/spf13/cobra"
)

// sheetFiles are the files that plan writes beside what it prints.
type sheetFiles struct {
	html, svg, csv string
	replace        bool
}

func (f *sheetFiles) register(cmd *cobra.Command) {
	cmd.Flags().StringVar(&f.html, "html", "", "also write the bake sheet, one page to print or prop up, as `FILE`")
	cmd.Flags().StringVar(&f.svg, "svg", "", "also write the rise curve as a picture `FILE`")
	cmd.Flags().StringVar(&f.csv, "csv", "", "also write weights (in grams) and timetable as a table `FILE`")
	registerReplace(cmd, &f.replace)
}

func registerReplace(cmd *cobra.Command, to *bool) {
	cmd.Flags().BoolVar(to, "replace", false, "replace files that exist and are something else than what would be written")
}

// outputs are the files with the forms that each may replace.
func (f sheetFiles) outputs() []outfile.Output {
	return []outfile.Output{
		{Flag: "--html", Name: f.html, Form: outfile.HTML()},
		{Flag: "--svg", Name: f.svg, Form: outfile.SVG()},
		{Flag: "--csv", Name: f.csv, Form: outfile.CSV(strings.Join(sheetColumns, ","))},
	}
}

// sheetOptions are those of the reader of a file; with --working it says where every number comes from.
func (s System) sheetOptions(o output) report.Options {
	on := s.options(o)
	on.ASCII, on.WithSources = false, o.working != ""
	return on
}

// write writes the files asked for.
func (f sheetFiles) write(day bakeday.Day, on report.Options) error {
	if f.html != "" {
		if err := writeFile(f.html, bakesheet.Render(day, on)); err != nil {
			return err
		}
	}
	if f.svg != "" {
		picture, err := picture(day.Report().Section("rising"), on)
		if err != nil {
			return badInput("%s: %s", f.svg, err)
		}
		if err := writeFile(f.svg, []byte(picture)); err != nil {
			return err
		}
	}
	if f.csv != "" {
		return writeFile(f.csv, sheetTable(day.Data()))
	}
	return nil
}

// picture is the first picture of a section.
func picture(of report.Section, on report.Options) (string, error) {
	for _, b := range of.Blocks {
		if c, ok := b.(report.Chart); ok {
			return c.SVG(on, 700, 400)
		}
	}
	return "", errors.New("there is no rise to draw")
}

var sheetColumns = []string{"table", "part", "item", "batch", "mass_g", "percent", "start", "end", "earliest_start", "latest_start", "hands", "look_from", "look_to"}

// sheetTable is the plan as one table for a spreadsheet: the lines of the weighing lists ("weigh",
// with a line for each batch where there are several, and then none for the whole), then the steps
// ("step"). Numbers have a decimal point and no unit; the headings name it.
func sheetTable(s bakeday.PlanData) []byte {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	row := func(cells map[string]string) {
		out := make([]string, len(sheetColumns))
		for i, c := range sheetColumns {
			out[i] = cells[c]
		}
		_ = w.Write(out) // a bytes.Buffer takes everything
	}
	_ = w.Write(sheetColumns)
	grams := func(m quantity.Mass) string { return strings.TrimSuffix(plainNumber(m), " g") }
	for _, l := range s.Weigh {
		for _, line := range l.Lines {
			cells := map[string]string{"table": "weigh", "part": cell(l.Name), "item": cell(line.Name), "percent": strconv.FormatFloat(line.Percent.Points(), 'f', -1, 64)}
			if len(line.Portions) == 0 {
				cells["batch"], cells["mass_g"] = "1", grams(line.Mass)
				row(cells)
			}
			for i, m := range line.Portions {
				cells["batch"], cells["mass_g"] = strconv.Itoa(i+1), grams(m)
				row(cells)
			}
		}
	}
	for _, t := range s.Steps {
		cells := map[string]string{
			"table": "step", "item": cell(t.Name.String()), "start": stamp(t.Start), "end": stamp(t.End),
			"earliest_start": stamp(t.EarliestStart), "latest_start": stamp(t.LatestStart), "hands": strconv.FormatBool(t.Hands),
		}
		if t.LookFrom != nil {
			cells["look_from"], cells["look_to"] = stamp(*t.LookFrom), stamp(*t.LookTo)
		}
		row(cells)
	}
	w.Flush()
	return b.Bytes()
}

func plainNumber(m quantity.Mass) string {
	text, err := m.MarshalText()
	if err != nil {
		return ""
	}
	return string(text)
}

// stamp is a time as spreadsheets read it, by the clock of the kitchen.
func stamp(t time.Time) string { return t.Format("2006-01-02 15:04") }

// cell keeps a name a name: a spreadsheet would compute a cell that begins with one of these.
func cell(name string) string {
	name = textpage.Printable(name)
	if name != "" && strings.ContainsRune("=+-@", rune(name[0])) {
		return "'" + name
	}
	return name
}
