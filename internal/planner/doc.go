// Package planner solves timetables in whole numbers: networks of differences with holes in
// single steps, shared resources and piecewise linear costs. It knows nothing of clocks, doughs
// or words; package schedule translates.
//
// Event 0 is the origin, whose time is 0. Task i starts at event StartOf(i) and ends at EndOf(i).
// A problem is a [Net], or a [Shop], which is a network with shared pools; rules have numbers, of which an answer names
// those that matter.
//
//	Earliest and latest times, or which rules clash       Net.Earliest, Net.Latest, Net.Shrink
//	All times that an event may have                      Reach.Windows
//	The timetable of least cost                           Shop.Search
//	Is there any timetable?                               Shop.Possible, Shop.Any
//	Does some method see that there is none?              Shop.Refuted, Shop.Shortage
//	Where is a pool nearest to being short?               Shop.Tightest
//	A smallest set of rules without a timetable           Shop.ShortageRules, Shop.Core, Shop.Tighten
//	The least change that is enough                       Least, Prober.Feasible, Shop.Relaxed
//	The order at shared pools as differences              Shop.Orders
//	May the network be kept whatever nature chooses?      Net.Controllable
//
// # How a timetable is searched for
//
// In this order; each step names its file.
//
//  1. The network is closed (net.go): least solutions in both directions, holes included, by label correcting in
//     topological order (Bellman and Ford). No solution is a clash: the pushes around a cycle.
//  2. The model is built (model.go): events at fixed distances are merged; pairs of tasks that can never use a pool
//     together are found, and pools in which more than pairs can be short.
//  3. The state (state.go) has the bounds of every node and, in one matrix, all longest paths between them
//     (closure.go: Floyd and Warshall; incremental for each decision). Everything can be undone by a trail.
//  4. Propagation (state.go, pools.go), until nothing moves: bounds along arcs and across holes; pairs that have one
//     order left (disjunctive reasoning by bounds and by paths); what a pool is certain to be used for
//     (time-tabling). Once at each node: what must lie in a span needs more than there is (energetic reasoning), or
//     is more than fit into it one after the other (a dual feasible function); what needs more than half of a pool
//     counts as one at a time as well.
//  5. Two bounds. Without shortage (bound.go, envelope.go, flow.go): every cost replaced by its convex envelope,
//     then exact as the dual of a minimum cost flow, by successive shortest paths, repaired from node to node. With
//     shortage (prices.go): a price for each pool and stretch of time, and for each difference that a forest of the
//     network leaves out (Lagrangian relaxation, subgradient steps); the rest is exact, for any costs, by dynamic
//     programming on the forest (forest.go, reckon.go) and, for tasks that go one at a time, such as the loads of an
//     oven, over the sets of them that come first (turns.go, turnsreckon.go). Prices alone reach what the linear
//     relaxation over time slots does, which may do half of one load and half of another; with the order of the
//     loads kept exact the bound of six and seven breads at home rises from 1159 and 1390 to 1271 and 1520, of 1285
//     and 1526. Looked for once at length, then with a few steps at every node, from the prices of the node before.
//  6. Times that would cost as much as the best timetable are taken away (narrow.go), by the least cost of the
//     forest with each node at each of its times: reduced cost fixing.
//  7. Branching (choices.go, branch.go): on times in holes, bends of a cost, orders of a pair or of a smallest
//     overlapping set, each judged by what its ways do to the bound (strong branching); and, while the gap is wide,
//     on the times that differ most between the timetables seen while prices were looked for. The opposite of a way
//     tried is kept in the ways after it.
//  8. Order (frontier.go): the open node of lowest bound is next, and from it depth first for a stretch, so that the
//     bound rises and few states are made twice.
//  9. Timetables come from a quick dive, from large-neighborhood search that frees one bread, then two (improve.go),
//     and from the search itself.
//
// # Whether anything fits
//
// Where any timetable will do there is no bound to go by, and a learner answers (learn.go, learnsearch.go): it works on
// the events and rules as they are given, so that everything that follows knows the rules that it follows from. Bounds
// move along differences, of which those for the order of two tasks hold only while that order is decided
// (learnmove.go); pools say what they are certain to be used for, and whether what must lie in a span fits into it
// (learnspent.go). A failure is traced back to the one bound of the last decision from which it follows, with what was
// decided before; their opposite is kept as a clause (lazy clause generation: clauses over bounds, two watched in each,
// first unique implication point, restarts, variables moved to the front). A cycle of differences that cannot hold
// together is found as such, and not by pushing its events to the end of the day. A proof ends with the rules that it
// used (Shop.Proof), from which a smallest set is looked for. Where that stays too large to be read the times of each
// node are shaved from both ends by what propagation refutes (tight.go: singleton consistency on bounds), until the
// tasks that must share a span are seen to fill a pool nearly.
//
// It also proves the least time where one event alone costs, by asking for an earlier one until there is none
// (descend.go: destructive bounds); what was learned for one time holds for the next.
//
// # What was tried and did not pay
//
// The search by bounds, asked for any timetable, with the pair of least room and most failures first: eight breads
// at home took it 680 nodes and 1.6 s, where the learner fails 750 times in 0.3 s. Prices for each moment of the
// differences that the forest leaves out promise nothing: the linear relaxation that has them is at 1823, 2131 and
// 2518 points for eight, nine and twelve breads in a shop, and prices without them reach 1822, 2129 and 2518. Twelve
// shapings in turn, kept exact: the bound of twelve breads rises by 4 of 2604 for ten times the work and more, so
// that at most ten tasks are kept in turn. What is open: the bound of eight breads in a shop stands at 1822 of 1845
// after 6000 nodes; shaving the times of each node and trying the orders of each pair by the bound with prices, with
// the least cost as the limit, raises it to 1824. A learner that knows the cost, with failures of the bound
// explained, was not tried.
//
// # Infinities
//
// One for times (none, and −none for no upper limit), and one for costs and flows (endless); noBound, the greatest
// int64, says that no timetable is known yet.
//
// # What holds everywhere
//
// Every loop counts its work with a [Watch], so that a deadline holds whatever the size; what was cut short is [Unsure]
// and never a no. Sums are whole numbers; the only floats are the lengths of price steps, rounded after every
// operation, so that the same problem has the same answer on every machine. No clock is read.
package planner
