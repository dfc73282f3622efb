package thermal

// A Stage is how much water on a glass, g/m2, makes it look a certain way: the
// likely amount and 95 % limits.
type Stage struct {
	Low, Likely, High float64
}

// FogStages are the looks that a cold glass passes through as it gathers dew. They
// depend on the light, the lens and how clean the glass is: no published values
// for the eye or the camera were found. DefaultStages gives engineering estimates;
// put in what you weigh on your own set.
type FogStages struct {
	Haze   Stage // the first breath of fog: drops of 1..5 um
	Opaque Stage // a closed white fog
	Beads  Stage // drops that the eye tells apart, a quarter to half a millimetre
	Runs   Stage // the first drop runs down
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
		Haze:   Stage{0.1, 0.4, 1},
		Opaque: Stage{1, 4, 10},
		Beads:  Stage{10, 20, 50},
		Runs:   Stage{100, 175, 300},
	}
}

// check returns an error unless each stage has positive limits around its likely
// value and the stages follow one another.
func (s FogStages) check() error {
	before := Stage{}
	for _, st := range [...]struct {
		name string
		s    Stage
	}{{"haze", s.Haze}, {"opaque fog", s.Opaque}, {"beads", s.Beads}, {"runs", s.Runs}} {
		for _, v := range [...]float64{st.s.Low, st.s.Likely, st.s.High} {
			if err := within(st.name+" threshold", v, 1e-6, 1e5, "g/m2", "this package"); err != nil {
				return err
			}
		}
		if st.s.Low > st.s.Likely || st.s.Likely > st.s.High {
			return &InputError{st.name + " threshold", st.s.Likely, "g/m2", "between its low and high limits"}
		}
		if st.s.Likely <= before.Likely {
			return &InputError{st.name + " threshold", st.s.Likely, "g/m2", "above that of the stage before it"}
		}
		before = st.s
	}
	return nil
}
