package bakeday

import (
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule"
)

// PlanFormat names the shape of [PlanData]; the number grows when a field changes its meaning.
const PlanFormat = "maslin plan 2"

// PlanData is a day as plain data, for a page, a screen or another program. Quantities marshal as text
// with their units, durations as "4h30m", instants as RFC 3339 with the offset of the kitchen's zone.
type PlanData struct {
	Format   string    `json:"format"`
	Name     string    `json:"name"`
	Zone     string    `json:"zone"`
	Now      time.Time `json:"now"`
	Wanted   time.Time `json:"wanted"`
	Possible bool      `json:"possible"`
	// TimeRanOut says that the time for planning ran out: what stands here is right, but not all that could be known.
	TimeRanOut bool `json:"time_ran_out,omitempty"`
	// Survives is the share of the range of dough and proof, taken around what is likely, over which the timetable is
	// proven to hold.
	Survives quantity.Percent `json:"survives"`

	Weigh   []WeighList `json:"weigh"`
	Formula FormulaData `json:"formula"`
	Water   WaterData   `json:"water"`
	Mixer   *MixerData  `json:"mixer,omitempty"`
	Levain  *LevainData `json:"levain,omitempty"`
	// Preferments are those of which the clock of their yeast says when they are ripe.
	Preferments []RipePreferment    `json:"preferments,omitempty"`
	Bulk        BulkData            `json:"bulk"`
	Retard      *RetardData         `json:"retard,omitempty"`
	Proof       *quantity.TimeRange `json:"proof,omitempty"`
	Oven        OvenData            `json:"oven"`
	Steps       []StepData          `json:"steps"`
	Why         *WhyData            `json:"why_not,omitempty"`
	Missed      *Missed             `json:"missed,omitempty"`
	Notes       []working.Message   `json:"notes"`
	Cautions    []CautionText       `json:"cautions"`
}

// toMinutes is a range for data, to the minute.
func toMinutes(r quantity.TimeRange) quantity.TimeRange {
	r.Early, r.Likely, r.Late = r.Early.Round(time.Minute), r.Likely.Round(time.Minute), r.Late.Round(time.Minute)
	return r
}

// WeighList is one bowl: its lines add up exactly to Total, and Total + Residue is what the formula asks for.
type WeighList struct {
	Name    string        `json:"name"`
	Lines   []WeighLine   `json:"lines"`
	Total   quantity.Mass `json:"total"`
	Residue quantity.Mass `json:"residue"`
	Batches int           `json:"batches"`
	// Says is what to do with it, such as how hot the water of a scald is.
	Says []working.Message `json:"says,omitempty"`
}

// WeighLine is one ingredient. Portions are its parts for each batch, when there are several.
type WeighLine struct {
	Name     string           `json:"name"`
	Percent  quantity.Percent `json:"percent"` // of the flour on the list
	Mass     quantity.Mass    `json:"mass"`
	Portions []quantity.Mass  `json:"portions,omitempty"`
	// At is when it goes into the dough, where that is not at mixing; Fold is at which fold.
	At   schedule.StepKind `json:"at,omitzero"`
	Fold int               `json:"fold,omitzero"`
}

// FormulaData is the dough as a whole.
type FormulaData struct {
	Dough     quantity.Mass    `json:"dough"`
	Flour     quantity.Mass    `json:"flour"`
	Hydration quantity.Percent `json:"hydration"`
	// the water in milk, egg and the like included, as far as it is stated
	Effective    quantity.Percent `json:"effective_hydration"`
	Prefermented quantity.Percent `json:"prefermented_flour"`
	Salt         quantity.Percent `json:"salt"`
	WholeGrain   quantity.Percent `json:"whole_grain"`
	Rye          quantity.Percent `json:"rye"`
	Pieces       int              `json:"pieces"`
	Scaling      quantity.Mass    `json:"scaling_weight"`
	Divide       quantity.Mass    `json:"divide"` // dough for one piece, without what is added at shaping or laid on top
	Allergens    string           `json:"allergens"`
}

