package study

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/stat"
)

func someInputs() []Input {
	return []Input{
		{Key: "room.temp_c", Shared: Room}, {Key: "room.dew_c", Shared: Room}, {Key: "crew.beads", Shared: Crew},
		{Key: "crew.runny_c", Shared: Crew}, {Key: "product.k", Shared: Product}, {Key: "product.rho", Shared: Product},
		{Key: "unit.start_c"}, {Key: "unit.size"}, {Key: "unit.contact"}, {Key: "unit.pace"},
	}
}

// Every column is a normal sample without gaps, and no two of one study correlate: the
// worst of all pairs stays below a tenth of what chance gives, 1/sqrt(n).
func TestColumnsDoNotCorrelate(t *testing.T) {
	for _, n := range []int{UsualRuns, TaughtRuns} {
		columns := append(Points{Runs: n, Kind: "scoop"}.Columns(someInputs()), coreColumns(n)...)
		for i, a := range columns {
			if mean, sd := stat.MeanStdDev(a, nil); math.Abs(mean) > 1e-9 || math.Abs(sd-1) > 0.01 {
				t.Errorf("%d runs, column %d: mean %g, deviation %g", n, i, mean, sd)
			}
			for j, b := range columns[:i] {
				if &a[0] == &b[0] {
					continue // one of the core
				}
				if r := stat.Correlation(a, b, nil); math.Abs(r) > 0.1/math.Sqrt(float64(n)) {
					t.Errorf("%d runs, columns %d and %d: %.4f", n, i, j, r)
				}
			}
		}
	}
}

// What is shared has the same numbers in every study; what is of a unit, or of another
// kind's product, has not.
func TestSharedInputsAreDrawnOnce(t *testing.T) {
	in := someInputs()
	a := Points{Runs: UsualRuns, Kind: "scoop"}.Columns(in)
	b := Points{Runs: UsualRuns, Kind: "scoop", Unit: 3}.Columns(in[2:])
	c := Points{Runs: UsualRuns, Kind: "glass"}.Columns(in[1:])
	for i := range in {
		if i >= 2 {
			if same := cmp.Equal(a[i], b[i-2]); same != (in[i].Shared != Unit) {
				t.Errorf("another unit, %s: same is %t", in[i].Key, same)
			}
		}
		if i >= 1 {
			if same := cmp.Equal(a[i], c[i-1]); same != (in[i].Shared == Room || in[i].Shared == Crew) {
				t.Errorf("another kind, %s: same is %t", in[i].Key, same)
			}
		}
	}
}
