package rheology

import (
	"cmp"
	"fmt"
	"math"
	"time"

	"example.org/honestplate"
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

// time returns the mean timing and its 95 % half-width: the cup's Reading over the root of
// their number, or if they scatter more Student's factor times what they scatter.
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
	reading = r.Cup.Reading.Seconds() / math.Sqrt(n)
	if len(r.Times) > 1 {
		for _, t := range r.Times {
			squares += (t.Seconds() - mean) * (t.Seconds() - mean)
		}
		student := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: n - 1}.Quantile(0.975)
		reading = max(reading, student*math.Sqrt(squares/(n-1)/n))
	}
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

// Measure returns the liquid as the cup measured it: [Measured] at the cup's temperature and
// its shear rate. TempC must be given. A liquid with a yield stress is an InputError, as is
// one that thins in a cup of unknown Bore.
func (r CupReading) Measure(l Liquid) (Measured, error) {
	if !r.TempC.Given {
		return Measured{}, check.Missing("TempC", "the temperature of the liquid in the cup")
	}
	m := Measured{Liquid: l, TempC: r.TempC.Value}
	if d, ok := l.(Dairy); !ok || d.Treatment != Thickened {
		if _, err := r.Cup.reads(l, m.TempC); err != nil {
			return Measured{}, err
		}
	}
	nu, t, err := r.kinematic()
	if err != nil {
		return Measured{}, err
	}
	rho, err := l.Density(m.TempC)
	if err != nil {
		return Measured{}, err
	}
	m.PaS, m.ShearRate = nu.Times(rho.Likely), r.Cup.ShearRate(t)
	return m, m.check()
}

// OKTime is the range of cup times that mean "leave it".
type OKTime struct {
	From       time.Duration `json:"from_ns"`           // shortest
	Target     time.Duration `json:"target_ns"`         // of a batch exactly on target
	To         time.Duration `json:"to_ns"`             // longest
	FloorHides bool          `json:"floor_hides"`       // the cup's shortest time cuts the range: thinner batches look the same or show nothing
	Instead    string        `json:"instead,omitempty"` // the cup that would tell, if the list has one
}

// A CupTest is what a cup should show of a batch as it was predicted, and what to make of it.
type CupTest struct {
	Time      honestplate.Window `json:"time"`             // expected, with the band of the prediction, cut at the cup's limits
	OK        OKTime             `json:"ok"`               // times that mean "leave it"
	ShearRate float64            `json:"shear_rate_per_s"` // of the cup at the target, 1/s
}

// CupTest returns what the cup should show of the batch at the recipe's temperature. OK is
// the cup's own error about the target's time or, where the scale is coarser, what one more
// step of either liquid would do. FloorHides says that the cup's shortest time cuts off part
// of the band or of OK, and Instead which cup would not. A target whose time the cup cannot
// tell is a RangeError that names one that can.
func (b Batch) CupTest(c Cup) (CupTest, error) {
	m, scale, err := b.scaled()
	if err != nil {
		return CupTest{}, err
	}
	tempC := b.Recipe.TempC
	tolerance, err := b.tolerance(c, m, scale, c.Reading.Seconds())
	if err != nil {
		return CupTest{}, err
	}
	ok, err := b.okTime(c, m, tolerance)
	if err != nil {
		return CupTest{}, err
	}
	var times [3]time.Duration
	ratio := [3]float64{b.Predicted.Low, b.Predicted.Likely, b.Predicted.High}
	own, err := m.Viscosity(tempC)
	if err != nil {
		return CupTest{}, err
	}
	for i := range times {
		if times[i], err = c.timeOf(m, tempC, ratio[i]/own.Likely, likelyOf); err != nil {
			return CupTest{}, err
		}
	}
	out := CupTest{
		Time:      honestplate.Lasting(c.clamp(times[0]), c.clamp(times[1]), c.clamp(times[2])),
		OK:        ok,
		ShearRate: c.ShearRate(ok.Target),
	}
	if times[0] < c.Least {
		out.OK.FloorHides = true
	}
	if out.OK.FloorHides && out.OK.Instead == "" {
		out.OK.Instead = c.instead(m, tempC, scale)
	}
	return out, nil
}

func likelyOf(e honestplate.Estimate) float64 { return e.Likely }

