package main

import (
	"example.org/honestplate/examples/published"
	"example.org/honestplate/testdata"
)

// evidence is every comparison carried out.
type evidence struct {
	results []published.Result
	sets    []published.Set
	known   []published.KnownMiss
}

func gather() (evidence, error) {
	var e evidence
	var err error
	if e.known, err = published.KnownMisses(); err != nil {
		return evidence{}, err
	}
	for _, c := range published.All() {
		r, err := published.Run(c)
		if err != nil {
			return evidence{}, err
		}
		e.results = append(e.results, r)
		e.sets = append(e.sets, r.Sets()...)
	}
	return e, nil
}

// A count is what sets hold together.
type count struct {
	points, inside, read, memory, computed, assumed int
	origins                                         map[string]bool
}

// tally counts the sets that are meant.
func (e evidence) tally(meant func(published.Set) bool) count {
	c := count{origins: map[string]bool{}}
	for _, s := range e.sets {
		if !meant(s) {
			continue
		}
		for _, p := range s.Points {
			c.points++
			c.origins[p.Origin] = true
			if p.Inside() {
				c.inside++
			}
			if p.Assumed != "" {
				c.assumed++
			}
			switch p.Known {
			case "read":
				c.read++
			case "memory":
				c.memory++
			case "computed":
				c.computed++
			}
		}
	}
	return c
}

// values are measured values, orders the measured that are good for order only, and
// courses the readings of timed measurements among the values.
func values(s published.Set) bool  { return s.Kind == testdata.Measured && !s.Order }
func orders(s published.Set) bool  { return s.Kind == testdata.Measured && s.Order }
func courses(s published.Set) bool { return values(s) && s.Mark != "" }

// still are measured values that belong to no course.
func still(s published.Set) bool { return values(s) && s.Mark == "" }

func ofKind(kind string) func(published.Set) bool {
	return func(s published.Set) bool { return s.Kind == kind }
}

// why is the sentence of a set that is known to miss.
func (e evidence) why(s published.Set) string {
	for _, m := range e.known {
		if m.Of(s) {
			return m.Why
		}
	}
	return ""
}

// judged counts the sets with the model's own band, and those that miss.
func (e evidence) judged() (sets, missing int) {
	for _, s := range e.sets {
		if s.Judged() {
			sets++
			if len(s.Misses()) > 0 {
				missing++
			}
		}
	}
	return sets, missing
}

// courseShare is the mean over timed measurements with a clock's band of the share of
// their readings that lie inside, and how many measurements these are.
func (e evidence) courseShare() (share float64, experiments int) {
	inside, all := map[string]int{}, map[string]int{}
	var tables []string
	for _, s := range e.sets {
		if !courses(s) || !s.Judged() {
			continue
		}
		if all[s.Table] == 0 {
			tables = append(tables, s.Table)
		}
		all[s.Table] += len(s.Points)
		inside[s.Table] += len(s.Points) - s.Outside
	}
	for _, t := range tables {
		share += float64(inside[t]) / float64(all[t])
	}
	return share / float64(max(1, len(tables))), len(tables)
}