// WaterData is the water to pour for one batch.
type WaterData struct {
	Temperature quantity.Temperature      `json:"temperature"`
	Pour        quantity.Mass             `json:"pour"`              // ice included
	Portions    []quantity.Mass           `json:"portions"`          // of each batch, as it is weighed
	Liquids     []string                  `json:"liquids,omitempty"` // what is poured when there is no water: milk, egg
	Ice         quantity.Mass             `json:"ice"`
	Feasible    bool                      `json:"feasible"`
	Target      quantity.Temperature      `json:"dough_temperature"`
	Warming     quantity.TemperatureDelta `json:"warming"`
	Guess       bool                      `json:"warming_is_a_guide_value"`
	Factors     []FactorData              `json:"factors"`
	Remedies    []working.Message         `json:"remedies,omitempty"`
}

// FactorData is one temperature that the water answers to.
type FactorData struct {
	Name        string               `json:"name"`
	Temperature quantity.Temperature `json:"temperature"`
}

// MixerData is whether the batch fits.
type MixerData struct {
	Kind     mixing.MixerKind  `json:"kind"`
	Verdict  mixing.Fullness   `json:"verdict"`
	Says     working.Message   `json:"says"`
	MostLow  quantity.Mass     `json:"most_low"`
	MostHigh quantity.Mass     `json:"most_high"`
	Batches  int               `json:"batches"`
	Each     quantity.Mass     `json:"each"`
	Kneading []working.Message `json:"kneading,omitempty"`
	Ready    []working.Message `json:"ready,omitempty"`
}

// LevainData is the levain after feeding.
type LevainData struct {
	Culture quantity.Mass      `json:"culture"`
	Short   quantity.Mass      `json:"culture_missing"`
	Left    quantity.Mass      `json:"culture_left"` // of what is at hand, to feed and keep
	Ripe    quantity.TimeRange `json:"ripe"`
	Peak    quantity.TimeRange `json:"peak"`
	Until   quantity.TimeRange `json:"usable_until"`
}

// RipePreferment is when a preferment is ripe after it was made.
type RipePreferment struct {
	Name  string             `json:"name"`
	Ripe  quantity.TimeRange `json:"ripe"`
	Peak  quantity.TimeRange `json:"peak"`
	Until quantity.TimeRange `json:"usable_until"`
}

// BulkData is the dough's clock until it is shaped.
type BulkData struct {
	Box     quantity.Temperature             `json:"box,omitzero"` // of the proofing box; missing: in the room
	Ready   quantity.TimeRange               `json:"ready"`
	ShapeAt quantity.Percent                 `json:"shape_at_rise"`
	Total   quantity.Range[quantity.Percent] `json:"rise_in_oven"`
	Start   quantity.Temperature             `json:"dough_at_start"`
	End     quantity.Temperature             `json:"dough_at_end"`
	RestsOn []working.Message                `json:"rests_on"`
	Curve   []ferment.RisePoint              `json:"curve"`
}

// RetardData is the rest in the refrigerator.
type RetardData struct {
	For     quantity.Elapsed     `json:"for"`
	Into    quantity.Temperature `json:"refrigerator"`
	DoughIn quantity.Temperature `json:"dough_going_in"`
	DoughAt quantity.Temperature `json:"dough_coming_out"`
	WarmUp  quantity.Elapsed     `json:"warm_up"`
	// IntoOven is how warm the dough goes into the oven after it.
	IntoOven quantity.Temperature `json:"dough_into_oven"`
	// Undivided: the dough is divided and shaped after the cold, and WarmUp is its final proof.
	Undivided bool `json:"undivided,omitzero"`
}

