package study

import (
	"errors"
	"hash/fnv"
	"math"
	"math/rand/v2"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"

	"example.org/honestplate/thermal/internal/root"
)

// A Belief is what is thought of the inputs of a study, and of others that hang together
// with them: a normal distribution in standardised values, those of the study first.
type Belief struct {
	Mean []float64
	Cov  *mat.SymDense
}

// NewBelief returns the mean and the covariance of columns under weights; nil columns are
// standard normal and hang together with nothing.
func NewBelief(columns [][]float64, weights []float64) Belief {
	d := len(columns)
	b := Belief{Mean: make([]float64, d), Cov: mat.NewSymDense(d, nil)}
	sum := floats.Sum(weights) // 0 where all columns are nil
	off := make([][]float64, d)
	for j, c := range columns {
		if c == nil {
			b.Cov.SetSym(j, j, 1)
			continue
		}
		b.Mean[j] = floats.Dot(c, weights) / sum
		off[j] = slices.Clone(c)
		floats.AddConst(-b.Mean[j], off[j])
		weighed := slices.Clone(off[j])
		floats.Mul(weighed, weights)
		for k := range j + 1 {
			if off[k] != nil {
				b.Cov.SetSym(j, k, floats.Dot(weighed, off[k])/sum)
			}
		}
	}
	return b
}

// A Sight is something seen of a unit.
type Sight struct {
	Events int   // the first outputs are times of events, +Inf where they never happen
	Which  []int // outputs that were seen
	Count  int   // of observations
	// Logs returns the logarithms of the likelihoods of outputs, run by run.
	Logs func(out []float64, rough *Rough) []float64
}

// Redrawn are runs drawn anew: their values and outputs, and what was believed of them
// before anything was seen over where they were drawn from, on average 1.
type Redrawn struct{ Z, Out, Prior []float64 }

// ErrFar says that a unit would have to lie where, of a million, none does, or that no way
// was found to where it lies.
var ErrFar = errors.New("farther from what is believed than one unit in a million")

const (
	swarm     = 4096 // draws of a step towards what is known
	swarmLeft = 400  // of which so many must stay effective
	mostSteps = 30
	lastSwarm = 3    // draws of the last swarm for each that is chosen
	tries     = 6    // surrogates, of which the last is not judged
	scouts    = 512  // runs that judge a surrogate
	scoutsMin = 0.2  // share of them that must stay effective
	doubled   = 2    // times as many runs as are wanted are run where few count
	oneIn     = 1e-6 // units that lie too far
)

