package thermal

import (
	"cmp"
	"fmt"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/cold"
	"example.org/honestplate/thermal/internal/check"
	"example.org/honestplate/thermal/internal/solve"
)

// A FreezeStage is some time in one freezer, or on a counter.
type FreezeStage struct {
	Medium cold.Medium   `json:"medium"` // what surrounds the portion
	For    time.Duration `json:"for_ns"` // above 0, at most 30 days
}

// After returns what the portion is like after each of the stages, one after the
// other, such as a night in a home freezer, three hours in a deep freezer and ten
// minutes in transport; TargetC and Medium are not used. What a Scoop starts from is
// the MeanC of the last.
func (d DeepFreeze) After(stages ...FreezeStage) ([]BodyPoint, error) {
	if len(stages) == 0 || len(stages) > 100 {
		return nil, check.Input("Stages", float64(len(stages)), "stages", "1 to 100")
	}
	for i, s := range stages {
		if err := cmp.Or(mediumCheck(s.Medium),
			honestplate.InRange("For", s.For.Seconds(), 1e-3, 30*86400, "s", "from a millisecond to a month")); err != nil {
			return nil, honestplate.In(fmt.Sprintf("Stages[%d]", i), err)
		}
	}
	m, err := d.material()
	if err != nil {
		return nil, err
	}
	var run freezeRun
	solve.Load(&run.c, m.curve, 1, 1)
	run.e.Build(int(d.Form), d.Diameter/2, freezeCells, solve.UsualGrade)
	run.e.Begin(&run.c, d.StartC.Value, freezeTolerance, &run.law)
	run.e.CareFrom(10)
	ends := make([]BodyPoint, len(stages))
	until := 0.0
	for i, s := range stages {
		run.law = newtonLaw{s.Medium.H.Likely, s.Medium.TempC}
		run.e.Restart()
		until += s.For.Seconds()
		if err := run.e.RunTo(until); err != nil {
			return nil, err
		}
		ends[i] = bodyPoint(&run.e)
	}
	return ends, nil
}
