package thermal

import "example.org/honestplate/thermal/internal/study"

// A worded model is one whose answer is a K.
type worded[K any] interface{ words(Runs) K }

// A clock is a thing in its frame, whose answer is a K: what the verbs of all things
// stand on.
type clock[K any, M worded[K]] struct {
	frame frame[M]
	err   error // what is wrong with the thing
}

func clockOf[K any, M worded[K]](f frame[M], err error) clock[K, M] { return clock[K, M]{f, err} }

// likely is the likely course alone.
func (c clock[K, M]) likely() (k K, err error) {
	if c.err != nil {
		return k, c.err
	}
	m, at, err := c.frame.nominal(nil)
	if err != nil {
		return k, err
	}
	var r Runs
	for i, t := range at {
		r.events = append(r.events, happening{key: c.frame.events[i], event: Event{Window: window(t, t, t)}})
	}
	return m.words(r), nil
}

// knowing is the answer with what a lesson taught; the zero one teaches nothing.
func (c clock[K, M]) knowing(l Lesson) (K, error) {
	k, _, err := c.known(l, l.runs(), nil, false)
	return k, err
}

// observed is the answer after something was seen, and what that taught.
func (c clock[K, M]) observed(l Lesson, seen []Seen) (K, Lesson, error) {
	return c.known(l, study.TaughtRuns, seen, true)
}

// known is the answer by so many runs that start from a lesson, and what it taught: with
// look set, after something was seen.
func (c clock[K, M]) known(l Lesson, runs int, seen []Seen, look bool) (k K, after Lesson, err error) {
	if c.err != nil {
		return k, l, c.err
	}
	b, err := c.frame.basis(l, runs)
	if err != nil {
		return k, l, err
	}
	known := c.frame.known(l, b, nil)
	if look {
		if known, err = known.after(seen); err != nil {
			return k, l, err
		}
	}
	m, r, err := known.answer()
	if err != nil {
		return k, l, err
	}
	return m.words(r), known.lesson(), nil
}