// Redraw draws runs from what is known once something was seen, for points that say how
// many and for whom. The outputs of the runs z are fitted by a surrogate, under which many
// draws cost little: these go in steps, the likelihood raised to a power that grows to 1
// (tempering: Neal 2001, Annealed importance sampling, Statistics and Computing 11:125),
// each time from a distribution fitted to the last; of a last swarm as many as are wanted
// are chosen, the likely ones more often, and run. Their weights make up for all of that,
// so that a poor surrogate costs runs that count, and leans nowhere; where scouts say that
// it is too poor they better it first.
func (s Study) Redraw(p Points, b Belief, z, out []float64, seen Sight) (Redrawn, error) {
	d := len(b.Mean)
	inputs, err := s.Inputs()
	if err != nil {
		return Redrawn{}, err
	}
	n := len(inputs)
	believed := rootOf(b.Cov, 0.5)
	inner := mat.NewSymDense(n, nil)
	for j := range n {
		for k := range j + 1 {
			inner.SetSym(j, k, b.Cov.At(j, k))
		}
	}
	// The surrogate's values: those of the study, standardised for themselves.
	back := rootOf(inner, -0.5)
	var turn mat.Dense // to them from the standardised ones of all
	turn.Mul(back, believed.Slice(0, n, 0, d))
	off := make([]float64, 0, len(z)/d*n)
	for r := 0; r < len(z); r += d {
		off = append(off, z[r:r+n]...)
		floats.Sub(off[len(off)-n:], b.Mean[:n])
	}
	u, known := affine(nil, back, off), slices.Clone(out)
	h := fnv.New64a()
	h.Write([]byte(p.Kind)) // never fails
	w := &wanderer{rand: rand.New(rand.NewPCG(h.Sum64(), uint64(p.Unit))), turn: &turn, seen: seen}
	w.surrogate = newSurrogate(seen, s.Outputs, u, n, known, slices.Repeat([]float64{1}, len(u)/n))
	for try := 1; ; try++ {
		w.surrogate = newSurrogate(seen, s.Outputs, u, n, known, w.near(u, n))
		x, drawn := w.wander(d, doubled*p.Runs)
		if x == nil {
			return Redrawn{}, ErrFar
		}
		r := Redrawn{Z: affine(b.Mean, believed, x), Prior: priorOver(x, drawn)}
		if err := s.more(&r, d, scouts); err != nil {
			return Redrawn{}, err
		}
		left := r.left(seen)
		if try < tries && left < scoutsMin*scouts {
			u, known = append(u, affine(nil, &turn, x[:scouts*d])...), append(known, r.Out...)
			continue
		}
		if left*float64(doubled*p.Runs) < 0.5*FewestEffective*scouts {
			return Redrawn{}, ErrFar
		}
		if err := s.more(&r, d, p.Runs); err != nil {
			return Redrawn{}, err
		}
		if left := r.left(seen); left > 0.5*FewestEffective && left < 2*FewestEffective {
			if err := s.more(&r, d, doubled*p.Runs); err != nil {
				return Redrawn{}, err
			}
		}
		return r.best(seen, p.Runs), nil
	}
}

// more runs the first of the values up to a number.
func (s Study) more(r *Redrawn, d, to int) error {
	from := len(r.Out) / s.Outputs
	if to <= from {
		return nil
	}
	out, err := s.At(r.Z[from*d:to*d], d)
	r.Out = append(r.Out, out...)
	return err
}

// weights are those of the runs so far after what was seen.
func (r *Redrawn) weights(seen Sight) []float64 {
	ll := seen.Logs(r.Out, nil)
	return powered(r.Prior[:len(ll)], ll, 1)
}

// left is how many runs of equal weight that makes.
func (r *Redrawn) left(seen Sight) float64 { return Effective(r.weights(seen)) }

// best returns n of the runs so far, those that count.
func (r *Redrawn) best(seen Sight, n int) Redrawn {
	weights := r.weights(seen)
	d, w := len(r.Z)/len(r.Prior), len(r.Out)/len(weights)
	chosen, chance := choose(weights, n)
	out := Redrawn{Z: make([]float64, 0, n*d), Out: make([]float64, 0, n*w), Prior: make([]float64, n)}
	for k, i := range chosen {
		out.Z, out.Out = append(out.Z, r.Z[i*d:(i+1)*d]...), append(out.Out, r.Out[i*w:(i+1)*w]...)
		out.Prior[k] = r.Prior[i] - math.Log(chance[i])
	}
	out.Prior = powered(out.Prior, out.Prior, 0)
	return out
}

// A wanderer goes from what was believed to what is known under a surrogate.
type wanderer struct {
	rand      *rand.Rand
	surrogate *surrogate
	turn      *mat.Dense
	seen      Sight
}

// near are weights of runs by how likely the surrogate takes them for, so far as enough of
// them count for another surrogate: what is far away does not bend that one.
func (w *wanderer) near(u []float64, d int) []float64 {
	ll := w.logs(mat.NewDense(len(u)/d, d, u))
	flat := make([]float64, len(ll))
	return powered(flat, ll, largest(flat, ll, 512+fewest*float64(1+d+d*(d+1)/2)))
}

// largest is the largest power of a likelihood, up to 1, that leaves so many effective.
func largest(prior, ll []float64, left float64) float64 {
	lacks := func(power float64) float64 { return left - Effective(powered(prior, ll, power)) }
	if lacks(1) <= 0 {
		return 1
	}
	return root.RisingTo(lacks, 0, 1, 1e-12)
}

