package thermal

import (
	"cmp"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/cold"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/internal/study"
	"example.org/honestplate/thermal/light"
	"gonum.org/v1/gonum/stat/distuv"
)

// A trial is a frame under test by synthetic truths: units are drawn from what the clock
// itself takes for possible, something of them is seen with its error, and what the
// clock then says is compared with what these units do. A clock whose bands are honest
// gives every rank alike.
type trial interface {
	// weighed returns the ranks, 0..1, of true times among the runs after one event of a
	// unit was seen: of the events of this unit and of the next one; and how the window of
	// the seen event narrows for the next one, as shares of the width.
	weighed(t *testing.T, truths int)
	// redrawn is the same where two events are seen so well that few runs are left.
	redrawn(t *testing.T, truths int)
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
	readAt time.Duration // when the mean temperature is read as well; 0: not
	cost   int           // of a redraw: so many times fewer of them outside CI
}

// unit draws a unit that shares with others what is in shared.
func (tr trialOf[M]) unit(r *rand.Rand, inputs []study.Input, shared []float64) []float64 {
	z := make([]float64, len(inputs))
	for j, u := range inputs {
		z[j] = r.NormFloat64()
		if u.Shared != study.Unit {
			z[j] = shared[j]
		}
	}
	return z
}

// truth is the times of a unit.
func (tr trialOf[M]) truth(t *testing.T, z []float64) []float64 {
	t.Helper()
	out, err := tr.frame.study(nil, false).At(z, len(z))
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// read is a reading of the mean temperature of a unit, good to 1 K.
func (tr trialOf[M]) read(t *testing.T, r *rand.Rand, inputs []study.Input, z []float64) Seen {
	t.Helper()
	s := Seen{Reading: "mean_c", At: tr.readAt, WithinValue: 1}
	out, err := tr.frame.study([]readAt{{slices.Index(tr.frame.keys(), s.Reading), s.At.Seconds()}}, false).At(z, len(inputs))
	if err != nil {
		t.Fatal(err)
	}
	s.Value = out[len(tr.frame.events)] + r.NormFloat64()*s.valueSD()
	return s
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

func (tr trialOf[M]) weighed(t *testing.T, truths int) {
	t.Helper()
	one, next := tr.keep(t, Lesson{}), tr.keep(t, Lesson{}.Unit(1))
	r := rand.New(rand.NewPCG(7, 11))
	var out tally
	for range truths {
		shared := make([]float64, len(one.sample.Inputs))
		for j := range shared {
			shared[j] = r.NormFloat64()
		}
		a, b := tr.truth(t, tr.unit(r, one.sample.Inputs, shared)), tr.truth(t, tr.unit(r, one.sample.Inputs, shared))
		if math.IsInf(a[tr.seen[0]], 1) {
			continue
		}
		k, effective := tr.frame.settled(one.before, one.basis, []Seen{tr.see(r, tr.seen[0], a[tr.seen[0]], tr.within)}, one.basis.out)
		w := k.sample.Weights
		if effective < study.FewestEffective {
			out.redrawn++ // its ranks are counted all the same: to leave it out would choose
		}
		for _, e := range tr.judged {
			out.ranks = append(out.ranks, rank(r, k.sample.Output(e), w, a[e]), rank(r, next.sample.Output(e), w, b[e]))
		}
		out.narrows = append(out.narrows, width(next.sample, tr.seen[0], w)/width(next.sample, tr.seen[0], nil))
	}
	out.check(t, truths)
}

func (tr trialOf[M]) redrawn(t *testing.T, truths int) {
	t.Helper()
	if os.Getenv("HONESTPLATE_TRUTHS") == "" {
		truths = max(1, truths/tr.cost)
	}
	first := tr.keep(t, Lesson{})
	r := rand.New(rand.NewPCG(3, 13))
	var out tally
	for range truths {
		shared := make([]float64, len(first.sample.Inputs))
		for j := range shared {
			shared[j] = r.NormFloat64()
		}
		za := tr.unit(r, first.sample.Inputs, shared)
		a, b := tr.truth(t, za), tr.truth(t, tr.unit(r, first.sample.Inputs, shared))
		var seen []Seen
		for _, e := range tr.seen {
			if !math.IsInf(a[e], 1) {
				seen = append(seen, tr.see(r, e, a[e], tr.sharp))
			}
		}
		if tr.readAt > 0 {
			seen = append(seen, tr.read(t, r, first.sample.Inputs, za))
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
	out.check(t, truths)
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

// check demands of pooled ranks that 94..96 % of them lie in the 95 % band and that their
// histogram is even at p 0.001; of few truths, that they do so to within what chance does
// to so many. Ranks of one truth hang together: as many count as there are truths.
func (a tally) check(t *testing.T, truths int) {
	t.Helper()
	const bins = 10
	n, free := float64(len(a.ranks)), float64(truths)
	counts, inside := make([]float64, bins), 0.0
	for _, u := range a.ranks {
		counts[min(bins-1, int(u*bins))]++
		if u >= 0.025 && u <= 0.975 {
			inside += 1 / n
		}
	}
	chi := 0.0
	for _, c := range counts {
		chi += (c - n/bins) * (c - n/bins) / (n / bins) * free / n
	}
	t.Logf("%d ranks of %d truths, %d with few runs: chi squared %.1f, inside %.2f %%, narrows to %.2f",
		len(a.ranks), truths, a.redrawn, chi, 100*inside, median(a.narrows))
	if truths < 5 {
		return
	}
	if limit := (distuv.ChiSquared{K: bins - 1}).Quantile(0.999); chi > limit {
		t.Errorf("ranks are uneven: chi squared %.1f, at most %.1f: %v", chi, limit, counts)
	}
	if room := max(0.01, 3.3*math.Sqrt(0.95*0.05/free)); math.Abs(inside-0.95) > room {
		t.Errorf("%.2f %% inside", 100*inside)
	}
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
	t.Helper()
	glass, err1 := testGlass().frame(studio, nil)
	scoop, err2 := ball(-18).frame(studio, []light.Lamp{tungsten})
	cheese, err3 := pull().frame(studio, nil)
	dish, err4 := HotDish{Grams: 300, Diameter: 0.13, StartC: 80, VesselGrams: 400}.frame(studio, nil)
	freeze, err5 := DeepFreeze{Mix: food.Recipes().VanillaIceCream, Diameter: 0.055, StartC: honestplate.Some(-13), TargetC: -28, Medium: cold.Freezers().Deep}.frame()
	soft, err6 := Softening{Food: food.SoftFoods().Butter, Thickness: 0.02, StartC: honestplate.Some(5)}.frame(studio, []light.Lamp{tungsten})
	if err := cmp.Or(err1, err2, err3, err4, err5, err6); err != nil {
		t.Fatal(err)
	}
	return map[string]trial{
		"glass": trialOf[glassModel]{frame: glass, seen: []int{eventBeads, eventHaze}, judged: []int{eventHaze, eventOpaque, eventIceGone},
			within: 2 * time.Minute, sharp: 5 * time.Second, cost: 10},
		"scoop": trialOf[scoopModel]{frame: scoop, seen: []int{drips, softens}, judged: []int{softens, drips, slumps},
			within: 90 * time.Second, sharp: 10 * time.Second, cost: 20},
		"cheese": trialOf[cheeseModel]{frame: cheese, seen: []int{1}, judged: []int{1},
			within: 20 * time.Second, sharp: 2 * time.Second, readAt: 40 * time.Second, cost: 10},
		"dish": trialOf[dishModel]{frame: dish, seen: []int{0, 1}, judged: []int{0, 1},
			within: 40 * time.Second, sharp: 10 * time.Second, cost: 3},
		"freeze": trialOf[freezeModel]{frame: freeze, seen: []int{freezeCore}, judged: []int{freezeMean, freezeCore},
			within: 10 * time.Minute, sharp: time.Minute, readAt: 20 * time.Minute, cost: 5},
		"soft": trialOf[softModel]{frame: soft, seen: []int{0, 1}, judged: []int{0},
			within: 2 * time.Minute, sharp: 20 * time.Second, cost: 5},
	}
}

func testGlass() Glass {
	return Glass{Diameter: 0.075, Height: 0.14, DrinkGrams: 200, IceGrams: 120, DrinkC: honestplate.Some(4), WallC: honestplate.Some(4)}
}

// The clocks are honest about what one test teaches: of this unit and of the next.
func TestSyntheticTruths(t *testing.T) {
	for name, tr := range trials(t) {
		t.Run(name+"/weighed", func(t *testing.T) { tr.weighed(t, truths(2000)) })
		if !testing.Short() {
			t.Run(name+"/redrawn", func(t *testing.T) { tr.redrawn(t, truths(100)) })
		}
	}
}
