package ferment

import "example.org/maslin/internal/enum"

// KneadedBy tells doughs apart that leave the bench in different shape: a culture may be given a pace of its own for
// each.
type KneadedBy int

// The ways of kneading.
const (
	KneadingUnstated KneadedBy = iota
	ByHand
	ByMachine
)

var kneadings = enum.Of[KneadedBy]("way of kneading", "", "by hand", "by machine")

// String names the way; it is empty when it is not stated.
func (k KneadedBy) String() string { return kneadings.String(k) }

// MarshalText implements encoding.TextMarshaler.
func (k KneadedBy) MarshalText() ([]byte, error) { return kneadings.Marshal(k) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (k *KneadedBy) UnmarshalText(text []byte) error { return kneadings.Unmarshal(k, text) }
