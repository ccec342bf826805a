package working

import (
	"math"
	"slices"
)

// A ToldTable is a table of a derivation as its reader sees it.
type ToldTable struct {
	Columns []ToldColumn `json:"columns,omitzero"`
	Rows    [][]string   `json:"rows,omitzero"`
	Fault   string       `json:"fault,omitzero"` // why it is not to be trusted; for tests

	values [][]Value
}

// A ToldColumn is the head of a column: its symbol, its unit, what it stands for and, where it is worked out, its
// formula.
type ToldColumn struct {
	Symbol  string `json:"symbol"`
	Meaning string `json:"meaning"`
	Unit    string `json:"unit"`
	Formula string `json:"formula"`

	formula *node
}

// Table tells the table of a step, counted from 1, to the reader; it has no columns if the step has no table.
func (w Working) Table(step int, r Reader) ToldTable {
	if step < 1 || step > len(w.steps) || len(w.steps[step-1].finding.Table.Columns) == 0 {
		return ToldTable{}
	}
	return w.steps[step-1].table(r, newNames(w.steps, r))
}

func (s step) table(r Reader, n *names) ToldTable {
	columns := s.finding.Table.columnsFor(r)
	if len(columns) == 0 {
		return ToldTable{}
	}
	var out ToldTable
	finer := make([]int, len(columns))
	lines := s.lines(r, n)
	finer[len(columns)-1] = finerOf(lines[0].numbers, columns[len(columns)-1], r)
	// A column that is made finer moves what was worked out from it, so all are gone through until nothing changes.
	for before := []int(nil); !slices.Equal(before, finer); {
		before = slices.Clone(finer)
		for k := len(columns) - 1; k > 0; k-- {
			if fault := columns.refine(k, finer, r); fault != "" {
				out.Fault = fault
			}
		}
	}
	for k, c := range columns {
		head := ToldColumn{Symbol: n.name(c.symbol().symbol), Meaning: c.Meaning.Text(r), Unit: string(c.unit(r))}
		if c.formula != nil {
			head.formula = c.formula
			head.Formula = r.plain(c.formula, n)
		}
		out.Columns = append(out.Columns, head)
		for row := range c.values {
			if k == 0 {
				out.Rows, out.values = append(out.Rows, nil), append(out.values, nil)
			}
			v := columns[k].shown(row, r).finer(finer[k])
			text := r.literalText(&node{literal: v.literal(v.Decimals)})
			if v.Unit == Clock {
				text = v.text(r)
			}
			out.Rows[row], out.values[row] = append(out.Rows[row], text), append(out.values[row], v)
		}
	}
	return out
}

// finerOf is how many decimals more the line of numbers gives the cells of the column that it adds up.
func finerOf(numbers *node, c column, r Reader) int {
	best := 0
	for i, a := range numbers.args {
		if i >= len(c.values) {
			break
		}
		for by := 0; by < 10; by++ {
			v := c.shown(i, r).finer(by)
			if v.literal(v.Decimals) == a.literal {
				best = max(best, by)
				break
			}
		}
	}
	return best
}

// A column is a column for one reader.
type column struct {
	Column
	fixed bool // in its own unit
	from  int  // the column that it is converted from, from 1
}

type columns []column

func (c column) unit(r Reader) Unit {
	if c.fixed {
		return c.Unit
	}
	return c.Unit.for_(r)
}

func (c column) shown(row int, r Reader) Value {
	if c.fixed {
		return c.values[row]
	}
	return c.values[row].For(r)
}

// columnsFor keeps the columns of the table where their formulas hold in the reader's units. Otherwise a column in
// the reader's unit stands before the one that the formulas need.
func (t Table) columnsFor(r Reader) columns {
	holds := true
	for k, c := range t.Columns {
		if c.By == nil {
			continue
		}
		for row := range c.values {
			var before []Expr
			for _, b := range t.Columns[:k] {
				before = append(before, symbolExpr(b.cell(row)))
			}
			x := c.By(row, before).n
			got := x.evaluate(func(n *node) float64 {
				if n.op == opIn {
					return metricNumber(n)
				}
				return n.symbol.shown(r).Number
			})
			want := c.values[row].For(r).Number
			holds = holds && math.Abs(got-want) <= 1e-9*(math.Abs(want)+1e-6)
		}
	}
	var out columns
	var own []Expr // the columns that the formulas take
	for _, c := range t.Columns {
		if c.By != nil && !holds {
			c.formula = c.By(0, own).n
		}
		if holds || c.Unit.for_(r) == c.Unit {
			out = append(out, column{Column: c})
			own = append(own, Expr{c.symbol()})
			continue
		}
		seen := c
		seen.By, seen.formula = nil, nil
		if c.By != nil {
			out = append(out, column{Column: c, fixed: true})
			own = append(own, Expr{c.symbol()})
			continue
		}
		converted := c
		converted.Symbol += "_" + c.Unit.measure().suffix
		out = append(out, column{Column: seen})
		converted.formula = conversion(Expr{seen.symbol()}, c.Unit.for_(r), c.Unit).n
		out = append(out, column{Column: converted, fixed: true, from: len(out)})
		own = append(own, Expr{converted.symbol()})
	}
	return out
}

// refine gives the columns that column k is worked out from as many decimals as it takes for every row to give
// what is printed.
func (cs columns) refine(k int, finer []int, r Reader) string {
	c := cs[k]
	if c.formula == nil {
		return ""
	}
	for by := range 10 {
		for i := range finer[:k] {
			finer[i] = max(finer[i], by)
		}
		ok := true
		for row := range c.values {
			want := c.shown(row, r).finer(finer[k])
			got := cs.reckon(k, row, finer, r)
			ok = ok && math.Abs(got-want.literal(want.Decimals).value) <= want.half()*(1+1e-9)
		}
		if ok {
			return ""
		}
	}
	return "the rows of column " + c.Symbol + " do not give what is printed"
}

// reckon works out one cell from the cells before it as they are printed.
func (cs columns) reckon(k, row int, finer []int, r Reader) float64 {
	c := cs[k]
	printed := func(i int) float64 {
		v := cs[i].shown(row, r).finer(finer[i])
		return v.literal(v.Decimals).value
	}
	if c.from > 0 {
		return c.formula.evaluate(func(*node) float64 { return printed(c.from - 1) })
	}
	var before []Expr
	for i := range cs[:k] {
		if i+1 < k && cs[i+1].from == i+1 {
			continue // shown to the reader only; the formulas take the next
		}
		before = append(before, Num(printed(i)))
	}
	return c.By(row, before).n.evaluate(metricNumber)
}
