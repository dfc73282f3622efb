package published

import (
	"math"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/testdata"
	"example.org/honestplate/thermal/heat"
)

// A log is copied thinned: a comparison needs no more than 30 readings a run.
func TestCopiedLogsAreThinned(t *testing.T) {
	marked := 0
	for _, name := range testdata.Names() {
		table, err := testdata.Load(name)
		if err != nil {
			t.Fatal(err)
		}
		if table.Mark == "" {
			continue
		}
		marked++
		runs := map[string]int{}
		for _, r := range table.Rows {
			runs[keyOf(r, []string{"run", "cup", "trial", "vessel", "shape", "surface"})]++
		}
		for run, n := range runs {
			if n > 30 {
				t.Errorf("%s.csv, run %q: %d readings, want at most 30", name, run, n)
			}
		}
	}
	if marked < 18 {
		t.Errorf("%d timed measurements, want 18 or more", marked)
	}
}

// Ice that recedes by the ball's way takes as long as the closed form says: rho L d/(h T).
func TestRecedingIceFollowsTheClosedForm(t *testing.T) {
	for _, waterC := range []float64{5, 18, 28} {
		const depth = 0.0055
		w, err := recedes(depth, waterC)
		if err != nil {
			t.Fatal(err)
		}
		// The ball of recedes, on its way to half its volume.
		h, err := heat.Surface{Shape: heat.Sphere, Length: 0.9 * 2 * depth / (1 - math.Cbrt(0.5))}.InWater(0, waterC)
		if err != nil {
			t.Fatal(err)
		}
		want := 917 * 333.5e3 * depth / (h * waterC)
		if got := secondsOf(w.Likely); math.Abs(got/want-1) > 0.06 {
			t.Errorf("%g degC: %.0f s, want %.0f s", waterC, got, want)
		}
	}
}

func TestRunsStartWithTheirFirstReading(t *testing.T) {
	table, err := testdata.Load("course_canister")
	if err != nil {
		t.Fatal(err)
	}
	of := runs("course_canister", "time_s", "water_c", "run")
	u, err := of(table.Rows[len(table.Rows)-1])
	if err != nil {
		t.Fatal(err)
	}
	if u.startC != 48 || u.roomC < 23 || u.roomC > 24.5 || len(u.rows) != 15 {
		t.Errorf("run 2 starts at %g degC in %g degC with %d readings", u.startC, u.roomC, len(u.rows))
	}
	if _, err := of(table.Rows[0].With("run", "9")); err == nil {
		t.Error("a run that is not in the table is found")
	}
}

func TestWhatNeverComesIsEndless(t *testing.T) {
	p := whenRead("x", 100, honestplate.Window{Earliest: honestplate.After(time.Minute), Likely: honestplate.After(2 * time.Minute), Latest: honestplate.Never()})
	if !p.Inside() || !math.IsInf(p.High, 1) || p.Low != 60 || p.Predicted != 120 {
		t.Errorf("%+v", p)
	}
}

func TestLeftSetsSayWhy(t *testing.T) {
	left := 0
	for _, c := range thermalCourses {
		if c.Left == "" {
			continue
		}
		left++
		r, err := Run(c)
		if err != nil {
			t.Fatal(err)
		}
		if len(r.Points) == 0 || len(r.Compared()) != 0 || r.Points[0].Skip != c.Left {
			t.Errorf("%s: %d points, %d compared", c.Table, len(r.Points), len(r.Compared()))
		}
	}
	if left == 0 {
		t.Error("no set is left out")
	}
}
