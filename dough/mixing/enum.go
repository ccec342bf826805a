package mixing

import "example.org/maslin/internal/enum"

// The words of the enumerations of this package, in files as in Go.
var (
	mixerKinds = enum.Of[MixerKind]("way of mixing", "", "hand", "planetary", "spiral", "fork", "processor")
	doughKinds = enum.Of[DoughKind]("kind of dough", "wheat", "whole grain", "rye", "spelt", "pizza", "enriched",
		"mixed rye", "gluten-free")
	substances = enum.Of[Substance]("substance", "", "flour", "water", "levain", "milk", "egg", "butter", "oil",
		"sugar", "salt")
	finds = enum.Of[Find]("unknown of a balance", "", "dough", "water", "ice", "flour")
	ways  = enum.Of[Way](
		"way to the target", "", "ice", "chilled water", "chilled flour", "warm flour", "warm levain",
		"warm flour and levain",
		"warm part", "shorter mixing", "other target",
	)
	factorKinds = enum.Of[FactorKind]("factor", "", "flour", "room", "levain", "bowl")
	fullnesses  = enum.Of[Fullness]("fullness of a bowl", "unknown", "comfortable", "likely to fit", "tight",
		"too much", "too little")
	limitBases = enum.Of[LimitBasis](
		"basis of a limit", "", "manual of the machine", "charts", "charts of other mixers", "household rule",
		"common practice",
	)
	kneadingSteps = enum.Of[KneadingStep]("step of kneading", "", "mix", "knead", "knead the fat in")
	windowpanes   = enum.Of[WindowpaneGoal]("windowpane", "", "none", "holds but tears", "transparent")
	clearings     = enum.Of[ClearingStep](
		"way to a dough that clears the bowl", "", "leave it", "knead on", "scrape and rest", "add flour",
		"stop and fold", "cool it",
	)
	bases = enum.Of[WarmingBasis]("basis of a warming", "", "guide value", "given", "learned")
)

// String names the kind: "planetary".
func (k MixerKind) String() string { return mixerKinds.String(k) }

// IsValid reports whether the kind is given and known.
func (k MixerKind) IsValid() bool { return mixerKinds.Has(k) }

