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
	return FogStages{Haze: band(0.1, 0.4, 1), Opaque: band(1, 4, 10), Beads: band(10, 20, 50), Runs: band(100, 175, 300)}
}

// A fogStage is one of the stages, and what it is called.
type fogStage struct {
	key, field, words string
	*honestplate.Estimate
}

func (s *FogStages) list() [4]fogStage {
	return [...]fogStage{
		{"crew.haze", "Stages.Haze", "haze", &s.Haze}, {"crew.opaque", "Stages.Opaque", "opaque fog", &s.Opaque},
		{"crew.beads", "Stages.Beads", "beads", &s.Beads}, {"crew.runs", "Stages.Runs", "runs", &s.Runs},
	}
}

// inputs are how far what counts is known.
func (s *FogStages) inputs() []study.Input {
	var in []study.Input
	for _, st := range s.list() {
		u := bound(&st.Likely, judged(st.key, "what counts as "+st.words, *st.Estimate))
		u.Factor = true
		in = append(in, u)
	}
	return in
}

// check returns an error unless each stage has positive limits around its likely
// value and the stages follow one another.
func (s FogStages) check() error {
	before := 0.0
	for _, st := range s.list() {
		if err := check.Band(st.field, *st.Estimate, 1e-6, 1e5, "g/m2", "films of water"); err != nil {
			return err
		}
		if st.Likely <= before {
			return check.Input(st.field, st.Likely, "g/m2", "above that of the stage before it")
		}
		before = st.Likely
	}
	return nil
}
