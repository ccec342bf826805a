package planner

// ruleSet is a set of rules.
type ruleSet []uint64

func (r ruleSet) add(rule int32) {
	if rule >= 0 {
		r[rule>>6] |= 1 << (rule & 63)
	}
}

func (r ruleSet) join(o ruleSet) {
	for k, x := range o {
		r[k] |= x
	}
}

// list is the set in order.
func (r ruleSet) list() (rules []int) {
	for k := range 64 * len(r) {
		if r[k>>6]>>(k&63)&1 == 1 {
			rules = append(rules, k)
		}
	}
	return rules
}
