package rheology

import (
	"time"

	"example.org/honestplate"
)

// A Moment of a pour.
type Moment struct {
	At    time.Duration // since the first of it left
	Rate  float64       // m3/s, of the likely liquid
	Grams float64       // that have left
	Head  float64       // that drives the flow, m, after what surface tension holds
}

// Series returns n+1 moments from the start of the pour to its end, equally far apart
// in grams: the rate against time. n is 1 to 10000, RangeError outside; a Pour that was
// not made by a Pour method is ErrNoStream.
func (p Pour) Series(n int) ([]Moment, error) {
	if !(p.startL > 0) {
		return nil, noFlow("Pour")
	}
	if err := honestplate.InRange("number of steps", float64(n), 1, 10000, "", "a series for a figure"); err != nil {
		return nil, err
	}
	out := make([]Moment, 0, n+1)
	guess := p.startL
	for i := range n + 1 {
		share := float64(i) / float64(n)
		m := Moment{Rate: p.startL, Grams: p.Grams * share, Head: p.first}
		seconds := p.Grams * share / 1000 / p.Density.Likely / p.startL
		if p.surface > 0 && i > 0 {
			m.Head = p.first + (p.last-p.first)*share
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

// Last returns the pour as it is at its end, for the stream of the last drops: the same
// liquid under the last head. Where the head stays it is the pour itself.
func (p Pour) Last() (Pour, error) {
	if !(p.startL > 0) {
		return Pour{}, noFlow("Pour")
	}
	q := p
	q.first, q.startL, q.Rate = p.last, p.endL, p.EndRate
	if err := q.start(); err != nil {
		return Pour{}, err
	}
	return q, nil
}
