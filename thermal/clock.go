package thermal

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
	m, r, err := c.frame.likely()
	if err != nil {
		return k, err
	}
	return m.words(r), nil
}

// knowing is the answer with what a lesson taught; the zero one teaches nothing.
func (c clock[K, M]) knowing(l Lesson) (k K, err error) {
	if c.err != nil {
		return k, c.err
	}
	m, r, err := c.frame.banded(l)
	if err != nil {
		return k, err
	}
	return m.words(r), nil
}

// observed is the answer after something was seen, and what that taught.
func (c clock[K, M]) observed(l Lesson, seen []Seen) (k K, after Lesson, err error) {
	if c.err != nil {
		return k, l, c.err
	}
	m, r, after, err := c.frame.observed(l, seen)
	if err != nil {
		return k, l, err
	}
	return m.words(r), after, nil
}
