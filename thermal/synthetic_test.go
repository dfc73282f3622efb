package thermal

import (
	"cmp"
	"math"
	"math/rand/v2"
	"os"
	"runtime"
	"slices"
	"strconv"
	"sync"
	"sync/atomic"
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
// clock then says is compared with what these units do, and others of the same product.
// A clock whose bands are honest gives every rank alike.
type trial interface {
	// weighed is for one event, seen so badly that the runs suffice.
	weighed(t *testing.T, truths int) tally
	// redrawn is for what is seen so well that few runs are left.
	redrawn(t *testing.T, truths int) tally
}

// A tally is the ranks, 0..1, of true times among the runs.
type tally struct {
	ranks  []float64
	truths int // that they are of: ranks of one truth hang together
}

type trialOf[M any] struct {
	frame  frame[M]
	seen   []int // events seen, the first alone where weighing suffices
	judged []int // events compared, continuous ones
	// narrows is to what part the window of each seen event gets for the next unit, at
	// most; nil: to half.
	narrows []float64
	within  time.Duration // of what is seen where weighing suffices
	sharp   time.Duration // of what is seen where runs are redrawn
	read    string        // what is read as well, good to 1 K, where runs are redrawn; "": nothing
	readAt  time.Duration
}

// A pair is two units that share what units share: their events, and a reading of one.
type pair struct {
	random     *rand.Rand
	one, other []float64
	reading    float64
}

// pairs draws pairs from what the clock takes for possible.
func (tr trialOf[M]) pairs(t *testing.T, n int) []pair {
	t.Helper()
	s := tr.frame.study(tr.reads(), false)
	inputs, err := s.Inputs()
	if err != nil {
		t.Fatal(err)
	}
	pairs, z := make([]pair, n), []float64{}
	r := rand.New(rand.NewPCG(7, 17))
	for i := range pairs {
		pairs[i].random = rand.New(rand.NewPCG(r.Uint64(), r.Uint64())) // its own: pairs are tried at once
		for range inputs {
			z = append(z, r.NormFloat64())
		}
		for _, u := range inputs {
			if u.Shared == study.Unit {
				z = append(z, r.NormFloat64())
			} else {
				z = append(z, z[len(z)-len(inputs)])
			}
		}
	}
	out, err := s.At(z, len(inputs))
	if err != nil {
		t.Fatal(err)
	}
	w, events := s.Outputs, len(tr.frame.events)
	for i := range pairs {
		pairs[i].one, pairs[i].other = out[2*i*w:2*i*w+events], out[(2*i+1)*w:(2*i+1)*w+events]
		pairs[i].reading = out[2*i*w+w-1]
	}
	return pairs
}

// reads is what is read of a unit.
func (tr trialOf[M]) reads() []readAt {
	if tr.read == "" {
		return nil
	}
	return []readAt{{slices.Index(tr.frame.keys(), tr.read), tr.readAt.Seconds()}}
}

// see is an observation of an event that happens at a time, s.
func (tr trialOf[M]) see(r *rand.Rand, event int, at float64, within time.Duration) Seen {
	s := Seen{Event: tr.frame.events[event], Within: within}
	s.At = seconds(max(0, at+r.NormFloat64()*s.timeSD()))
	return s
}

// rank is the share of the weight of the runs, the truth as one of them, that come before
// it; ties count at random.
func rank(r *rand.Rand, at, weights []float64, truth float64) float64 {
	below, same, all := 0.0, 0.0, 0.0
	for i, v := range at {
		all += weights[i]
		if v < truth {
			below += weights[i]
		} else if v == truth {
			same += weights[i]
		}
	}
	one := all / study.Effective(weights)
	return (below + r.Float64()*(same+one)) / (all + one)
}

func (tr trialOf[M]) keep(t *testing.T, l Lesson) *kept[M] {
	t.Helper()
	b, err := tr.frame.basis(l, study.TaughtRuns)
	if err != nil {
		t.Fatal(err)
	}
	return tr.frame.known(l, b, nil)
}

// tallied asks for the ranks of each pair, on all cores.
func tallied(pairs []pair, ranks func(p pair) []float64) tally {
	all := make([][]float64, len(pairs))
	var next atomic.Int64
	var wg sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		wg.Go(func() {
			for i := int(next.Add(1)) - 1; i < len(pairs); i = int(next.Add(1)) - 1 {
				all[i] = ranks(pairs[i])
			}
		})
	}
	wg.Wait()
	var out tally
	for _, r := range all {
		out.ranks = append(out.ranks, r...)
		if r != nil {
			out.truths++
		}
	}
	return out
}

