package study

import (
	"cmp"
	"hash/fnv"
	"math/rand/v2"
	"slices"
	"sync"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat/distuv"
)

// core are the shared inputs whose columns are made first and freed of correlation among
// each other, in this order; others are freed of correlation with these. A new one goes
// to the end: the order fixes which numbers a run draws.
var core = []string{
	"room.temp_c", "room.dew_c", "room.speed_m_s", "room.convection", "lamps.light",
	"room.freezer_c", "room.freezer_h",
	"crew.haze", "crew.opaque", "crew.beads", "crew.runs", "crew.dilution",
	"crew.soft_frozen", "crew.soft_depth_m", "crew.slump_share", "crew.skin_depth_m",
	"crew.runny_c", "crew.set_c", "crew.steam_g_m3",
}

// A Points is where a study draws its runs: run r of every study that has as many runs
// draws a shared input of one key from one quantile, whatever else it draws, so that
// runs of several things with the same index belong together. What is of a unit alone is
// drawn afresh for each Kind and Unit, what is of a product for each Kind.
type Points struct {
	Runs int
	Kind string
	Unit int
	// Known are the columns of what has been learned, by [Input.Column].
	Known map[string][]float64
}

// Column is the name under which an input is drawn: a unit's and a product's input
// carry the kind of thing.
func (u Input) Column(kind string) string {
	if u.Shared == Unit || u.Shared == Product {
		return kind + "/" + u.Key
	}
	return u.Key
}

// Columns returns the standard normal values of the inputs, input by input.
func (p Points) Columns(inputs []Input) [][]float64 {
	first := coreColumns(p.Runs)
	made := slices.Clip(first)
	out := make([][]float64, len(inputs))
	for j, u := range inputs {
		key := u.Column(p.Kind)
		known, learned := p.Known[key]
		switch i := slices.Index(core, key); {
		case learned:
			out[j] = known
		case i >= 0:
			out[j] = first[i]
		case u.Shared == Product: // the inputs of a kind always come in one order
			out[j] = column(key, 0, p.Runs, made)
			made = append(made, out[j])
		case u.Shared != Unit:
			out[j] = column(key, 0, p.Runs, first)
		}
	}
	for j, u := range inputs { // what nobody shares gives way to what is shared
		if out[j] == nil {
			out[j] = column(u.Column(p.Kind), p.Unit, p.Runs, made)
			made = append(made, out[j])
		}
	}
	return out
}

// coreColumns are the columns of the core: a constant of the number of runs.
func coreColumns(n int) [][]float64 {
	switch n {
	case UsualRuns:
		return usualCore()
	case TaughtRuns:
		return taughtCore()
	}
	return makeCore(n)
}

var (
	usualCore  = sync.OnceValue(func() [][]float64 { return makeCore(UsualRuns) })
	taughtCore = sync.OnceValue(func() [][]float64 { return makeCore(TaughtRuns) })
)

func makeCore(n int) [][]float64 {
	out := make([][]float64, 0, len(core))
	for _, key := range core {
		out = append(out, column(key, 0, n, out))
	}
	return out
}

// column returns the normal scores of n even strata in an order that hangs on the key
// and the unit alone, then changed so that it does not correlate with the columns
// before: Latin hypercube sampling after McKay, Beckman and Conover 1979, correlation
// taken out as by Iman and Conover 1982, column by column.
func column(key string, unit, n int, before [][]float64) []float64 {
	h := fnv.New64a()
	h.Write([]byte(key)) // never fails
	order := rand.New(rand.NewPCG(h.Sum64(), uint64(unit))).Perm(n)
	scores := scores(n)
	x, free := make([]float64, n), make([]float64, n)
	for i, k := range order {
		x[i] = scores[k]
	}
	for range 3 {
		copy(free, x)
		for _, c := range before {
			floats.AddScaled(free, -floats.Dot(free, c)/floats.Dot(c, c), c)
		}
		for i := range order {
			order[i] = i
		}
		slices.SortFunc(order, func(a, b int) int { return cmp.Or(cmp.Compare(free[a], free[b]), a-b) })
		for rank, i := range order {
			x[i] = scores[rank]
		}
	}
	return x
}

// scores are the normal quantiles in the middle of n even strata.
func scores(n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = distuv.UnitNormal.Quantile((float64(i) + 0.5) / float64(n))
	}
	return out
}