// scaled is the batch as a liquid, and how many times its viscosity the target is.
func (b Batch) scaled() (m Mix, scale float64, err error) {
	if err := honestplate.Positive("TargetPaS", b.TargetPaS, "Pa s"); err != nil {
		return Mix{}, 0, err
	}
	if m, err = b.Mix(); err != nil {
		return Mix{}, 0, err
	}
	own, err := m.Viscosity(b.Recipe.TempC)
	return m, b.TargetPaS / own.Likely, err
}

// tolerance is the half-width in ln within which a cup cannot tell the target: its
// calibration and its reading, in s, at the target's time.
func (b Batch) tolerance(c Cup, m Mix, scale, reading float64) (float64, error) {
	t, err := c.timeOf(m, b.Recipe.TempC, scale, likelyOf)
	if err != nil {
		return 0, err
	}
	if err := c.told(t, m, b.Recipe.TempC, scale); err != nil {
		return 0, err
	}
	s := t.Seconds()
	cup := math.Hypot(c.Rel, (c.A+c.B/(s*s))*reading/c.nu(s))
	p, err := b.Recipe.pair()
	if err != nil {
		return 0, honestplate.In("Recipe", err)
	}
	thin, err1 := stepsOf("ThinGrams", b.ThinGrams, b.Recipe.StepGrams)
	thick, err2 := stepsOf("ThickGrams", b.ThickGrams, b.Recipe.StepGrams)
	if err := cmp.Or(err1, err2); err != nil {
		return 0, err
	}
	curve := p.through(float64(thick)/float64(thin+thick), honestplate.Exactly(b.TargetPaS))
	return max(cup, curve.oneStep(thin, thick)), nil
}

// okTime is the times of the target and of so much, in ln, about it.
func (b Batch) okTime(c Cup, m Mix, tolerance float64) (OKTime, error) {
	own, err := m.Viscosity(b.Recipe.TempC)
	if err != nil {
		return OKTime{}, err
	}
	var t [3]time.Duration
	for i, off := range [...]float64{-tolerance, 0, tolerance} {
		if t[i], err = c.timeOf(m, b.Recipe.TempC, b.TargetPaS*math.Exp(off)/own.Likely, likelyOf); err != nil {
			return OKTime{}, err
		}
	}
	ok := OKTime{From: c.clamp(t[0]), Target: c.clamp(t[1]), To: c.clamp(t[2]), FloorHides: t[0] < c.Least}
	if ok.FloorHides {
		ok.Instead = c.instead(m, b.Recipe.TempC, b.TargetPaS/own.Likely)
	}
	return ok, nil
}

// CorrectFromCup corrects a batch from its times in a flow cup: Correct, with the cup's
// viscosity moved by the mix's own curve from the cup's shear rate and temperature to those
// of the recipe. The cup's band goes into Predicted, and OKTime says which times mean "leave
// it". Errors are those of Correct, of the cup's range, and of a liquid that a cup cannot
// read.
func (b Batch) CorrectFromCup(r CupReading) (Correction, error) {
	m, scale, err := b.scaled()
	if err != nil {
		return Correction{}, err
	}
	tempC := r.TempC.Or(b.Recipe.TempC)
	thins, err := r.Cup.reads(m, tempC)
	if err != nil {
		return Correction{}, err
	}
	nu, t, err := r.kinematic()
	if err != nil {
		return Correction{}, err
	}
	rho, err := m.Density(tempC)
	if err != nil {
		return Correction{}, err
	}
	there, err := m.Viscosity(tempC)
	if err != nil {
		return Correction{}, err
	}
	own, err := m.Viscosity(b.Recipe.TempC)
	if err != nil {
		return Correction{}, err
	}
	measured := nu.Times(rho.Likely)
	if thins {
		at, err := m.ViscosityAtRate(tempC, r.Cup.ShearRate(t))
		if err != nil {
			return Correction{}, err
		}
		measured = thinned(measured, at, there)
	}
	measured = moved(measured, own.Likely/there.Likely)
	_, reading, err := r.time()
	if err != nil {
		return Correction{}, err
	}
	// A target that this cup cannot tell may still be corrected to: its own error is then
	// that of the reading.
	tolerance, errTold := b.tolerance(r.Cup, m, scale, reading)
	if errTold != nil {
		tolerance = math.Log(nu.High/nu.Low) / 2
	}
	c, err := b.correct(measured, tolerance)
	if err != nil {
		return Correction{}, err
	}
	c.OKTime, err = b.okTime(r.Cup, m, math.Log(c.OK.High/c.OK.Likely))
	return c, err
}
