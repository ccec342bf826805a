// Package pupil does printed exercises: it reads a question as a class does, in English or in German, in metric or in
// US units, and reckons the answer and what somebody gets who makes one of the usual mistakes. It knows nothing of how
// the exercises are made, and imports nothing of the library.
package pupil
