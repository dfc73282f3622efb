package pour

import (
	"time"

	"example.org/honestplate"
)

// A Step of a pour.
type Step struct {
	At    time.Duration `json:"at_ns"`         // since the first of it left
	Rate  float64       `json:"rate_m3_per_s"` // m3/s, of the likely liquid
	Grams float64       `json:"grams"`         // that have left
	Head  float64       `json:"head_m"`        // that drives the flow, m, after what surface tension holds
}

// Series returns n+1 moments from the start of the pour to its end, equally far apart
// in grams: the rate against time. n is 1 to 10000, RangeError outside; a Pour that was
// not made by a Pour method is an InputError.
func (p Pour) Series(n int) ([]Step, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	if err := honestplate.InRange("N", float64(n), 1, 10000, "", "points of a figure"); err != nil {
		return nil, err
	}
	out := make([]Step, 0, n+1)
	guess := p.Rate.Likely
	for i := range n + 1 {
		share := float64(i) / float64(n)
		m := Step{Rate: p.Rate.Likely, Grams: p.Grams * share, Head: p.first + (p.last-p.first)*share}
		seconds := p.Grams * share / 1000 / p.Density.Likely / p.Rate.Likely
		if p.surface > 0 && i > 0 && !p.glugs {
			var err error
			if m.Rate, err = p.out.flow(m.Head, guess); err != nil {
				return nil, err
			}
			guess = m.Rate
			if seconds, err = p.between(m.Head, m.Rate); err != nil {
				return nil, err
			}
		}
		m.At = inSeconds(seconds)
		out = append(out, m)
	}
	return out, nil
}

// AtEnd returns the pour as it is at its end, for the stream of the last drops: the same
// liquid under the last head. Where the head stays it is the pour itself.
func (p Pour) AtEnd() (Pour, error) {
	if err := p.check(); err != nil {
		return Pour{}, err
	}
	q := p
	q.asked.ended = true
	q.first, q.Rate = p.last, p.EndRate
	if err := q.start(); err != nil {
		return Pour{}, err
	}
	return q, nil
}
