package viscometer

import (
	"cmp"
	"fmt"
	"math"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/internal/check"
	"gonum.org/v1/gonum/stat/distuv"
)

// A CupReading is what was read off a flow cup: one timing, or better three of the same
// liquid, and how warm it was in the cup.
type CupReading struct {
	Cup   Cup                  `json:"cup"`             // that was filled
	Times []time.Duration      `json:"times_ns"`        // the timings, one or more
	TempC honestplate.Optional `json:"temp_c,omitzero"` // of the liquid in the cup, degC; of a batch the recipe's if left out
}

// Timed returns a reading of the cup at the temperature of the recipe; set TempC for another.
func (c Cup) Timed(times ...time.Duration) CupReading { return CupReading{Cup: c, Times: times} }

// timed returns the mean timing and the cup with the 95 % half-width of that mean: that of the
// cup's Reading, taken for the scatter of ten earlier timings, and of how these scatter, over
// the root of their number.
func (r CupReading) timed() (t time.Duration, cup Cup, err error) {
	cup = r.Cup
	if err := cup.check(); err != nil {
		return 0, cup, err
	}
	if len(r.Times) == 0 {
		return 0, cup, check.Missing("Times", "at least one timing")
	}
	var sum, squares float64
	for i, t := range r.Times {
		if err := cup.inRange(fmt.Sprintf("Times[%d]", i), t.Seconds(), cup.Least.Seconds(), cup.Most.Seconds(), "s"); err != nil {
			return 0, cup, err
		}
		sum += t.Seconds()
	}
	n := float64(len(r.Times))
	mean := sum / n
	for _, t := range r.Times {
		squares += (t.Seconds() - mean) * (t.Seconds() - mean)
	}
	const earlier = 10.0
	student := func(nu float64) float64 { return distuv.StudentsT{Mu: 0, Sigma: 1, Nu: nu}.Quantile(0.975) }
	one := cup.Reading.Seconds() / student(earlier)
	reading := student(earlier+n-1) * math.Sqrt((earlier*one*one+squares)/(earlier+n-1)/n)
	cup.Reading = time.Duration(reading * float64(time.Second))
	return time.Duration(math.Round(mean * float64(time.Second))), cup, nil
}

// Measure returns the liquid as the cup measured it: [rheology.Measured] at the cup's temperature and
// its shear rate. TempC must be given. A liquid with a yield stress is a RefusedError
// (ErrNoFlow), one that thins in a cup of unknown Bore an InputError.
func (r CupReading) Measure(l rheology.Liquid) (rheology.Measured, error) {
	if !r.TempC.Given {
		return rheology.Measured{}, check.Missing("TempC", "the temperature of the liquid in the cup")
	}
	if check.IsNil(l) {
		return rheology.Measured{}, check.Missing("Liquid", "a liquid")
	}
	m := rheology.Measured{Liquid: l, TempC: r.TempC.Value}
	if d, ok := l.(rheology.Dairy); !ok || d.Treatment != rheology.Thickened {
		if _, err := r.Cup.reads(l, m.TempC); err != nil {
			return rheology.Measured{}, err
		}
	}
	t, cup, err := r.timed()
	rho, err2 := check.Density(l.Density(m.TempC))
	if err := cmp.Or(err, err2); err != nil {
		return rheology.Measured{}, err
	}
	nu, err := cup.KinematicViscosity(t)
	if err != nil {
		return rheology.Measured{}, err
	}
	m.PaS, m.ShearRate = nu.Times(rho.Likely), r.Cup.ShearRate(t)
	if _, err := m.ViscosityAtRate(m.TempC, m.ShearRate); err != nil {
		return rheology.Measured{}, err
	}
	return m, nil
}

// Correct corrects a batch from its times in the cup: [rheology.Batch.Correct], with the cup's
// viscosity moved by the mix's own curve from the cup's shear rate and temperature to those
// of the recipe. The cup's band goes into Predicted. Errors are those of Correct, of the
// cup's range, and of a liquid that a cup cannot read.
func (r CupReading) Correct(b rheology.Batch) (rheology.Correction, error) {
	a, err := asked(b)
	if err != nil {
		return rheology.Correction{}, err
	}
	tempC := r.TempC.Or(b.Recipe.TempC)
	r.TempC = honestplate.Some(tempC)
	own, err := kinematicViscosity(a.mix, tempC)
	err = cmp.Or(r.Cup.check(), err)
	for i, t := range r.Times {
		if err == nil && r.Cup.nu(t.Seconds()) > 0 {
			// The formula is wrong outside its range, yet near enough to choose a cup by.
			err = r.Cup.told(fmt.Sprintf("Times[%d]", i), t, a.mix, tempC, r.Cup.nu(t.Seconds())/own.Likely)
		}
	}
	if err != nil {
		return rheology.Correction{}, err
	}
	m, err := r.Measure(a.mix)
	if err != nil {
		return rheology.Correction{}, err
	}
	measured, err := m.Viscosity(b.Recipe.TempC)
	_, cup, err2 := r.timed()
	if err := cmp.Or(err, err2); err != nil {
		return rheology.Correction{}, err
	}
	// A target that this cup cannot tell may still be corrected to: its own error is then
	// that of the reading.
	tolerance, errTold := a.tolerance(cup)
	if errTold != nil {
		tolerance = math.Log(m.PaS.High/m.PaS.Low) / 2
	}
	c, err := b.Correct(measured, tolerance)
	if err != nil {
		return rheology.Correction{}, honestplate.In("Batch", err)
	}
	return c, nil
}
