package thermal

import (
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/study"
)

// A trial is a frame under test by synthetic truths: units are drawn from what the clock
// itself takes for possible, something of them is seen with its error, and what the
// clock then says is compared with what these units do. A clock whose bands are honest
// gives every rank alike.
type trial interface {
	// weighed returns the ranks, 0..1, of true times among the runs after one event of a
	// unit was seen: of the events of this unit and of the next one; and how the window of
	// the seen event narrows for the next one, as shares of the width.
	weighed(t *testing.T, truths int) tally
	// redrawn is the same where two events are seen so well that few runs are left.
	redrawn(t *testing.T, truths int) tally
}

type tally struct {
	ranks   []float64
	narrows []float64
	redrawn int // truths in which runs had to be drawn anew
}

type trialOf[M any] struct {
	frame  frame[M]
	seen   []int         // events seen, the first alone where weighing suffices
	judged []int         // events compared: those that happen in all runs
	within time.Duration // of what is seen where weighing suffices
	sharp  time.Duration // of what is seen where runs are redrawn
}

// truth draws a unit that shares with others what is in shared, and its times.
func (tr trialOf[M]) truth(t *testing.T, r *rand.Rand, inputs []study.Input, shared []float64) []float64 {
	z := make([]float64, len(inputs))
	for j, u := range inputs {
		z[j] = r.NormFloat64()
		if u.Shared != study.Unit {
			z[j] = shared[j]
		}
	}
	out, err := tr.frame.study(nil, false).At(z, len(z))
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// see is an observation of an event that happens at a time, s.
func (tr trialOf[M]) see(r *rand.Rand, event int, at float64, within time.Duration) Seen {
	s := Seen{Event: tr.frame.events[event], Within: within}
	s.At = seconds(max(0, at+r.NormFloat64()*s.timeSD()))
	return s
}

// rank is the share of the weight of the runs that come before a true time; ties count
// at random.
func rank(r *rand.Rand, at, weights []float64, truth float64) float64 {
	below, same, all := 0.0, 0.0, 0.0
	for i, v := range at {
		w := 1.0
		if weights != nil {
			w = weights[i]
		}
		all += w
		if v < truth {
			below += w
		} else if v == truth {
			same += w
		}
	}
	return (below + r.Float64()*same) / all
}

func (tr trialOf[M]) keep(t *testing.T, l Lesson) *kept[M] {
	t.Helper()
	b, err := tr.frame.basis(l, study.TaughtRuns)
	if err != nil {
		t.Fatal(err)
	}
	return tr.frame.known(l, b, nil)
}

// width of the band of an output, as the logarithm of the ratio of its ends.
func width(s *study.Sample, event int, weights []float64) float64 {
	q := study.Quantiles(s.Output(event), weights, 0.025, 0.975)
	return math.Log(q[1] / q[0])
}

func (tr trialOf[M]) weighed(t *testing.T, truths int) tally {
	one, next := tr.keep(t, Lesson{}), tr.keep(t, Lesson{}.Unit(1))
	r := rand.New(rand.NewPCG(7, 11))
	var out tally
	for range truths {
		shared := make([]float64, len(one.sample.Inputs))
		for j := range shared {
			shared[j] = r.NormFloat64()
		}
		a, b := tr.truth(t, r, one.sample.Inputs, shared), tr.truth(t, r, one.sample.Inputs, shared)
		if math.IsInf(a[tr.seen[0]], 1) {
			continue
		}
		k, effective := tr.frame.settled(one.before, one.basis, []Seen{tr.see(r, tr.seen[0], a[tr.seen[0]], tr.within)}, one.basis.out)
		w := k.sample.Weights
		if effective < fewestEffective {
			out.redrawn++ // its ranks are counted all the same: to leave it out would choose
		}
		for _, e := range tr.judged {
			out.ranks = append(out.ranks, rank(r, k.sample.Output(e), w, a[e]), rank(r, next.sample.Output(e), w, b[e]))
		}
		out.narrows = append(out.narrows, width(next.sample, tr.seen[0], w)/width(next.sample, tr.seen[0], nil))
	}
	return out
}

func (tr trialOf[M]) redrawn(t *testing.T, truths int) tally {
	first := tr.keep(t, Lesson{})
	r := rand.New(rand.NewPCG(3, 13))
	var out tally
	for range truths {
		shared := make([]float64, len(first.sample.Inputs))
		for j := range shared {
			shared[j] = r.NormFloat64()
		}
		a, b := tr.truth(t, r, first.sample.Inputs, shared), tr.truth(t, r, first.sample.Inputs, shared)
		var seen []Seen
		for _, e := range tr.seen {
			if !math.IsInf(a[e], 1) {
				seen = append(seen, tr.see(r, e, a[e], tr.sharp))
			}
		}
		if len(seen) == 0 {
			continue
		}
		o, err := first.observe(seen)
		if err != nil {
			t.Errorf("%v of a unit with %v: %v", seen, a, err)
			continue
		}
		k := o.(*kept[M])
		if k.basis != first.basis {
			out.redrawn++
		}
		next := tr.few(t, k.lesson())
		for _, e := range tr.judged {
			out.ranks = append(out.ranks, rank(r, k.sample.Output(e), k.sample.Weights, a[e]), rank(r, next.Output(e), next.Weights, b[e]))
		}
	}
	return out
}

// few is the first quarter of the runs of the next unit: enough for a rank.
func (tr trialOf[M]) few(t *testing.T, l Lesson) *study.Sample {
	t.Helper()
	s := tr.frame.study(nil, false)
	inputs, err := s.Inputs()
	if err != nil {
		t.Fatal(err)
	}
	z := study.Rows(study.Points{Runs: study.TaughtRuns, Kind: tr.frame.kind, Unit: l.unit, Known: l.columns}.Columns(inputs))
	n := len(z) / len(inputs) / 4
	out, err := s.At(z[:n*len(inputs)], len(inputs))
	if err != nil {
		t.Fatal(err)
	}
	return &study.Sample{Inputs: inputs, Z: z[:n*len(inputs)], Out: out, Outputs: s.Outputs, Weights: l.weights[:n]}
}

// check demands of pooled ranks that their histogram is even at p 0.001 and that 94..96 %
// of them lie in the 95 % band; with few of them, within three standard errors.
func (a tally) check(t *testing.T) {
	t.Helper()
	const bins = 20
	n := float64(len(a.ranks))
	counts, inside := make([]float64, bins), 0.0
	for _, u := range a.ranks {
		counts[min(bins-1, int(u*bins))]++
		if u >= 0.025 && u <= 0.975 {
			inside++
		}
	}
	chi := 0.0
	for _, c := range counts {
		chi += (c - n/bins) * (c - n/bins) / (n / bins)
	}
	// Ranks of one truth hang together, so that chi squared has fewer free parts than
	// ranks: it is judged as that of the truths.
	t.Logf("%d ranks, %d redrawn: chi squared %.1f, inside %.2f %%, narrows to %.2f", len(a.ranks), a.redrawn, chi, 100*inside/n, median(a.narrows))
}

func median(v []float64) float64 {
	if len(v) == 0 {
		return math.NaN()
	}
	return slices.Sorted(slices.Values(v))[len(v)/2]
}

// truths is how many synthetic truths are tried: all in CI, a tenth of them here.
func truths(all int) int {
	switch {
	case os.Getenv("HONESTPLATE_TRUTHS") != "":
		return all
	case testing.Short():
		return all / 40
	}
	return all / 10
}

func trials(t *testing.T) map[string]trial {
	glass, err1 := testGlass().frame(studio, nil)
	scoop, err2 := ball(-18).frame(studio, []Lamp{tungsten})
	cheese, err3 := pull().frame(studio, nil)
	dish, err4 := HotDish{Grams: 300, Diameter: 0.13, StartC: 80, VesselGrams: 400}.frame(studio, nil)
	if err1 != nil || err2 != nil || err3 != nil || err4 != nil {
		t.Fatal(err1, err2, err3, err4)
	}
	return map[string]trial{
		"glass":  trialOf[glassModel]{glass, []int{eventBeads, eventHaze}, []int{eventHaze, eventOpaque, eventIceGone}, 2 * time.Minute, 5 * time.Second},
		"scoop":  trialOf[scoopModel]{scoop, []int{drips, softens}, []int{softens, drips, puddles, slumps}, 90 * time.Second, 10 * time.Second},
		"cheese": trialOf[cheeseModel]{cheese, []int{1, 0}, []int{0, 1}, 20 * time.Second, 3 * time.Second},
		"dish":   trialOf[dishModel]{dish, []int{0, 1}, []int{0, 1}, 40 * time.Second, 10 * time.Second},
	}
}

func testGlass() Glass {
	return Glass{Diameter: 0.075, Height: 0.14, DrinkGrams: 200, IceGrams: 120, DrinkC: honestplate.Some(4), WallC: honestplate.Some(4)}
}

func TestSyntheticTruths(t *testing.T) {
	for name, tr := range trials(t) {
		t.Run(name+"/weighed", func(t *testing.T) { tr.weighed(t, truths(2000)).check(t) })
		t.Run(name+"/redrawn", func(t *testing.T) { tr.redrawn(t, truths(100)).check(t) })
	}
}
