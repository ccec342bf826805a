package working

// A Step is one line of a derivation.
//
// Numbers is Formula with the numbers put in, units left off, written with + − × ÷ ^ ( ) and the
// functions exp, ln, sqrt, log10, sin, cos, tan, abs, min, max, floor, ceil; evaluating it gives Value. A step whose
// value cannot be written so (a table look-up, the end of an iteration) leaves Numbers empty and
// says in Note how the value was found.
type Step struct {
	Name    string    `json:"name"`           // what the step finds: "water temperature"
	Symbol  string    `json:"symbol"`         // "T_water"
	Formula string    `json:"formula"`        // "T + (T − T_flour) + (T − T_room) − F"
	Where   []Binding `json:"where,omitzero"` // the symbols of Formula, in order of appearance
	Numbers string    `json:"numbers"`        // "26 + (26 − 21) + (26 − 23) − 12"
	Value   string    `json:"value"`          // "22 °C"
	Exact   bool      `json:"exact"`          // Value is exact; otherwise it is rounded to the digits printed
	// Tolerance is how far evaluating Numbers may lie from Value, beyond the rounding of Value
	// itself, because the printed inputs are rounded too; in units of Value.
	Tolerance float64 `json:"tolerance,omitzero"`
	Note      string  `json:"note,omitzero"` // "rounded half to even to 0.001 °C", or a warning about the model's range
	Source    Source  `json:"source,omitzero"`

	finding *Finding // of a step made by [Derivation.Find]
	result  *binding
	raw     Value // of the expression
}

// Working is the derivation of one result: a title and its steps, in order.
type Working struct {
	Title string
	Steps []Step
	title Message
}

// Append returns the working with the steps of others after its own.
func (w Working) Append(others ...Working) Working {
	steps := append([]Step(nil), w.Steps...)
	for _, o := range others {
		steps = append(steps, o.Steps...)
	}
	return Working{Title: w.Title, Steps: steps, title: w.title}
}

// Sources lists each source once, in order of first use.
func (w Working) Sources() []Source {
	var out []Source
	seen := map[Source]bool{}
	for _, s := range w.Steps {
		if !s.Source.IsZero() && !seen[s.Source] {
			seen[s.Source] = true
			out = append(out, s.Source)
		}
	}
	return out
}