func (tr trialOf[M]) weighed(t *testing.T, truths int) tally {
	t.Helper()
	one, next := tr.keep(t, Lesson{}), tr.keep(t, Lesson{}.Unit(1))
	tr.checkNarrows(t, one, next.sample)
	return tallied(tr.pairs(t, truths), func(p pair) (ranks []float64) {
		at := p.one[tr.seen[0]]
		if math.IsInf(at, 1) {
			return nil
		}
		// Where few runs are left they count all the same: to leave them out would choose.
		k, _ := tr.frame.settled(one.before, one.basis, []Seen{tr.see(p.random, tr.seen[0], at, tr.within)}, one.basis.out)
		for _, e := range tr.judged {
			ranks = append(ranks, rank(p.random, k.sample.Output(e), k.sample.Weights, p.one[e]),
				rank(p.random, next.sample.Output(e), k.sample.Weights, p.other[e]))
		}
		return ranks
	})
}

// checkNarrows shows how the windows of the next unit narrow once an event was seen where
// it was likely, good to a tenth of its time.
func (tr trialOf[M]) checkNarrows(t *testing.T, one *kept[M], next *study.Sample) {
	t.Helper()
	likely, err := tr.frame.study(nil, false).At(one.sample.Centre(), len(one.sample.Inputs))
	if err != nil {
		t.Fatal(err)
	}
	width := func(event int, weights []float64) float64 {
		q := study.Quantiles(next.Output(event), weights, 0.025, 0.975)
		return q[1] - q[0] // without an end where the latest is never
	}
	for i, e := range tr.seen {
		at := seconds(likely[e])
		k, _ := tr.frame.settled(one.before, one.basis, []Seen{{Event: tr.frame.events[e], At: at, Within: at / 10}}, one.basis.out)
		most := 0.5
		if tr.narrows != nil {
			most = tr.narrows[i]
		}
		ratio := width(e, k.sample.Weights) / width(e, nil)
		t.Logf("%q seen at %v: the next one's window gets %.2f as wide", tr.frame.events[e], at, ratio)
		if most < 1 && !(ratio <= most) {
			t.Errorf("%q seen at %v: %.2f as wide, want at most %.2f (narrows)", tr.frame.events[e], at, ratio, most)
		}
	}
}

func (tr trialOf[M]) redrawn(t *testing.T, truths int) tally {
	t.Helper()
	const runs = 2048 // half of those of a user: enough for a rank
	first := tr.keep(t, Lesson{})
	read, err := tr.frame.study(tr.reads(), true).At(first.basis.z, first.basis.dims)
	if err != nil {
		t.Fatal(err)
	}
	var few, refused atomic.Int64
	out := tallied(tr.pairs(t, truths), func(p pair) (ranks []float64) {
		var seen []Seen
		for _, e := range tr.seen {
			if !math.IsInf(p.one[e], 1) {
				seen = append(seen, tr.see(p.random, e, p.one[e], tr.sharp))
			}
		}
		if tr.read != "" {
			s := Seen{Reading: tr.read, At: tr.readAt, WithinValue: 1}
			s.Value = p.reading + p.random.NormFloat64()*s.valueSD()
			seen = append(seen, s)
		}
		if len(seen) == 0 {
			return nil
		}
		k, err := tr.frame.concluded(Lesson{}, first.basis, tr.frame.looking(seen), read, runs)
		if err != nil {
			t.Logf("%+v of a unit with %v: %v", seen, p.one, err)
			refused.Add(1)
			return nil
		}
		if k.basis != first.basis {
			few.Add(1)
		}
		next := tr.next(t, p.random, k)
		for _, e := range tr.judged {
			ranks = append(ranks, rank(p.random, k.sample.Output(e), k.sample.Weights, p.one[e]), rank(p.random, next.Output(e), next.Weights, p.other[e]))
		}
		return ranks
	})
	t.Logf("redrawn for %d of %d truths, refused for %d", few.Load(), truths, refused.Load())
	// Where an event all but never comes the surrogate is poor, and such units are few.
	if n := int(refused.Load()); n*50 > truths {
		t.Errorf("%d of %d truths refused, want at most one in fifty", n, truths)
	}
	return out
}

// next is some runs of the next unit, which keep what is shared.
func (tr trialOf[M]) next(t *testing.T, r *rand.Rand, k *kept[M]) *study.Sample {
	t.Helper()
	const runs = 256
	s := tr.frame.study(nil, false)
	inputs, d := k.sample.Inputs, len(k.sample.Inputs)
	z := slices.Clone(k.sample.Z[:runs*d])
	for i := range z {
		if inputs[i%d].Shared == study.Unit {
			z[i] = r.NormFloat64()
		}
	}
	out, err := s.At(z, d)
	if err != nil {
		t.Error(err)
	}
	return &study.Sample{Inputs: inputs, Z: z, Out: out, Outputs: s.Outputs, Weights: k.sample.Weights[:runs]}
}

