package rheology

import (
	"cmp"
	"math"
	"time"

	"example.org/honestplate"
)

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
