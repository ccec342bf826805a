package gasbalance

// The three curves are tabulated over temperature as cubics of a fifth of a degree that keep the antiderivative
// and the rate at both ends (Hermite): one look-up gives all three. The antiderivative is exact at the knots;
// between them it is off by less than 1e-8 of a degree, a mean rate by less than 1e-6, wherever the curve is
// smooth.
const (
	tableFrom  = -30.0
	tableTo    = 60.0
	tableStep  = 0.2
	tableCells = int((tableTo - tableFrom) / tableStep)
)

// three are values of the gas curve, the growth of S. cerevisiae and the growth of K. humilis.
type three struct{ gas, yeast, humilis float64 }

// cell holds for each curve the coefficients of the antiderivative in the share of the cell.
type cell struct{ gas, yeast, humilis [4]float64 }

func tabulate(gas, yeast, humilis Curve) []cell {
	cells := make([]cell, tableCells)
	for k, c := range [...]Curve{gas, yeast, humilis} {
		sum := 0.0
		at := c.Rate(tableFrom)
		for i := range cells {
			from := tableFrom + float64(i)*tableStep
			next := c.Rate(from + tableStep)
			d := c.Integral(from, from+tableStep)
			m0, m1 := at*tableStep, next*tableStep
			row := [4]float64{sum, m0, 3*d - 2*m0 - m1, m0 + m1 - 2*d}
			switch k {
			case 0:
				cells[i].gas = row
			case 1:
				cells[i].yeast = row
			case 2:
				cells[i].humilis = row
			}
			sum += d
			at = next
		}
	}
	return cells
}

// place is the cell of a temperature and the share of it; outside the table the end is held.
func (l *Law) place(celsius float64) (*cell, float64) {
	x := (celsius - tableFrom) * (1 / tableStep)
	if !(x > 0) {
		return &l.cells[0], 0
	}
	if x >= float64(tableCells) {
		return &l.cells[tableCells-1], 1
	}
	i := int(x)
	return &l.cells[i], x - float64(i)
}

func cubic(c *[4]float64, t float64) float64 { return c[0] + t*(c[1]+t*(c[2]+t*c[3])) }

func slope(c *[4]float64, t float64) float64 {
	return (c[1] + t*(2*c[2]+t*3*c[3])) * (1 / tableStep)
}

// rates are the three curves at a temperature.
func (l *Law) rates(celsius float64) three {
	c, t := l.place(celsius)
	return three{slope(&c.gas, t), slope(&c.yeast, t), slope(&c.humilis, t)}
}

// closeTogether is how near two temperatures must be, °C, for the rates in the middle to beat the difference of two
// antiderivatives.
const closeTogether = 1e-3

// means are the three curves averaged along a straight run from one temperature to another, which are not close
// together, and apart their values at the end less those at the start.
func (l *Law) means(from, to float64) (mean, apart three) {
	a, s := l.place(from)
	b, t := l.place(to)
	r := 1 / (to - from)
	mean = three{
		(cubic(&b.gas, t) - cubic(&a.gas, s)) * r,
		(cubic(&b.yeast, t) - cubic(&a.yeast, s)) * r,
		(cubic(&b.humilis, t) - cubic(&a.humilis, s)) * r,
	}
	apart = three{
		slope(&b.gas, t) - slope(&a.gas, s),
		slope(&b.yeast, t) - slope(&a.yeast, s),
		slope(&b.humilis, t) - slope(&a.humilis, s),
	}
	return mean, apart
}