// check demands that the ranks' histogram is even at p 0.001 and that 94..96 % of them lie
// in the 95 % band; of few truths, to within what chance does to so many.
func (a tally) check(t *testing.T) {
	t.Helper()
	const bins = 10
	n, free := float64(len(a.ranks)), float64(a.truths)
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
	t.Logf("%d ranks of %d truths: chi squared %.1f, inside %.2f %%", len(a.ranks), a.truths, chi, 100*inside)
	if limit := (distuv.ChiSquared{K: bins - 1}).Quantile(0.999); chi > limit {
		t.Errorf("ranks are uneven: chi squared %.1f, at most %.1f: %v", chi, limit, counts)
	}
	if room := max(0.01, 3.3*math.Sqrt(0.95*0.05/free)); math.Abs(inside-0.95) > room {
		t.Errorf("%.2f %% inside", 100*inside)
	}
}

// truths is how many synthetic truths are tried: as many per cent of them as
// HONESTPLATE_TRUTHS says, a tenth without it.
func truths(all int) int {
	percent, err := strconv.Atoi(os.Getenv("HONESTPLATE_TRUTHS"))
	switch {
	case err == nil && percent > 0:
		return all * percent / 100
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
	bottle, err7 := Bottle{DrinkGrams: 330, Diameter: 0.062, StartC: honestplate.Some(20), TargetC: 4, Medium: cold.Freezers().Deep}.frame()
	ice, err8 := IceOnTable{Size: 0.03, StartC: -18}.frame(studio, nil)
	if err := cmp.Or(err1, err2, err3, err4, err5, err6, err7, err8); err != nil {
		t.Fatal(err)
	}
	return map[string]trial{
		"glass": trialOf[glassModel]{frame: glass, seen: []int{eventBeads, eventHaze}, judged: []int{eventHaze, eventOpaque, eventIceGone},
			within: 2 * time.Minute, sharp: 5 * time.Second},
		"scoop": trialOf[scoopModel]{frame: scoop, seen: []int{drips, softens}, judged: []int{softens, drips, slumps},
			within: 90 * time.Second, sharp: 10 * time.Second},
		"cheese": trialOf[cheeseModel]{frame: cheese, seen: []int{1}, judged: []int{1},
			within: 20 * time.Second, sharp: 2 * time.Second, read: "mean_c", readAt: 40 * time.Second},
		"dish": trialOf[dishModel]{frame: dish, seen: []int{0, 1}, judged: []int{0, 1},
			within: 40 * time.Second, sharp: 10 * time.Second,
			narrows: []float64{0.85, 0.25}}, // a bowl's own start: see HotDish
		"freeze": trialOf[freezeModel]{frame: freeze, seen: []int{freezeCore}, judged: []int{freezeMean, freezeCore},
			within: 10 * time.Minute, sharp: time.Minute, read: "mean_c", readAt: 20 * time.Minute},
		"soft": trialOf[softModel]{frame: soft, seen: []int{0, 1}, judged: []int{0},
			within: 2 * time.Minute, sharp: 20 * time.Second, narrows: []float64{0.5, 1}}, // it may still never run
		"bottle": trialOf[bottleModel]{frame: bottle, seen: []int{bottleCold, bottleFreezes}, judged: []int{bottleCold, bottleFreezes, bottleBursts},
			within: 10 * time.Minute, sharp: time.Minute, read: "drink_c", readAt: 20 * time.Minute},
		"ice": trialOf[iceModel]{frame: ice, seen: []int{iceHalf, iceGone}, judged: []int{iceHalf, iceGone}, narrows: []float64{0.65, 0.62}, // its own contact and size
			within: 20 * time.Minute, sharp: time.Minute, read: "ice_grams", readAt: 20 * time.Minute},
	}
}

func testGlass() Glass {
	return Glass{Diameter: 0.075, Height: 0.14, DrinkGrams: 200, IceGrams: 120, DrinkC: honestplate.Some(4), WallC: honestplate.Some(4)}
}

// The clocks are honest about what one test teaches: of this unit and of the next.
func TestSyntheticTruths(t *testing.T) {
	if testing.Short() {
		t.Skip("tens of thousands of runs")
	}
	for _, c := range []struct {
		name  string
		all   int
		trial func(trial, *testing.T, int) tally
	}{{"weighed", 2000, trial.weighed}, {"redrawn", 100, trial.redrawn}} {
		var pooled tally
		for name, tr := range trials(t) {
			t.Run(name+"/"+c.name, func(t *testing.T) {
				a := c.trial(tr, t, truths(c.all))
				a.check(t)
				pooled.ranks, pooled.truths = append(pooled.ranks, a.ranks...), pooled.truths+a.truths
			})
		}
		t.Run("all/"+c.name, func(t *testing.T) {
			if pooled.truths > 0 { // else others were asked for by name
				pooled.check(t)
			}
		})
	}
}
