package thermal

import "time"

// A FreezeStage is some time in one freezer, or on a counter.
type FreezeStage struct {
	Medium Medium        // what surrounds the portion
	For    time.Duration // above 0, at most 30 days
}

// A FreezeState is the portion at the end of a FreezeStage.
type FreezeState struct {
	SurfaceC, MeanC, CoreC float64 // degC
}

// After returns what the portion is like after each of the stages, one after the
// other, such as a night in a home freezer, three hours in a deep freezer and ten
// minutes in transport; TargetC and Medium are not used. What a Scoop starts from is
// the MeanC of the last.
func (d DeepFreeze) After(stages ...FreezeStage) ([]FreezeState, error) {
	if len(stages) == 0 || len(stages) > 100 {
		return nil, &InputError{"number of stages", float64(len(stages)), "", "1 to 100"}
	}
	for _, s := range stages {
		if err := s.Medium.Validate(); err != nil {
			return nil, err
		}
		if err := within("length of a stage", s.For.Seconds(), 1e-3, 30*86400, "s", "freezer stages"); err != nil {
			return nil, err
		}
	}
	m, err := d.material()
	if err != nil {
		return nil, err
	}
	var run freezeRun
	run.c.load(m.curve)
	run.e.build(d.Form, d.Diameter/2, freezeCells, usualGrade)
	run.e.begin(&run.c, d.StartC, freezeTolerance, &run.law)
	run.e.careFrom(10)
	ends := make([]FreezeState, len(stages))
	until := 0.0
	for i, s := range stages {
		run.law = newtonLaw{s.Medium.H, s.Medium.TempC}
		run.e.restart()
		until += s.For.Seconds()
		if err := run.e.runTo(until); err != nil {
			return nil, err
		}
		st := run.e.state(0, d.StartC)
		ends[i] = FreezeState{SurfaceC: st.SurfaceC, MeanC: st.MeanC, CoreC: st.CoreC}
	}
	return ends, nil
}
