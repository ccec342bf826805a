package exercise

import "example.org/maslin/internal/enum"

// Topic is what an exercise is about.
type Topic int

// The topics.
const (
	// Percentages are baker's percentages and scaling a formula.
	Percentages Topic = iota + 1
	// Levain is levain in a formula, and its build.
	Levain
	// Water is water temperature, friction and ice.
	Water
	// Rising is dose and time.
	Rising
	// Altitude is boiling point and doneness at altitude.
	Altitude
	// Loss is bake loss and scaling weight.
	Loss
	// Cooling is when a loaf can be sliced.
	Cooling
	// Backward is planning a bake from its end.
	Backward
)

var topics = enum.Of[Topic]("topic", "", "percentages", "levain", "water", "rising", "altitude", "loss", "cooling",
	"backward")

// String names the topic.
func (t Topic) String() string { return topics.String(t) }

// IsValid reports whether the topic is given and known.
func (t Topic) IsValid() bool { return topics.Has(t) }

// MarshalText implements encoding.TextMarshaler.
func (t Topic) MarshalText() ([]byte, error) { return topics.Marshal(t) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (t *Topic) UnmarshalText(text []byte) error { return topics.Unmarshal(t, text) }

// Difficulty is how much an exercise asks for.
type Difficulty int

// The difficulties. The zero value is OneStep.
const (
	// OneStep is one line of arithmetic.
	OneStep Difficulty = iota
	// Usual is what a baker reckons on an ordinary day.
	Usual
	// Hard has a trap in it.
	Hard
)

var difficulties = enum.Of[Difficulty]("difficulty", "one step", "usual", "hard")

// String names the difficulty.
func (d Difficulty) String() string { return difficulties.String(d) }

// IsValid reports whether the difficulty is known.
func (d Difficulty) IsValid() bool { return difficulties.Has(d) }

// MarshalText implements encoding.TextMarshaler.
func (d Difficulty) MarshalText() ([]byte, error) { return difficulties.Marshal(d) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (d *Difficulty) UnmarshalText(text []byte) error { return difficulties.Unmarshal(d, text) }
