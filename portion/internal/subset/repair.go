package subset

import (
	"cmp"
	"slices"

	"example.org/honestplate/portion/internal/top"
)

// A move changes a set a little: one piece leaves and one joins, or one does either
// where the count is free.
type move struct {
	dw, cost int64 // change of mass; reduced score lost
	out, in  int   // positions; -1 for none
}

const (
	repairSide  = 200 // pieces on either side of a group's threshold that may move
	repairMoves = 50_000
	leastMoves  = 1000
	repairTries = 16 // partners tried for each move
	repairSteps = 200
)

// A nearSet is one close to the relaxed set, on its way into the window.
type nearSet struct {
	in   *instance
	x    *relaxation
	set  []bool
	sum  int64
	cost int64   // reduced score below the relaxed set's
	core [][]int // by group: the pieces nearest to its threshold, on either side
}

// repair looks for a permitted set near the relaxed one: single moves as long as
// they lead towards the window, then the best of many pairs of moves. Pairs make so
// many totals that one is mostly inside. It proves nothing and is used where the
// search ended with empty hands.
func (in *instance) repair(x *relaxation) solution {
	s := &nearSet{in: in, x: x, set: slices.Clone(x.base), sum: x.sum}
	s.fill()
	s.nearest()
	for range repairSteps {
		best, found := move{}, false
		for _, m := range s.moves() {
			in.work++
			a, b := in.outside(s.sum+m.dw), in.outside(s.sum+best.dw)
			if a < b || (found && a == b && m.cost < best.cost) {
				best, found = m, true
			}
		}
		if !found || s.in.work > 3*s.in.effort {
			break
		}
		s.apply(best)
	}
	return s.pair()
}

// sides parts positions into those in the set and those outside it.
func (s *nearSet) sides(positions []int) (held, left []int) {
	for _, i := range positions {
		if s.set[i] {
			held = append(held, i)
		} else {
			left = append(left, i)
		}
	}
	return held, left
}

// nearest sets the core: ten times as many pieces as may move at once.
func (s *nearSet) nearest() {
	for _, g := range s.in.groups {
		held, left := s.sides(g.Positions())
		s.core = append(s.core, append(s.few(held), s.few(left)...))
	}
	s.in.work += len(s.in.w) / 16
}

// few are the pieces of a side that are nearest to their threshold.
func (s *nearSet) few(side []int) []int {
	most := min(len(side), 10*repairSide)
	top.Select(side, most, func(a, b int) bool { return s.x.nearer(a, b) < 0 })
	return side[:most]
}

// fill goes as far towards the window as whole pieces lead without passing it: of groups of
// free count it takes or leaves them, of the others it exchanges the lightest for the
// heaviest, or the other way about.
func (s *nearSet) fill() {
	for _, g := range s.in.groups {
		held, left := s.sides(g.Positions())
		if g.Count == AnyCount {
			for _, i := range left {
				s.approach(move{s.in.w[i], -s.x.r[i], -1, i})
			}
			for _, i := range held {
				s.approach(move{-s.in.w[i], s.x.r[i], i, -1})
			}
			continue
		}
		lightest := func(a, b int) int { return cmp.Or(cmp.Compare(s.in.w[a], s.in.w[b]), cmp.Compare(a, b)) }
		slices.SortFunc(held, lightest)
		slices.SortFunc(left, lightest)
		if s.sum < s.in.lo {
			slices.Reverse(left)
		} else {
			slices.Reverse(held)
		}
		for k, i := range held[:min(len(held), len(left))] {
			s.approach(move{s.in.w[left[k]] - s.in.w[i], s.x.r[i] - s.x.r[left[k]], i, left[k]})
		}
	}
}

// approach makes a move that leads towards the window and does not pass it.
func (s *nearSet) approach(m move) {
	if m.dw > 0 && s.sum+m.dw < s.in.lo || m.dw < 0 && s.sum+m.dw > s.in.hi {
		s.apply(m)
	}
}

// outside is how far a total lies outside the window.
func (in *instance) outside(sum int64) int64 { return max(in.lo-sum, sum-in.hi, 0) }

func (s *nearSet) apply(m move) {
	for _, pos := range [2]int{m.out, m.in} {
		if pos >= 0 {
			s.set[pos] = !s.set[pos]
		}
	}
	s.sum, s.cost = s.sum+m.dw, s.cost+m.cost
}

// moves lists the moves among the pieces that are nearest to their group's
// threshold.
func (s *nearSet) moves() []move {
	r, w := s.x.r, s.in.w
	var out []move
	// All pairs of moves cost about half the effort again.
	most := min(repairMoves, max(leastMoves, s.in.effort/(2*repairTries)))
	for n, g := range s.in.groups {
		slices.SortFunc(s.core[n], s.x.nearer)
		held, left := s.sides(s.core[n])
		held, left = held[:min(len(held), repairSide)], left[:min(len(left), repairSide)]
		if g.Count == AnyCount {
			for _, i := range held {
				out = append(out, move{-w[i], r[i], i, -1})
			}
			for _, j := range left {
				out = append(out, move{w[j], -r[j], -1, j})
			}
		}
		for _, i := range held {
			for _, j := range left {
				if len(out) < most {
					out = append(out, move{w[j] - w[i], r[i] - r[j], i, j})
				}
			}
		}
	}
	return out
}

// pair returns the best permitted set that no, one or two moves make.
func (s *nearSet) pair() solution {
	in, x := s.in, s.x
	moves := append(s.moves(), move{out: -1, in: -1})
	slices.SortFunc(moves, func(a, b move) int {
		return cmp.Or(cmp.Compare(a.dw, b.dw), cmp.Compare(a.cost, b.cost), cmp.Compare(a.out, b.out), cmp.Compare(a.in, b.in))
	})
	low, high := in.lo-s.sum, in.hi-s.sum
	best, made := solution{}, [2]move{}
	for i, a := range moves {
		first, _ := slices.BinarySearchFunc(moves, low-a.dw, func(m move, dw int64) int { return cmp.Compare(m.dw, dw) })
		for j := first; j < len(moves) && j < first+repairTries && moves[j].dw <= high-a.dw; j++ {
			b := moves[j]
			in.work++
			// The one move that changes nothing may be paired with itself.
			if (j < i) || (a.out >= 0 && a.out == b.out) || (a.in >= 0 && a.in == b.in) {
				continue
			}
			sum := s.sum + a.dw + b.dw
			cost := s.cost + a.cost + b.cost + x.price*(in.end(x.price)-sum)
			c := solution{sum: sum, score: (x.bound - cost) / x.scale, found: true}
			if !best.found || c.score > best.score || (c.score == best.score && in.off(c.sum) < in.off(best.sum)) {
				best, made = c, [2]move{a, b}
			}
		}
	}
	if !best.found {
		return best
	}
	s.apply(made[0])
	s.apply(made[1])
	for i, held := range s.set {
		if held {
			best.chosen = append(best.chosen, i)
		}
	}
	return best
}
