// Package schedule answers: when do I do what, and what gives when it does not fit?
//
// A [Problem] is what a baker would pin to the wall: the steps with how long they take, what
// must follow what and how soon, when the bread is wanted, when the baker is asleep or away,
// and what is shared (an oven, a mixer, places in the refrigerator, pairs of hands). The
// answers are a [Timetable] and, when there is none, a [Conflict] in the user's own words. Steps and resources
// have IDs, by which everything refers to them, and a kind; their names are only for people.
//
//	What is the latest I can do everything?          Problem.Latest
//	What is the earliest everything could happen?    Problem.Earliest
//	What is the best plan, by my preferences?        Problem.Best
//	When may each step start, how much slack is there? Timetable.Steps
//	Is there any timetable at all?                   Problem.Possible
//	When does everything happen, and nothing else?   Problem.LatestTimes, Timetable.Described
//	Why does it not fit, and what would help?        Timetable.Conflict, Conflict.Remedies, Conflict.Together
//	Of what is there too little, from when to when?  Conflict.Shortage
//	Where is it tightest, when only the order fails? Conflict.Tightest
//	Which time near the wanted one would work?       Timetable.Before, Timetable.After
//	What if the dough is early or late?              Timetable.Robust
//	I am late: what now?                             Problem.Midway, Changes
//	Is a given timetable right?                      Problem.Check
//
// The calls: Problem.Latest, Problem.Earliest and Problem.Best take a context and return
// (Timetable, error); the error is only for malformed input, all problems at once.
//
// # Planning backward
//
// Bread is planned from the end. Lunch is at 12:30; the loaves need two hours to cool, so they
// leave the oven by 10:30; they bake for 50 minutes and the pots heat for 30, so the oven is
// lit by 09:10. Each of these times is the latest at which a step may happen, and it follows
// from the step after it by one subtraction. Going back further the plan meets the night: the
// dough cannot be shaped at 03:00 because the baker sleeps, so shaping moves back to the last
// moment before bed, and the cold retard stretches over the night. Where a step may stretch
// (a retard of 8 to 24 hours) the subtraction has two results, and the step before it has a
// span of possible times instead of one.
//
// This package does the same sums for every step at once. Each step has a start and an end;
// each rule is a difference between two of these times that may not be too small or too
// large; each absence cuts a hole into the times allowed. Pulling on all rules until nothing
// moves any more gives for every step its earliest and its latest time. The latest times
// together are themselves a plan: the backward plan. If some step is left with no time at
// all, no plan exists, and the rules that did the pulling are the reason.
//
// # Standing assumptions
//
//   - Times are whole units of Problem.Grid (one minute unless given) after Problem.Anchor.
//     Nothing is rounded: a time or duration that is not a whole number of units is refused.
//   - Instants are absolute. This package does no time zones: give it spans of instants
//     (package schedule/wallclock expands daily habits into them).
//   - A step that needs a resource keeps it from start to end without a break, and lies wholly
//     outside the resource's closed spans.
//   - The amount of a resource that a step needs does not change during the step.
//
// # What is proven and what is not
//
// Without shortage of a shared resource all answers are exact. With shared resources the
// problem is NP-hard (it contains resource-constrained project scheduling); the search is a
// branch and bound which says whether its answer is proven optimal, or how far it can be from
// the optimum at most. It is deterministic: the same problem gives the same timetable.
//
// # How long it takes
//
// The least cost of a day of n breads, in processor time on two shared cores (BenchmarkGrowth; the kitchens are
// testdata/kitchens/home-of-n and shop-of-n): at home one load each in one oven over two days, around nights and work;
// in a shop two loads each on two decks (three from seven breads on, four from ten) for one morning. Each bar is ten
// times as long as one a third as long. Where ten seconds end first, the gap that is left is proven.
//
//	breads  at home                                  in a shop
//	1         1 ms  |#
//	2         3 ms  |##
//	3        15 ms  |####
//	4        31 ms  |#####                             0.2 s  |########
//	5       0.5 s   |##########                        0.2 s  |########
//	6       1.2 s   |############                      2.6 s  |##############
//	7       1.6 s   |#############                     0.5 s  |##########
//	8       none, 0.3 s |#########                     gap 1.6 % |#################...
//	9                                                  gap 1.7 % |#################...
//	10                                                 gap 1.1 % |#################...
//	11                                                 gap 1.0 % |#################...
//	12                                                 gap 1.1 % |#################...
//
// Engines of other kinds, on the same machine at another time: at home, HiGHS on a time-indexed model needs 100 s
// for five breads and more than 110 s for six, and has the same timetable of seven, not proven; Chuffed on a
// constraint model proves in 1.8 s that eight cannot be. In the shop HiGHS proves six, eight and nine breads in
// 15.6, 18 and 22 s: at eight and nine it is ahead of this package, which after 5,800 nodes has the best timetable
// of nine and one 0.4 % above the best of eight, with bounds of 2199 of 2236 and 1822 of 1845 points that hardly
// move any more. More of the same does not move them: given the least cost of eight breads itself as the limit, 1,300
// trials of the times of each step and the orders of each pair at the root, each with its own prices, take away a
// seventh of the times and raise the bound from 1822 to 1824, and 10,900 nodes after them to 1825. Before the order of
// an oven's loads was kept exact, and shapings for which two of three bakers are wanted counted as one at a time, the
// same bounds at home stood at 1159 of 1285 (six breads) and 1390 of 1526 (seven), in the shop at 2129 (nine) and 2518
// (twelve, 2611 now). Of twelve projects of thirty jobs (soonest end) ten are proven, each within 1.4 s; the other two
// have the best known ends, 58 and 92, after ten seconds, with bounds of 40 and 52.
//
// The kitchen of five doughs (73 steps, optimum 1125 points) is proven in 0.2 s, three doughs (58 steps) in 0.01 s.
// Latest and Earliest without shortage are immediate: the consistency of 60 events with the earliest and latest time
// of each takes 0.2 ms and the minimal conflict of 27 rules among them 0.3 to 0.5 ms (BenchmarkSixtyEvents); one
// dough over 48 hours by the minute 2 ms; a thousand steps in a row 45 ms. The minimal conflict of two, five and ten
// doughs that share an oven takes 0.1, 0.3 and 0.7 s, remedies and nearest times included; that of two allocates 17
// MB in all. Why eight breads cannot be at home takes 2.3 s: the loads of all eight fill the oven for 8h40m of the
// 8h55m of the second day in which they must lie, and what else the baker has to do leaves no order for them. One more
// pair of hands or one more oven would do, and so would an oven that may be hot for longer. Of the 276 rules 191 are
// in the proof. Without any one of the eight breads there is a timetable, so that the loads of all are in every such
// set; leaving out each rule in turn, with a search for each, takes nine seconds and spares three of them.
//
// Random days of 6 to 12 breads have the least cost that HiGHS finds on an integer program that is written from their
// data (testdata/days.csv).
//
// # When the time runs out
//
// Every call takes a context and stops soon after it ends, whatever the size of the problem: all loops count their
// work and look at the context after a bounded amount of it. Over 10 to 60 doughs and 300 to 2000 contending steps,
// cut off while searching, proving or explaining, the answer came at most 20 ms of processor time after the end
// (BenchmarkOverrun; BenchmarkDeadline gives the time on the clock). The answer is then what is known: Feasible,
// with the best timetable so far, its proven Bound and its Gap; Infeasible, with a conflict that may be larger than
// needed (Conflict.Minimal is false) and remedies not looked into, with Timetable.TimeRanOut set; or Unknown, with
// the context's error. A thousand steps that all contend for the same hands and oven are beyond what the search can
// time in a few seconds; five hundred take five to ten.
//
// # Sources
//
// Networks of differences: Dechter, Meiri and Pearl, "Temporal constraint networks",
// Artificial Intelligence 49 (1991). Sets of intervals on single times: Kumar, "On the
// tractability of restricted disjunctive temporal problems", ICAPS 2005. Minimum and maximum
// lags with resources: Bartusch, Möhring and Radermacher, "Scheduling project networks with
// resource constraints and time windows", Annals of Operations Research 16 (1988).
package schedule