// OvenData is the bake.
type OvenData struct {
	Temperature quantity.Temperature `json:"temperature"`
	Then        quantity.Temperature `json:"then"`  // when the lid comes off or the steam is let out
	Takes       quantity.TimeRange   `json:"takes"` // one round
	// how long it bakes is a guide value, and not the baker's own
	GuideTime   bool                             `json:"guide_time"`
	Preheat     quantity.Elapsed                 `json:"preheat"`
	Covered     quantity.Elapsed                 `json:"covered"`
	Uncovered   quantity.Elapsed                 `json:"uncovered"`
	Reheat      quantity.Elapsed                 `json:"reheat"`
	Rounds      int                              `json:"rounds"`
	Each        int                              `json:"loaves_in_a_round"`
	Decks       int                              `json:"decks"` // of the oven that a round takes
	Pots        int                              `json:"pots"`  // covered pots that a round takes
	Core        quantity.Temperature             `json:"core,omitzero"`
	CoreFrom    quantity.Temperature             `json:"core_from,omitzero"`
	CoreTo      quantity.Temperature             `json:"core_to,omitzero"`
	Boiling     quantity.Temperature             `json:"water_boils,omitzero"`
	MinimumLoss quantity.Percent                 `json:"minimum_loss"`
	Loss        quantity.Percent                 `json:"loss"`
	UsualLoss   quantity.Range[quantity.Percent] `json:"usual_loss"`
	Baked       quantity.Mass                    `json:"baked"`
	Cooling     quantity.TimeRange               `json:"cooling"`
	Slice       quantity.Temperature             `json:"slice_at"`
	Rest        quantity.Elapsed                 `json:"rest"`
}

// StepData is one line of the timetable: what is done, for programs in ID, kind and number, for people in
// the name.
type StepData struct {
	ID     string            `json:"id"`
	Kind   schedule.StepKind `json:"kind"`
	Phase  bake.PhaseKind    `json:"phase,omitzero"`   // what is done at the oven, where it is tended
	Number int               `json:"number,omitempty"` // of how many alike: fold 2 of 4
	Of     int               `json:"of,omitempty"`
	Bread  string            `json:"bread"`
	Thing  string            `json:"thing,omitempty"` // what is made or fed, as it is called on the lists to weigh
	Name   working.Message   `json:"name"`

	Start         time.Time         `json:"start"`
	End           time.Time         `json:"end"`
	EarliestStart time.Time         `json:"earliest_start"`
	LatestStart   time.Time         `json:"latest_start"`
	Hands         bool              `json:"hands"`
	Windows       []quantity.Window `json:"windows"` // when it may start, other steps giving way
	Slack         quantity.Elapsed  `json:"slack"`   // how much later it could start, other steps giving way
	Earlier       quantity.Elapsed  `json:"earlier"` // how much earlier it could start, other steps giving way
	LookFrom      *time.Time        `json:"look_from,omitempty"`
	LookTo        *time.Time        `json:"look_to,omitempty"`
	Takes         quantity.Elapsed  `json:"takes"`
	Adds          []WeighLine       `json:"adds,omitempty"`  // what goes into or onto the dough in this step, mixing apart
	Notes         []string          `json:"notes,omitempty"` // the baker's own
}

// WhyData says why there is no timetable. Short, by how much the wanted time is missed, is 0 when that is not proven.
type WhyData struct {
	Reason Reason           `json:"reason"`
	Says   working.Message  `json:"says"`
	Short  quantity.Elapsed `json:"short"`
	Rules  []RuleData       `json:"rules"`
	// Remedies are at most five changes of which each by itself makes the wanted time possible, the smallest first.
	Remedies []RuleData `json:"remedies"`
	// Together are changes of which all are needed, where no one of them is enough.
	Together []RuleData `json:"together,omitempty"`
	InOrder  bool       `json:"in_order"` // beside the rules, each step follows the one before
	Earlier  *time.Time `json:"nearest_earlier,omitempty"`
	Later    *time.Time `json:"nearest_later,omitempty"`
}

// RuleData is one rule that is in the way, and the least change of it alone that would help.
type RuleData struct {
	Rule   schedule.Rule    `json:"rule"`
	Step   string           `json:"step,omitempty"`   // the ID of the step it is about
	Other  string           `json:"other,omitempty"`  // the ID of the other step, or of what is shared
	Wanted bool             `json:"wanted,omitempty"` // the time the bread is wanted
	Words  working.Message  `json:"words"`
	Easing schedule.Easing  `json:"easing,omitempty"` // which way it would have to give
	Change quantity.Elapsed `json:"change,omitempty"` // by how much
	Remedy working.Message  `json:"remedy,omitzero"`
}

// CautionText is a caution with its source.
type CautionText struct {
	Subject string          `json:"subject"`
	Text    working.Message `json:"text"`
	Source  string          `json:"source"`
}