// of are the surrogate's values of standardised ones.
func (w *wanderer) of(x []float64, d int) *mat.Dense {
	var u mat.Dense
	u.Mul(mat.NewDense(len(x)/d, d, x), w.turn.T())
	return &u
}

// logs are the logarithms of the likelihoods under the surrogate. Where it errs it errs
// far: one in ten is taken for four times as rough.
func (w *wanderer) logs(u *mat.Dense) []float64 {
	out, rough := w.surrogate.at(u)
	logs := w.seen.Logs(out, rough)
	rough.Scatter = slices.Clone(rough.Scatter)
	floats.Scale(4, rough.Scatter)
	for i, far := range w.seen.Logs(out, rough) {
		near := logs[i]
		most := max(near, far)
		logs[i] = most + math.Log(0.9*math.Exp(near-most)+0.1*math.Exp(far-most))
	}
	return logs
}

// wander returns standardised values of runs and the logarithms of their densities, but
// for a constant; nil where all that fits what was seen is too far away.
func (w *wanderer) wander(d, runs int) (x, logs []float64) {
	q := proposal{upright(d)}
	farthest := distuv.ChiSquared{K: float64(min(w.seen.Count, d))}.Quantile(1 - oneIn)
	power := 0.0
	for step := 0; power < 1 && step < mostSteps; step++ {
		x, drawn := q.draw(w.rand, swarm)
		ll, prior := w.logs(w.of(x, d)), priorOver(x, drawn)
		power = max(largest(prior, ll, swarmLeft), min(1, 1.1*power)) // it must go on
		b := fitBell(x, powered(prior, ll, power), d)
		if floats.Dot(b.mean, b.mean) > farthest {
			return nil, nil
		}
		q = append(q, b)
	}
	x, logs = q.draw(w.rand, lastSwarm*runs)
	ll, prior := w.logs(w.of(x, d)), priorOver(x, logs)
	chosen, chance := choose(powered(prior, ll, 1), runs)
	values := make([]float64, 0, runs*d)
	densities := make([]float64, runs)
	for k, i := range chosen {
		values = append(values, x[i*d:(i+1)*d]...)
		densities[k] = logs[i] + math.Log(chance[i])
	}
	return values, densities
}

// choose chooses n of draws, each with a chance of its weight over a level, at most 1
// (rejection control: Liu, Chen and Wong 1998, Journal of the American Statistical
// Association 93:1022, from memory).
func choose(weights []float64, n int) (chosen []int, chance []float64) {
	const least = 1e-9 // none is left without a chance
	chance = make([]float64, len(weights))
	lacks := func(level float64) float64 {
		for i, w := range weights {
			chance[i] = min(1, max(w, least)/level)
		}
		return float64(n) - floats.Sum(chance)
	}
	lacks(root.Rising(lacks, 0, 1.01*floats.Sum(weights)/float64(n)))
	upTo := 0.0
	for i, c := range chance {
		for upTo += c; len(chosen) < n && upTo > float64(len(chosen))+0.5; {
			chosen = append(chosen, i)
		}
	}
	return chosen, chance
}

// priorOver is the logarithm of what was believed of standardised values over the density
// they were drawn from.
func priorOver(x, drawn []float64) []float64 {
	d := len(x) / len(drawn)
	out := make([]float64, len(drawn))
	for i, q := range drawn {
		v := x[i*d : (i+1)*d]
		out[i] = -0.5*floats.Dot(v, v) - q
	}
	return out
}

// powered are the weights, on average 1, for a likelihood raised to a power.
func powered(prior, ll []float64, power float64) []float64 {
	w := make([]float64, len(ll))
	for i := range w {
		w[i] = prior[i] + float64(power*ll[i])
	}
	most := floats.Max(w)
	for i := range w {
		w[i] = math.Exp(w[i] - most)
	}
	floats.Scale(float64(len(w))/floats.Sum(w), w)
	return w
}
