package sets

import (
	"slices"
)

// A part is a small problem cut out of a large one: some pieces are loose, the others of
// each set are tied into one piece that only this set can hold.
type part struct {
	wants []Want
	tied  [][]int // by want: pieces that stay
	loose []int
}

// partEffort bounds the work on a part.
const partEffort = 60_000

// solve returns the sets of the best answer found for the part, by want, and nil unless
// it found them all.
func (t *tray) part(pt part) [][]int {
	p := Problem{Goal: t.Goal, Effort: partEffort}
	slices.Sort(pt.loose)
	var at []int // position in the part to position in the tray; -1 for tied ones
	for _, sp := range t.Groups {
		from := len(at)
		for _, i := range pt.loose {
			if i >= sp.From && i < sp.To {
				at = append(at, i)
				p.Mass, p.Score = append(p.Mass, t.Mass[i]), append(p.Score, t.Score[i])
			}
		}
		p.Groups = append(p.Groups, Span{from, len(at)})
	}
	for k, w := range pt.wants {
		w.Counts = slices.Clone(w.Counts)
		var mass, score int64
		for _, i := range pt.tied[k] {
			mass, score = mass+t.Mass[i], score+t.Score[i]
			if g := t.groupOf(i); w.Counts[g] != Any {
				w.Counts[g]--
			}
		}
		for j := range pt.wants {
			one := 0
			if j == k && len(pt.tied[k]) > 0 {
				one = 1
			}
			w.Counts = append(w.Counts, one)
		}
		at = append(at, -1)
		p.Mass, p.Score = append(p.Mass, mass), append(p.Score, score)
		p.Groups = append(p.Groups, Span{len(at) - 1, len(at)})
		p.Wants = append(p.Wants, w)
	}
	if len(at) > maxBits {
		return nil
	}
	small := newTray(&p)
	defer func() { t.work += small.work }()
	most := small.mostSets()
	if most < len(pt.wants) {
		return nil
	}
	family, _ := small.family(partEffort)
	a := small.exact(family, most)
	if a.Number < len(pt.wants) {
		return nil
	}
	out := make([][]int, len(pt.wants))
	for k, s := range a.Sets {
		out[k] = slices.Clone(pt.tied[k])
		for _, i := range s {
			if at[i] >= 0 {
				out[k] = append(out[k], at[i])
			}
		}
		slices.Sort(out[k])
	}
	return out
}

func (t *tray) groupOf(piece int) int {
	g, _ := slices.BinarySearchFunc(t.Groups, piece, func(s Span, i int) int {
		if s.To <= i {
			return -1
		}
		return 1
	})
	return g
}

// valueOf returns the score and the distance from the wanted total of a set.
func (t *tray) valueOf(pieces []int, w Want) (score, off int64) {
	var mass int64
	for _, i := range pieces {
		mass, score = mass+t.Mass[i], score+t.Score[i]
	}
	d := mass - w.Target
	return score, max(d, -d)
}
