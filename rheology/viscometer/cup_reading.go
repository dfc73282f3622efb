package viscometer

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"strings"
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

// time returns the mean timing and its 95 % half-width: that of the cup's Reading, taken for
// the scatter of ten earlier timings, and of how these scatter, over the root of their number.
func (r CupReading) time() (t time.Duration, reading float64, err error) {
	if err := r.Cup.check(); err != nil {
		return 0, 0, err
	}
	if len(r.Times) == 0 {
		return 0, 0, check.Missing("Times", "at least one timing")
	}
	var sum, squares float64
	for i, t := range r.Times {
		if err := r.Cup.inRange(fmt.Sprintf("Times[%d]", i), t.Seconds(), r.Cup.Least.Seconds(), r.Cup.Most.Seconds(), "s"); err != nil {
			return 0, 0, err
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
	one := r.Cup.Reading.Seconds() / student(earlier)
	reading = student(earlier+n-1) * math.Sqrt((earlier*one*one+squares)/(earlier+n-1)/n)
	return time.Duration(math.Round(mean * float64(time.Second))), reading, nil
}

// kinematic is the viscosity in m2/s with the error of the cup and its reading.
func (r CupReading) kinematic() (nu honestplate.Estimate, t time.Duration, err error) {
	t, reading, err := r.time()
	if err != nil {
		return nu, 0, err
	}
	c := r.Cup
	c.Reading = time.Duration(reading * float64(time.Second))
	nu, err = c.KinematicViscosity(t)
	return nu, t, err
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
	nu, t, err := r.kinematic()
	rho, err2 := check.Density(l.Density(m.TempC))
	if err := cmp.Or(err, err2); err != nil {
		return rheology.Measured{}, err
	}
	m.PaS, m.ShearRate = nu.Times(rho.Likely), r.Cup.ShearRate(t)
	if _, err := m.ViscosityAtRate(m.TempC, m.ShearRate); err != nil {
		return rheology.Measured{}, err
	}
	return m, nil
}

// instead adds to the error of a time outside the cup's range the cup that would tell.
func (r CupReading) instead(err error, m rheology.Mix, tempC, rho float64) error {
	var outside *honestplate.RangeError
	own, failed := m.Viscosity(tempC)
	if failed != nil || !errors.As(err, &outside) || !strings.HasPrefix(outside.Field, "Times") || !(outside.Value > 0) {
		return err
	}
	// The formula is wrong outside its range, yet near enough to choose a cup by.
	if nu := r.Cup.nu(outside.Value); nu > 0 {
		if name := r.Cup.instead(m, tempC, nu*rho/own.Likely); name != "" {
			told := *outside
			told.Source = honestplate.OneLine(r.Cup.Name) + ": take " + name
			return &told
		}
	}
	return err
}

// A CupCorrection is what to add to a batch that a cup was timed of, and the times that mean
// "leave it".
type CupCorrection struct {
	rheology.Correction
	// OKTime is the range of times that mean "leave it".
	OKTime OKTime `json:"ok_time,omitzero"`
}

// Correct corrects a batch from its times in the cup: [rheology.Batch.Correct], with the cup's
// viscosity moved by the mix's own curve from the cup's shear rate and temperature to those
// of the recipe. The cup's band goes into Predicted. Errors are those of Correct, of the
// cup's range, and of a liquid that a cup cannot read.
func (r CupReading) Correct(b rheology.Batch) (CupCorrection, error) {
	a, err := asked(b)
	if err != nil {
		return CupCorrection{}, err
	}
	tempC := r.TempC.Or(b.Recipe.TempC)
	r.TempC = honestplate.Some(tempC)
	m, err := r.Measure(a.mix)
	if err != nil {
		rho, failed := a.mix.Density(tempC)
		return CupCorrection{}, r.instead(cmp.Or(failed, err), a.mix, tempC, rho.Likely)
	}
	measured, err := m.Viscosity(b.Recipe.TempC)
	_, reading, err2 := r.time()
	if err := cmp.Or(err, err2); err != nil {
		return CupCorrection{}, err
	}
	// A target that this cup cannot tell may still be corrected to: its own error is then
	// that of the reading.
	tolerance, errTold := a.tolerance(r.Cup, reading)
	if errTold != nil {
		tolerance = math.Log(m.PaS.High/m.PaS.Low) / 2
	}
	c, err := b.Correct(measured, tolerance)
	if err != nil {
		return CupCorrection{}, honestplate.In("Batch", err)
	}
	ok, err := a.okTime(r.Cup, math.Log(c.OK.High/c.OK.Likely))
	return CupCorrection{c, ok}, err
}
