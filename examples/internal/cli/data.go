package cli

import (
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

type lineData struct {
	Name    string           `json:"name"`
	Kind    dough.Kind       `json:"kind"`
	Role    dough.Role       `json:"role"`
	Mass    quantity.Mass    `json:"mass"`
	Exact   *quantity.Mass   `json:"exact,omitempty"` // of a rounded line
	Percent quantity.Percent `json:"percent"`
}

func linesData(lines []dough.Line) []lineData {
	out := []lineData{}
	for _, l := range lines {
		out = append(out, lineData{l.Name, l.Kind, l.Role, l.Mass, nil, l.Percent})
	}
	return out
}

func weighedData(lines []dough.Weighed) []lineData {
	out := []lineData{}
	for _, l := range lines {
		exact := l.Exact
		out = append(out, lineData{l.Name, l.Kind, l.Role, l.Mass, &exact, l.Percent})
	}
	return out
}

type buildData struct {
	Name  string        `json:"name"`
	Lines []lineData    `json:"lines"`
	Made  quantity.Mass `json:"made"`
	Used  quantity.Mass `json:"used"`
}

type readData struct {
	Dough        quantity.Mass    `json:"dough"`
	Flour        quantity.Mass    `json:"flour"`
	Water        quantity.Mass    `json:"water"`
	Hydration    quantity.Percent `json:"hydration"`
	Effective    quantity.Percent `json:"effective_hydration"`
	NotStated    []string         `json:"water_not_stated"`
	Prefermented quantity.Percent `json:"prefermented"`
	Salt         quantity.Percent `json:"salt"`
	WholeGrain   quantity.Percent `json:"whole_grain"`
	Rye          quantity.Percent `json:"rye"`
	Net          quantity.Percent `json:"dough_yield_net"`
	Gross        quantity.Percent `json:"dough_yield_gross"`
	Allergens    dough.Allergens  `json:"allergens"`
	Unstated     []string         `json:"allergens_not_stated"`
}

func readingOf(b dough.Batch) readData {
	wet := b.EffectiveHydration()
	effective, unknown := wet.Hydration, wet.Unknown
	net, _ := b.DoughYield().Net()
	gross, _ := b.DoughYield().Gross()
	return readData{
		b.Dough(), b.Flour(), b.Water(), b.Hydration(), effective, orNone(unknown), b.Prefermented(), b.SaltShare(), b.WholeGrain(), b.Rye(),
		net, gross, b.Allergens(), orNone(b.Unstated()),
	}
}

func orNone(s []string) []string { return append([]string{}, s...) }

type formulaAnswer struct {
	Format   string        `json:"format"`
	Name     string        `json:"name"`
	Pieces   int           `json:"pieces,omitempty"`
	Scaling  quantity.Mass `json:"scaling_weight"`
	Limiting string        `json:"limiting,omitempty"`
	Overall  []lineData    `json:"overall"`
	Builds   []buildData   `json:"builds"`
	Final    []lineData    `json:"final_dough"`
	Weighed  quantity.Mass `json:"weighed_dough"`
	Reading  readData      `json:"reading"`
	Cautions []cautionData `json:"cautions"`
}

func formulaData(name string, b dough.Batch, w dough.Weighing) formulaAnswer {
	out := formulaAnswer{
		Format: "maslin formula 1", Name: name, Pieces: b.Pieces(), Scaling: b.ScalingWeight(), Limiting: b.Limiting(),
		Overall: linesData(b.Overall()), Builds: []buildData{}, Final: weighedData(w.Lines), Weighed: w.Dough, Reading: readingOf(b), Cautions: cautionsData(b.Cautions()),
	}
	for _, build := range w.Builds {
		out.Builds = append(out.Builds, buildData{build.Build.Name, weighedData(build.Lines), build.Made, build.Used})
	}
	return out
}

type extraData struct {
	Name string        `json:"name"`
	Mass quantity.Mass `json:"mass"`
}

type mendAnswer struct {
	Format  string        `json:"format"`
	Name    string        `json:"name"`
	Extra   []extraData   `json:"extra"`
	Restore dough.Restore `json:"restore"`
	Add     []lineData    `json:"add"`
	Planned readData      `json:"planned"`
	Became  readData      `json:"became"`
	After   readData      `json:"after"`
}

func mendData(name string, f formulaFlags, b dough.Batch, r dough.Repair) mendAnswer {
	out := mendAnswer{
		Format: "maslin formula repair 1", Name: name, Extra: []extraData{}, Restore: f.restore, Add: linesData(r.Add),
		Planned: readingOf(b), Became: readingOf(r.Became), After: readingOf(r.After),
	}
	for _, e := range f.extra {
		out.Extra = append(out.Extra, extraData(e))
	}
	return out
}

type cautionData struct {
	Subject string `json:"subject"`
	Text    string `json:"text"`
	Source  string `json:"source,omitempty"`
}

func cautionsData(all []working.Caution) []cautionData {
	out := []cautionData{}
	for _, c := range all {
		source := ""
		if !c.Source.IsZero() {
			source = c.Source.String()
		}
		out = append(out, cautionData{string(c.Subject), c.Text.String(), source})
	}
	return out
}

// rangeData is a range of times, with the probability it claims.
type rangeData struct {
	Early       quantity.Elapsed `json:"early"`
	Likely      quantity.Elapsed `json:"likely"`
	Late        quantity.Elapsed `json:"late"`
	Probability quantity.Percent `json:"probability"`
}

func rangeOf(r quantity.TimeRange) *rangeData {
	whole := func(d time.Duration) quantity.Elapsed { return quantity.Elapsed(d.Round(time.Second)) }
	return &rangeData{whole(r.Early), whole(r.Likely), whole(r.Late), r.Probability}
}
