package sets

import (
	"slices"

	"example.org/honestplate/portion/internal/subset"
)

// A part is a small problem cut out of a large one: some pieces are loose, the others of
// each set, as many of each group in every set, are tied into one piece, of which each
// set holds one.
type part struct {
	tied  [][]int // by set: pieces that stay
	loose []int
}

const (
	partEffort = 60_000 // bounds the work on a part
	looseCount = 4      // pieces of a set that come loose
	loosePool  = 18     // of so many they are chosen again
)

// part returns the sets of the best answer found for a part, and nil unless it found them
// all.
func (t *tray) part(pt part) [][]int {
	p := Problem{Problem: t.Problem.Problem, Goal: t.Goal, Sets: len(pt.tied)}
	p.Masses, p.Scores, p.Groups, p.Effort = nil, nil, nil, partEffort
	slices.Sort(pt.loose)
	var at []int // position in the part to position in the tray
	for _, sp := range t.Groups {
		g := subset.Group{From: len(at), Count: sp.Count}
		for _, i := range pt.loose {
			if i >= sp.From && i < sp.To {
				at = append(at, i)
				p.Masses, p.Scores = append(p.Masses, t.Masses[i]), append(p.Scores, t.Scores[i])
			}
		}
		for _, i := range pt.tied[0] {
			if g.Count != subset.AnyCount && i >= sp.From && i < sp.To {
				g.Count--
			}
		}
		g.To = len(at)
		p.Groups = append(p.Groups, g)
	}
	n := len(at)
	for _, tied := range pt.tied {
		var mass, score int64
		for _, i := range tied {
			mass, score = mass+t.Masses[i], score+t.Scores[i]
		}
		p.Masses, p.Scores = append(p.Masses, mass), append(p.Scores, score)
	}
	p.Groups = append(p.Groups, subset.Group{From: n, To: len(p.Masses), Count: 1})
	if len(p.Masses) > maxBits {
		return nil
	}
	small := newTray(&p)
	defer func() { t.work += small.work }()
	if small.mostSets() < p.Sets {
		return nil
	}
	a := small.small(p.Sets)
	if len(a.Sets) < p.Sets {
		return nil
	}
	for k, s := range a.Sets {
		var whole []int
		for _, i := range s {
			if i < n {
				whole = append(whole, at[i])
			} else {
				whole = append(whole, pt.tied[i-n]...)
			}
		}
		slices.Sort(whole)
		a.Sets[k] = whole
	}
	return a.Sets
}

// loosen draws some pieces of a set, of every group as many in every set, and returns
// them and the others.
func (b *build) loosen(set []int) (loose, tied []int) {
	t := b.t
	for _, sp := range t.Groups {
		var own []int
		for _, i := range set {
			if i >= sp.From && i < sp.To {
				own = append(own, i)
			}
		}
		b.rnd.Shuffle(len(own), func(i, j int) { own[i], own[j] = own[j], own[i] })
		n := min(len(own), max(1, looseCount/len(t.Groups)))
		loose, tied = append(loose, own[:n]...), append(tied, own[n:]...)
	}
	return loose, tied
}
