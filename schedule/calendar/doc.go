// Package calendar answers: how do I put the timetable into the calendar on my phone?
//
// It writes iCalendar files (RFC 5545, 2009) and is strict about what it writes, because the
// programs that read them differ in what they forgive.
//
//	A file with events and alarms            File.Encode
//	The stable identifier of a step          UID
//
// # What it promises
//
//   - Lines end in CRLF and are at most 75 octets long; a fold never cuts a character.
//   - All instants are written in UTC, so no time zone definition is needed and none can be
//     misread; the calendar program shows them in the zone of the person who looks.
//   - Every event has exactly one UID, DTSTAMP and SEQUENCE. The UID depends only on the plan
//     and the step: when a changed plan is exported again with a higher Sequence, calendar
//     programs move the events they have and do not add a second set.
//   - The UID is a UUID made by hashing. It holds no name, address or machine, as RFC 7986
//     (2016) section 5.3 demands; give plans identifiers that say nothing about a person, because a
//     short guessable one can be found by trying.
//   - Text stays text: whatever stands in the name of a loaf, no line of the file begins or
//     ends because of it.
//   - The same input gives the same bytes. The clock is the caller's: Stamp is given.
//
// # Characters that the format does not allow
//
// TEXT values may not hold control characters (RFC 5545, section 3.3.11). They are shown, not
// dropped and not refused, since a stray byte in a loaf's name should not cost the baker the
// timetable: line breaks of every kind (CR LF, CR, LF, U+0085, U+2028, U+2029) are written as
// the escape \n, a tab stays, the other ASCII control characters become their Unicode picture
// (U+0007 becomes ␇), and the remaining ones, as well as bytes that are not UTF-8, become
// U+FFFD (�). So do the marks that turn the direction of writing (Unicode's Bidi_Control), which the format allows:
// they would turn what stands behind the name in a list of appointments. Identifiers (Plan, Step) are not shown to
// anyone, and there the same characters
// are refused.
//
// # Limits
//
// Display alarms only; no recurrence, no attendees, no local times. Reading is not offered.
package calendar
