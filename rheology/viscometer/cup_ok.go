package viscometer

import (
	"math"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
)

// OKTime is the range of cup times that mean "leave it".
type OKTime struct {
	From       time.Duration `json:"from_ns"`           // shortest
	Target     time.Duration `json:"target_ns"`         // of a batch exactly on target
	To         time.Duration `json:"to_ns"`             // longest
	FloorHides bool          `json:"floor_hides"`       // the cup's shortest time cuts the range: thinner batches look the same or show nothing
	Instead    string        `json:"instead,omitempty"` // the cup that would tell then, if the list has one
}

// A CupTest is what a cup should show of a batch as it was predicted, and what to make of it.
type CupTest struct {
	Time      honestplate.Window `json:"time"`             // expected, with the band of the prediction, cut at the cup's limits
	OK        OKTime             `json:"ok"`               // times that mean "leave it"
	ShearRate float64            `json:"shear_rate_per_s"` // of the cup at the target, 1/s
}

// Test returns what the cup should show of a batch at its recipe's temperature. OK is
// the cup's own error about the target's time or, where the scale is coarser, what one more
// step of either liquid would do. FloorHides says that the cup's shortest time cuts off part
// of the band or of OK, and Instead which cup would not. A target whose time the cup cannot
// tell is a RangeError that names one that can.
func (c Cup) Test(b rheology.Batch) (CupTest, error) {
	a, err := asked(b)
	if err != nil {
		return CupTest{}, err
	}
	tolerance, err := a.tolerance(c)
	if err != nil {
		return CupTest{}, err
	}
	ok, err := a.okTime(c, tolerance)
	if err != nil {
		return CupTest{}, err
	}
	var times [3]time.Duration
	for i, pas := range [...]float64{b.Predicted.Low, b.Predicted.Likely, b.Predicted.High} {
		if times[i], err = c.timeOf(a.mix, b.Recipe.TempC, pas/a.own, likelyOf); err != nil {
			return CupTest{}, err
		}
	}
	out := CupTest{
		Time:      honestplate.Lasting(c.clamp(times[0]), c.clamp(times[1]), c.clamp(times[2])),
		OK:        ok,
		ShearRate: c.ShearRate(ok.Target),
	}
	if out.OK.FloorHides = out.OK.FloorHides || times[0] < c.Least; out.OK.FloorHides {
		out.OK.Instead = c.instead(a.mix, b.Recipe.TempC, a.scale)
	}
	return out, nil
}

// A target is what a cup is asked of a batch.
type target struct {
	rheology.Batch
	mix   rheology.Mix // the batch as a liquid
	own   float64      // its viscosity, Pa s
	scale float64      // how many times that the target is
}

// asked is the batch as a target.
func asked(b rheology.Batch) (target, error) {
	if err := honestplate.Positive("Batch.TargetPaS", b.TargetPaS, "Pa s"); err != nil {
		return target{}, err
	}
	m, err := b.Mix()
	if err != nil {
		return target{}, honestplate.In("Batch", err)
	}
	own, err := m.Viscosity(b.Recipe.TempC)
	return target{b, m, own.Likely, b.TargetPaS / own.Likely}, err
}

// tolerance is the half-width in ln within which a batch cannot be told from its target: the
// cup's calibration and its Reading at the target's time, or one step of the scale.
func (a target) tolerance(c Cup) (float64, error) {
	tempC := a.Recipe.TempC
	t, err := c.timeOf(a.mix, tempC, a.scale, likelyOf)
	if err != nil {
		return 0, err
	}
	if err := c.told("T", t, a.mix, tempC, a.scale); err != nil {
		return 0, err
	}
	s := t.Seconds()
	cup := math.Hypot(c.Rel, (c.A+c.B/(s*s))*c.Reading.Seconds()/c.nu(s))
	// A batch on target is left alone; how far about it, the recipe's curve says.
	left, err := a.Correct(honestplate.Exactly(a.TargetPaS), cup)
	if err != nil {
		return 0, honestplate.In("Batch", err)
	}
	return math.Log(left.OK.High / left.OK.Likely), nil
}

// okTime is the times of the target and of so much, in ln, about it.
func (a target) okTime(c Cup, tolerance float64) (OKTime, error) {
	var t [3]time.Duration
	for i, off := range [...]float64{-tolerance, 0, tolerance} {
		var err error
		if t[i], err = c.timeOf(a.mix, a.Recipe.TempC, a.scale*math.Exp(off), likelyOf); err != nil {
			return OKTime{}, err
		}
	}
	return OKTime{From: c.clamp(t[0]), Target: c.clamp(t[1]), To: c.clamp(t[2]), FloorHides: t[0] < c.Least}, nil
}