// MarshalText implements encoding.TextMarshaler: "planetary".
func (k MixerKind) MarshalText() ([]byte, error) { return mixerKinds.Marshal(k) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what String prints.
func (k *MixerKind) UnmarshalText(text []byte) error { return mixerKinds.Unmarshal(k, text) }

// String names the kind: "whole grain".
func (k DoughKind) String() string { return doughKinds.String(k) }

// IsValid reports whether the kind is known.
func (k DoughKind) IsValid() bool { return doughKinds.Has(k) }

// MarshalText implements encoding.TextMarshaler: "whole grain".
func (k DoughKind) MarshalText() ([]byte, error) { return doughKinds.Marshal(k) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what String prints.
func (k *DoughKind) UnmarshalText(text []byte) error { return doughKinds.Unmarshal(k, text) }

// String names the substance: "flour".
func (s Substance) String() string { return substances.String(s) }

// IsValid reports whether the substance is given and known.
func (s Substance) IsValid() bool { return substances.Has(s) }

// MarshalText implements encoding.TextMarshaler: "flour".
func (s Substance) MarshalText() ([]byte, error) { return substances.Marshal(s) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what String prints.
func (s *Substance) UnmarshalText(text []byte) error { return substances.Unmarshal(s, text) }

// String names what is found: "water".
func (f Find) String() string { return finds.String(f) }

// IsValid reports whether something is found.
func (f Find) IsValid() bool { return finds.Has(f) }

// MarshalText implements encoding.TextMarshaler: "water".
func (f Find) MarshalText() ([]byte, error) { return finds.Marshal(f) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what String prints.
func (f *Find) UnmarshalText(text []byte) error { return finds.Unmarshal(f, text) }

// String names the way: "ice".
func (w Way) String() string { return ways.String(w) }

// IsValid reports whether the way is given and known.
func (w Way) IsValid() bool { return ways.Has(w) }

// MarshalText implements encoding.TextMarshaler: "ice".
func (w Way) MarshalText() ([]byte, error) { return ways.Marshal(w) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what String prints.
func (w *Way) UnmarshalText(text []byte) error { return ways.Unmarshal(w, text) }

// String names the factor: "flour".
func (k FactorKind) String() string { return factorKinds.String(k) }

// IsValid reports whether it is one of the usual ones.
func (k FactorKind) IsValid() bool { return factorKinds.Has(k) }

// MarshalText implements encoding.TextMarshaler: "flour".
func (k FactorKind) MarshalText() ([]byte, error) { return factorKinds.Marshal(k) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what String prints.
func (k *FactorKind) UnmarshalText(text []byte) error { return factorKinds.Unmarshal(k, text) }

// String names it: "too much".
func (f Fullness) String() string { return fullnesses.String(f) }

// IsValid reports whether it is a known one.
func (f Fullness) IsValid() bool { return fullnesses.Has(f) }

// MarshalText implements encoding.TextMarshaler: "too much".
func (f Fullness) MarshalText() ([]byte, error) { return fullnesses.Marshal(f) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what String prints.
func (f *Fullness) UnmarshalText(text []byte) error { return fullnesses.Unmarshal(f, text) }

// String names the basis: "guide value".
func (b WarmingBasis) String() string { return bases.String(b) }

// IsValid reports whether the basis is given and known.
func (b WarmingBasis) IsValid() bool { return bases.Has(b) }

// MarshalText implements encoding.TextMarshaler: "guide value".
func (b WarmingBasis) MarshalText() ([]byte, error) { return bases.Marshal(b) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what String prints.
func (b *WarmingBasis) UnmarshalText(text []byte) error { return bases.Unmarshal(b, text) }

// String names it: "charts".
func (b LimitBasis) String() string { return limitBases.String(b) }

// IsValid reports whether it is given and known.
func (b LimitBasis) IsValid() bool { return limitBases.Has(b) }

// MarshalText implements encoding.TextMarshaler: "charts".
func (b LimitBasis) MarshalText() ([]byte, error) { return limitBases.Marshal(b) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what String prints.
func (b *LimitBasis) UnmarshalText(text []byte) error { return limitBases.Unmarshal(b, text) }

// String names it: "knead".
func (s KneadingStep) String() string { return kneadingSteps.String(s) }

// IsValid reports whether it is given and known.
func (s KneadingStep) IsValid() bool { return kneadingSteps.Has(s) }

// MarshalText implements encoding.TextMarshaler: "knead".
func (s KneadingStep) MarshalText() ([]byte, error) { return kneadingSteps.Marshal(s) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what String prints.
func (s *KneadingStep) UnmarshalText(text []byte) error { return kneadingSteps.Unmarshal(s, text) }

// String names it: "transparent".
func (g WindowpaneGoal) String() string { return windowpanes.String(g) }

// IsValid reports whether it is given and known.
func (g WindowpaneGoal) IsValid() bool { return windowpanes.Has(g) }

// MarshalText implements encoding.TextMarshaler: "transparent".
func (g WindowpaneGoal) MarshalText() ([]byte, error) { return windowpanes.Marshal(g) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what String prints.
func (g *WindowpaneGoal) UnmarshalText(text []byte) error { return windowpanes.Unmarshal(g, text) }

// String names it: "scrape and rest".
func (s ClearingStep) String() string { return clearings.String(s) }

// IsValid reports whether it is given and known.
func (s ClearingStep) IsValid() bool { return clearings.Has(s) }

// MarshalText implements encoding.TextMarshaler: "scrape and rest".
func (s ClearingStep) MarshalText() ([]byte, error) { return clearings.Marshal(s) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what String prints.
func (s *ClearingStep) UnmarshalText(text []byte) error { return clearings.Unmarshal(s, text) }
