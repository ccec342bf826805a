package heat

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

type given map[string]string

func (g given) num(t *testing.T, key string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(g[key], 64)
	if err != nil {
		t.Fatalf("input %s: %v", key, err)
	}
	return x
}

func TestPublished(t *testing.T) {
	f, err := os.Open("testdata/published.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) < 190 {
		t.Fatalf("only %d rows", len(rows))
	}
	for _, row := range rows[1:] {
		t.Run(row[0], func(t *testing.T) {
			in := given{}
			for _, pair := range strings.Split(row[2], ";") {
				key, value, _ := strings.Cut(pair, "=")
				in[key] = value
			}
			want, err := strconv.ParseFloat(row[3], 64)
			if err != nil {
				t.Fatal(err)
			}
			tolerance, err := strconv.ParseFloat(row[4], 64)
			if err != nil {
				t.Fatal(err)
			}
			got := compute(t, row[1], in)
			if !(math.Abs(got-want) <= tolerance*(1+1e-9)) {
				t.Errorf("%s(%s) = %.8g, want %g ± %g (%s)", row[1], row[2], got, want, tolerance, row[6])
			}
		})
	}
}

func compute(t *testing.T, what string, in given) float64 {
	t.Helper()
	must := func(x float64, err error) float64 {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	switch what {
	case "eigenvalue", "eigenvalue squared", "coefficient":
		shape := map[string]Shape{"slab": Slab, "cylinder": Cylinder, "sphere": Sphere}[in["shape"]]
		s, err := NewSeries(shape, in.num(t, "biot"))
		if err != nil {
			t.Fatal(err)
		}
		switch what {
		case "eigenvalue":
			return s.Term(0).Eigenvalue
		case "coefficient":
			return s.Term(0).Coefficient
		}
		return s.Term(0).Eigenvalue * s.Term(0).Eigenvalue
	case "crumb alpha":
		return must(CrumbDiffusivity(in.num(t, "porosity")))
	}
	return computeBody(t, what, in)
}

func computeBody(t *testing.T, what string, in given) float64 {
	t.Helper()
	r := in.num(t, "r")
	m := Material{Conductivity: in.num(t, "k")}
	if in["alpha"] != "" {
		m.Density, m.HeatCapacity = 1000, m.Conductivity/in.num(t, "alpha")/1000
	} else {
		m.Density, m.HeatCapacity = in.num(t, "rho"), in.num(t, "c")
	}
	var g Geometry
	switch in["body"] {
	case "ball":
		g = Ball(r)
	case "plate":
		g = Plate(r)
	case "long cylinder":
		g = LongCylinder(r)
	case "short cylinder":
		g = ShortCylinder(r, in.num(t, "height"))
	default:
		t.Fatalf("no body %q", in["body"])
	}
	b, err := NewBody(g, m, in.num(t, "h"))
	if err != nil {
		t.Fatal(err)
	}
	from, into := in.num(t, "from"), in.num(t, "into")
	real := func(theta float64) float64 { return into + (from-into)*theta }
	switch what {
	case "biot":
		return b.factors[0].Biot()
	case "fourier":
		return in.num(t, "t") * b.rates[0]
	case "center":
		return real(b.Center(in.num(t, "t")))
	case "mean":
		return real(b.Mean(in.num(t, "t")))
	case "surface":
		return real(b.At(in.num(t, "t"), 1, 1, 1))
	case "heat share":
		return 1 - b.Mean(in.num(t, "t"))
	case "heat kJ":
		return (1 - b.Mean(in.num(t, "t"))) * m.Density * m.HeatCapacity * g.Volume() * (from - into) / 1000
	case "center time s", "center time min", "center time min one term":
		theta := (in.num(t, "to") - into) / (from - into)
		if what == "center time min one term" {
			first := b.factors[0].Term(0)
			return math.Log(first.Coefficient/theta) / (first.Eigenvalue * first.Eigenvalue) / b.rates[0] / 60
		}
		s, err := b.CenterTime(theta)
		if err != nil {
			t.Fatal(err)
		}
		if what == "center time min" {
			s /= 60
		}
		return s
	}
	t.Fatalf("no calculation %q", what)
	return 0
}
