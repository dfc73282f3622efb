package thermal

import (
	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/check"
	"example.org/honestplate/thermal/internal/study"
)

// FogStages are the looks that a cold glass passes through as it gathers dew. They
// depend on the light, the lens and how clean the glass is: no published values
// for the eye or the camera were found. DefaultStages gives engineering estimates;
// put in what you weigh on your own set. Each is the water on the glass, g/m2.
type FogStages struct {
	Haze   honestplate.Estimate `json:"haze"`   // the first breath of fog: drops of 1..5 um
	Opaque honestplate.Estimate `json:"opaque"` // a closed white fog
	Beads  honestplate.Estimate `json:"beads"`  // drops that the eye tells apart, a quarter to half a millimetre
	Runs   honestplate.Estimate `json:"runs"`   // the first drop runs down
}

// DefaultStages returns the package's engineering estimates, g/m2: haze 0.4
// (0.1..1), opaque 4 (1..10), beads 20 (10..50), runs 175 (100..300).
//
// Behind them: caps of 90 deg contact angle covering 0.55 of the glass hold
// 0.37 g/m2 for each um of radius (geometry; the coverage from memory); a building
// standard's limit for run-off is 200 g/m2 (EN ISO 13788, from memory); a drop
// holds on washed upright glass to some 5 mm width (drop retention, contact angles
// assumed). On very clean glass runs come early, on greasy glass late.
func DefaultStages() FogStages {
	return FogStages{
		Haze:   band(0.1, 0.4, 1),
		Opaque: band(1, 4, 10),
		Beads:  band(10, 20, 50),
		Runs:   band(100, 175, 300),
	}
}

// input is the uncertainty of the i-th stage.
func (s FogStages) input(stage *honestplate.Estimate, i int) study.Input {
	in := judged("crew."+[...]string{"haze", "opaque", "beads", "runs"}[i], "what counts as "+stageNames[i], *stage)
	in.Factor, in.To = true, &stage.Likely
	return in
}

// check returns an error unless each stage has positive limits around its likely
// value and the stages follow one another.
func (s FogStages) check() error {
	before := 0.0
	for i, st := range s.list() {
		name := "Stages." + [...]string{"Haze", "Opaque", "Beads", "Runs"}[i]
		if err := check.Band(name, st, 1e-6, 1e5, "g/m2", "films of water"); err != nil {
			return err
		}
		if st.Likely <= before {
			return check.Input(name, st.Likely, "g/m2", "above that of the stage before it")
		}
		before = st.Likely
	}
	return nil
}

var stageNames = [...]string{"haze", "opaque fog", "beads", "runs"}

func (s FogStages) list() [4]honestplate.Estimate {
	return [...]honestplate.Estimate{s.Haze, s.Opaque, s.Beads, s.Runs}
}
