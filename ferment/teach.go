package ferment

import (
	"fmt"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
)

// TimeTable is how long a rise takes by temperature and inoculation: for teaching.
type TimeTable struct {
	Temperatures []quantity.Temperature
	Inoculations []quantity.Percent
	// Times[i][j] is at Temperatures[i] with Inoculations[j].
	Times [][]quantity.TimeRange
	rise  quantity.Percent
}

// TimeTable answers: how long does this rise take at each of these temperatures, held steady, with each of these prefermented
// shares of the flour? History and Inoculation of the bulk are not used. Errors: ErrRequired for empty lists or lists over 100 long; as [Bulk.Estimate]. Source:
// [Bulk.Estimate], cell by cell.
func (b Bulk) TimeTable(temperatures []quantity.Temperature, inoculations []quantity.Percent) (TimeTable, error) {
	var p problems
	if n := len(temperatures); n == 0 || n > 100 {
		p.Required("Temperatures", "1 to 100 temperatures")
	}
	if n := len(inoculations); n == 0 || n > 100 {
		p.Required("Inoculations", "1 to 100 prefermented shares")
	}
	if err := p.Err(); err != nil {
		return TimeTable{}, err
	}
	t := TimeTable{Temperatures: append([]quantity.Temperature(nil), temperatures...), Inoculations: append([]quantity.Percent(nil), inoculations...), rise: b.Rise}
	for i, c := range temperatures {
		row := make([]quantity.TimeRange, len(inoculations))
		for j, f := range inoculations {
			b.History, b.Inoculation = Constant(c), f
			e, err := b.Estimate()
			if err != nil {
				p.Join(fmt.Sprintf("[%d][%d]", i, j), err)
				continue
			}
			row[j] = e.Ready()
		}
		t.Times = append(t.Times, row)
	}
	return t, p.Err()
}

// String prints the likely times in a table, one line for each temperature.
func (t TimeTable) String() string {
	var s strings.Builder
	fmt.Fprintf(&s, "%-9s", t.rise.String())
	for _, f := range t.Inoculations {
		fmt.Fprintf(&s, " %8s", f.Text(1))
	}
	for i, c := range t.Temperatures {
		fmt.Fprintf(&s, "\n%-9s", c.String())
		for _, r := range t.Times[i] {
			fmt.Fprintf(&s, " %8s", quantity.FormatDuration(r.Likely.Round(5*time.Minute)))
		}
	}
	return s.String()
}

// CurveRow is one temperature of a comparison of curves: the rates in 1/h and, where a curve grows, the doubling times in hours.
type CurveRow struct {
	Temperature quantity.Temperature
	Rates       []float64
	Doublings   []float64 // +Inf hours are given as 0
	InRange     []bool    // the curve may be used there
}

// CompareCurves puts curves side by side at some temperatures: for teaching. Errors: ErrRequired for empty lists, nil curves or
// temperatures that are not given; ErrOutOfRange for temperatures outside −25 to 60 °C. Source: the curves' own.
func CompareCurves(curves []Curve, temperatures []quantity.Temperature) ([]CurveRow, error) {
	var p problems
	if len(curves) == 0 || len(curves) > 100 {
		p.Required("Curves", "1 to 100 curves")
	}
	for i, c := range curves {
		if c == nil {
			p.Required(fmt.Sprintf("Curves[%d]", i), "a curve")
		}
	}
	if len(temperatures) == 0 || len(temperatures) > 10_000 {
		p.Required("Temperatures", "1 to 10,000 temperatures")
	}
	for i, t := range temperatures {
		quantity.Check(&p.Problems, fmt.Sprintf("Temperatures[%d]", i), t, lowestTemperature, highestTemperature)
	}
	if err := p.Err(); err != nil {
		return nil, err
	}
	rows := make([]CurveRow, len(temperatures))
	for i, t := range temperatures {
		r := CurveRow{Temperature: t}
		for _, c := range curves {
			x, about := t.Celsius(), c.About()
			d, _ := DoublingTime(c, t)
			r.Rates = append(r.Rates, c.Rate(x))
			r.Doublings = append(r.Doublings, d)
			r.InRange = append(r.InRange, x >= about.Low && x <= about.High)
		}
		rows[i] = r
	}
	return rows, nil
}

// Applicable lists which of the named curves of yeast may be used over a history until a time, without extrapolating. Errors: as [History.Mean].
// Source: the ranges the curves state.
func Applicable(h History, until time.Duration) ([]Curve, error) {
	if err := h.interval(0, until); err != nil {
		return nil, err
	}
	var out []Curve
	for _, c := range Curves() {
		if c != GanzleLactobacilli && withinCurve(Bulk{Curve: c}, h, hours(until), "History") == nil {
			out = append(out, c)
		}
	}
	return out, nil
}
