package handcheck

import (
	"strings"
)

// table checks that each row gives what is printed in it.
func (c *checker) table(t Table) {
	if len(t.Rows) == 0 {
		c.fault("has a table without rows")
	}
	for k, column := range t.Columns {
		s := c.symbols[column.Symbol]
		if s != nil && s.meaning != column.Meaning {
			c.fault("symbol %s stands for %q and for %q", column.Symbol, s.meaning, column.Meaning)
		}
		s = &symbol{meaning: column.Meaning}
		c.symbols[column.Symbol] = s
		for _, row := range t.Rows {
			if len(row) != len(t.Columns) {
				c.fault("row %v has %d cells, the head %d", row, len(row), len(t.Columns))
				return
			}
			s.cells = append(s.cells, row[k])
		}
	}
	for _, column := range t.Columns {
		if column.Formula == "" {
			continue
		}
		for i := range t.Rows {
			c.row(t, column, i)
		}
	}
}

// row puts the cells of a row into the formula of a column.
func (c *checker) row(t Table, column Column, i int) {
	want := cellValue(c.symbols[column.Symbol].cells[i])
	line := symbolForm.ReplaceAllStringFunc(column.Formula, func(name string) string {
		if name == "π" || strings.HasSuffix(name, "(") {
			return name
		}
		for k, other := range t.Columns {
			if other.Symbol == name {
				return "(" + t.Rows[i][k] + ")"
			}
		}
		if s := c.symbols[name]; s != nil && len(s.values) > 0 {
			return "(" + s.values[len(s.values)-1].typed() + ")"
		}
		c.fault("column %s = %s uses %s, which is not explained", column.Symbol, column.Formula, name)
		return "0"
	})
	if _, got, err := Evaluate(line); err != nil || !want.Gives(got) {
		c.fault("row %d: %s gives %.12g (%v), the cell of %s says %s", i+1, line, got, err, column.Symbol, want.Text)
	}
}

// cellValue reads a cell, which writes powers as a line of arithmetic does.
func cellValue(cell string) Value {
	if mantissa, power, ok := strings.Cut(cell, " × 10^"); ok {
		cell = mantissa + " × 10" + raised.Replace(strings.Trim(power, "()"))
	}
	v, ok := ReadValue(cell)
	if !ok {
		v, _ = ReadValue("0")
		v.Text, v.Half = cell, -1
	}
	return v
}

var raised = strings.NewReplacer("-", "⁻", "−", "⁻", "0", "⁰", "1", "¹", "2", "²", "3", "³", "4", "⁴", "5", "⁵",
	"6", "⁶", "7", "⁷", "8", "⁸", "9", "⁹")
