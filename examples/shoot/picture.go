package shoot

import (
	"slices"
	"time"

	"example.org/honestplate"
)

// SureShare is the share of the runs that must show the picture for a moment to count
// as inside its window.
const SureShare = 0.9

// A Picture says when one unit shows what the picture wants, counted from the start of
// its clock: when it left the cold, was filled or left the oven. It comes from the joint
// runs of everything in the frame.
type Picture struct {
	// Always holds where nothing in the frame changes on the set; the rest is then empty.
	Always bool `json:"always"`
	// Opens and Closes are the windows of its first and its last moment.
	Opens  honestplate.Window `json:"opens"`
	Closes honestplate.Window `json:"closes"`
	// Sure holds where there is an interval, From to To, in which at least nine in ten
	// runs show the picture. Otherwise From is the best moment and To the same.
	Sure bool               `json:"sure"`
	From honestplate.Moment `json:"from_s"`
	To   honestplate.Moment `json:"to_s"`
	// Chance is that the picture shows at the best moment, Best.
	Chance float64            `json:"chance"`
	Best   honestplate.Moment `json:"best_s"`
	// OpensBy and ClosesBy are what most often opens and ends it, with their reasons.
	OpensBy  *Cause `json:"opens_by,omitempty"`
	ClosesBy *Cause `json:"closes_by,omitempty"`
	// Remedies are what would make the window wider, or exist at all.
	Remedies []Remedy `json:"remedies,omitempty"`
}

// Length is how long the picture surely stands; 0 where it does not.
func (p Picture) Length() honestplate.Moment {
	switch {
	case p.Always:
		return honestplate.Never()
	case !p.Sure:
		return honestplate.After(0)
	case p.To.Never:
		return honestplate.Never()
	}
	return honestplate.After(p.To.After - p.From.After)
}

// A Cause is an event of a thing, with what decides its time.
type Cause struct {
	Thing   string   `json:"thing"`
	Event   string   `json:"event"`
	Share   float64  `json:"share"` // of the runs in which it is the one
	Reasons []Reason `json:"reasons,omitempty"`
}

// A Reason is an uncertain input and the share of an event's spread that it alone
// explains.
type Reason struct {
	Input string  `json:"input"`
	Share float64 `json:"share"`
}

// A Remedy is something that would help a picture that does not surely stand.
type Remedy string

// The remedies.
const (
	TestUnit     Remedy = "test unit"          // one unit of the crew's own settles what decides
	DrierAir     Remedy = "drier air"          // fog comes later
	DamperAir    Remedy = "damper air"         // fog comes sooner
	WarmerGlass  Remedy = "warmer glass"       // fog comes later
	ColderGlass  Remedy = "colder glass"       // fog comes sooner
	CoolerLight  Remedy = "cooler light"       // less heat on the food
	NearerStore  Remedy = "nearer store"       // less time between the cold and the set
	ColderStore  Remedy = "colder store"       // it begins further from its end
	MoreIce      Remedy = "more ice"           // it lasts longer
	WarmVessel   Remedy = "warm vessel"        // steam lasts longer
	DarkGround   Remedy = "dark ground"        // steam is seen against it, lit from behind
	DeclareOther Remedy = "declare a stand-in" // it cannot be done with the real thing: declare, or change the shot
)

// An interval is one run's picture: from a moment until another, and which of the
// shot's causes open and close it.
type interval struct {
	from, to      honestplate.Moment
	opens, closes int
}

// intersect is where both intervals are.
func (a interval) intersect(b interval) interval {
	if a.from.Before(b.from) || a.opens < 0 && a.from == b.from {
		a.from, a.opens = b.from, b.opens
	}
	if b.to.Before(a.to) || a.closes < 0 && a.to == b.to {
		a.to, a.closes = b.to, b.closes
	}
	return a
}

// stand finds the sure interval of weighted runs, all of the same order. The longest one
// is taken, of several the first.
func stand(runs []interval, weights []float64) Picture {
	type edge struct {
		at    honestplate.Moment
		shown float64
	}
	var edges []edge
	total := 0.0
	for r, run := range runs {
		total += weights[r]
		if run.from.Before(run.to) {
			edges = append(edges, edge{run.from, weights[r]}, edge{run.to, -weights[r]})
		}
	}
	slices.SortStableFunc(edges, func(a, b edge) int {
		switch {
		case a.at.Before(b.at):
			return -1
		case b.at.Before(a.at):
			return 1
		}
		return 0
	})
	p := Picture{Best: honestplate.Never(), From: honestplate.Never(), To: honestplate.Never()}
	now, since := 0.0, -1
	var longest honestplate.Moment
	for i := 0; i < len(edges); {
		at := edges[i].at
		if at.Never {
			break
		}
		for ; i < len(edges) && edges[i].at == at; i++ {
			now += edges[i].shown
		}
		share := now / total
		if share > p.Chance+1e-12 {
			p.Chance, p.Best = share, at
		}
		until := honestplate.Never()
		if i < len(edges) {
			until = edges[i].at
		}
		switch {
		case share < SureShare-1e-12:
			since = -1
		case since < 0:
			since = i - 1
			fallthrough
		default:
			from := edges[since].at
			length := honestplate.Moment{After: until.After - from.After, Never: until.Never}
			if !p.Sure || longest.Before(length) {
				p.Sure, p.From, p.To, longest = true, from, until, length
			}
		}
	}
	if !p.Sure {
		p.From, p.To = p.Best, p.Best
	} else {
		// The best moment inside the window is its middle, or a minute after it opens.
		p.Best = p.From
		if !p.To.Never {
			p.Best = honestplate.After(p.From.After + (p.To.After-p.From.After)/2)
		} else {
			p.Best = honestplate.After(p.From.After + time.Minute)
		}
		p.Chance = shownAt(runs, weights, p.Best)
	}
	return p
}

// shownAt is the share of the runs that show the picture at a moment.
func shownAt(runs []interval, weights []float64, at honestplate.Moment) float64 {
	shown, total := 0.0, 0.0
	for r, run := range runs {
		total += weights[r]
		if !at.Before(run.from) && at.Before(run.to) {
			shown += weights[r]
		}
	}
	return shown / total
}
