package working

import (
	"math"
	"strconv"
)

// A Table is a step whose arithmetic is row by row, such as an hour-by-hour reckoning; the cells of its last column
// are added up to the result.
type Table struct {
	Columns []Column `json:"columns"`
}

// A Column of a [Table] has its cells given, or worked out in each row from the columns before it.
type Column struct {
	Symbol   string    `json:"symbol"`
	Meaning  Message   `json:"meaning,omitzero"`
	Unit     Unit      `json:"unit,omitzero"`
	Decimals int       `json:"decimals"`       // as in [Finding]
	Cells    []float64 `json:"cells,omitzero"` // given
	// or the arithmetic of a row over its cells in the columns before
	By func(row int, before []Expr) Expr `json:"-"`

	values  []Value
	formula *node
}

// symbol is the column as a whole.
func (c Column) symbol() *node {
	return &node{
		op:     opSymbol,
		symbol: &binding{name: c.Symbol, meaning: c.Meaning, value: Value{Unit: c.Unit}, column: true},
	}
}

// cell is one value of the column as a symbol.
func (c Column) cell(row int) *binding {
	return &binding{name: c.Symbol + "_" + strconv.Itoa(row+1), meaning: c.Meaning, value: c.values[row]}
}

// filled works out every cell.
func (t Table) filled() Table {
	rows := 0
	for _, c := range t.Columns {
		rows = max(rows, len(c.Cells))
	}
	out := Table{Columns: make([]Column, len(t.Columns))}
	for k, c := range t.Columns {
		c.values = make([]Value, rows)
		for row := range rows {
			v := Value{Number: math.NaN(), Unit: c.Unit}
			if row < len(c.Cells) {
				v.Number = c.Cells[row]
			}
			if c.By != nil {
				var before []Expr
				for _, b := range out.Columns[:k] {
					before = append(before, symbolExpr(b.cell(row)))
				}
				if x := c.By(row, before); x.n != nil {
					v.Number = x.n.evaluate(metricNumber)
				}
			}
			switch {
			case c.Decimals > 0:
				v.Decimals = c.Decimals
			case c.Decimals == 0:
				v.Decimals = significant(v.Number)
			}
			if places, ok := decimalsOf(v.Number, min(v.Decimals, most)); ok && c.Decimals == 0 {
				v.Decimals, v.exact = places, true
			}
			c.values[row] = v
		}
		if c.By != nil {
			var before []Expr
			for _, b := range out.Columns[:k] {
				before = append(before, Expr{b.symbol()})
			}
			c.formula = c.By(0, before).n
		}
		out.Columns[k] = c
	}
	return out
}

// sum adds up the last column.
func (t Table) sum() Expr {
	last := t.Columns[len(t.Columns)-1]
	n := &node{op: opSum, symbol: last.symbol().symbol}
	for row := range last.values {
		n.args = append(n.args, symbolExpr(last.cell(row)).n)
	}
	return Expr{n}
}
