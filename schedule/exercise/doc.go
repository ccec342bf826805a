// Package exercise answers: what shall a class reckon today, what comes out, and what did somebody do who got
// something else?
//
// A [Task] is a topic, a seed and a difficulty. The same task is the same [Exercise] on every machine: a question,
// the answer with the tolerance that ordinary rounding needs, the derivation of it as the key, and the usual wrong
// answers with the mistake each comes from. Numbers are made backward from friendly ones, so that no time is lost
// on decimals. A [Paper] is several exercises: a worksheet, and a key apart from it.
//
// # From question to method
//
//	one exercise                            Task.Exercise
//	is this answer right?                   Exercise.Right
//	what was the mistake?                   Exercise.SlipOf
//	the worked key                          Exercise.Working
//	a worksheet and its key                 Paper.Exercises, Set.Worksheet, Set.Key
//	… for a printer that sets LaTeX         Set.WorksheetLaTeX, Set.KeyLaTeX
//
// # Standing assumptions
//
// The arithmetic is that of the rooms of the library; where a room answers the same question, the key is checked
// against its answer. Rules of thumb (1 °C of boiling point for each 300 m) are stated in the question.
//
// # Limits
//
// Exercises are for learning to reckon. They are no advice for a kitchen: the answers of the rooms carry ranges and
// cautions, these do not.
package exercise
