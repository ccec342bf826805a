// Package oneway marks answers that go out as JSON and do not come back.
//
// An answer keeps its question to itself, for its report and its derivation; what it found is in its fields. Read from
// its fields alone it would tell something else, and nobody would notice. Answers that are kept between runs read
// themselves and do not use this package; all others embed [Answer], and a law of the house finds those that forget it.
package oneway
