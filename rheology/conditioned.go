package rheology

import (
	"math"

	"example.org/honestplate"
)

// A conditioned pair is a recipe's curve of viscosity against mix, moved through a measurement.
type conditioned struct {
	*pair
	errors    [3]float64 // squares of the half-widths: thin, thick, departure
	at0       [3]float64 // how each enters at the measured mix
	total     float64    // the square of the half-width at the measured mix
	deviation float64    // measured less expected, in ln
	noise     float64    // square of the half-width of the measurement
}

func (p *pair) through(w float64, measured honestplate.Estimate) conditioned {
	c := conditioned{pair: p}
	for i, t := range p.terms {
		// 20 is no limit in practice; it keeps a band down to 0 finite.
		width := min((t.lnHigh-t.lnLow)/2, 20)
		c.errors[i] = width * width
	}
	c.errors[2] = 1
	c.at0 = p.shapes(w)
	c.total = c.covariance(c.at0)
	if c.total == 0 {
		// Nothing was uncertain, and yet it deviates: move the whole curve.
		c.errors = [3]float64{1, 1, 0}
		c.total = c.covariance(c.at0)
	}
	c.deviation = math.Log(measured.Likely) - c.expected(w)
	if measured.Low > 0 && measured.High > measured.Low {
		c.noise = math.Pow(math.Log(measured.High/measured.Low)/2, 2)
	}
	return c
}

// shapes is how an error of the thin liquid, the thick one and the departure enters the
// logarithm of the viscosity with w of the thick liquid. Of milk and cream the thick one's
// error is its k, which does to each blend what the emulsion law says; of others it goes by
// mass.
func (p *pair) shapes(w float64) [3]float64 {
	thick := w
	if a, b := p.terms[0], p.terms[1]; a.shares == sharesFat && b.shares == sharesFat {
		if full := p.emulsion().perK(b.fat); full > 0 && b.fat > a.fat {
			thick = p.dairy.perK(a.fat+w*(b.fat-a.fat)) / full
		}
	}
	t := p.mixed(w)
	return [3]float64{1 - w, thick, p.departure(t[:]).half}
}

func (c *conditioned) covariance(s [3]float64) float64 {
	var sum float64
	for i, e := range c.errors {
		sum += s[i] * c.at0[i] * e
	}
	return sum
}

// expected is ln eta before the measurement, what is known of the rule's lean taken out.
func (c *conditioned) expected(w float64) float64 {
	t := c.mixed(w)
	return c.lnAt(w) - c.departure(t[:]).middle
}

// ln is ln eta after the measurement.
func (c *conditioned) ln(w float64) float64 {
	return c.expected(w) + c.covariance(c.shapes(w))/c.total*c.deviation
}

// at returns the viscosity after the measurement with the band that is left.
func (c *conditioned) at(w float64) honestplate.Estimate {
	s := c.shapes(w)
	cov := c.covariance(s)
	var prior float64
	for i, e := range c.errors {
		prior += s[i] * s[i] * e
	}
	gain := cov / c.total
	half := math.Sqrt(max(0, prior-cov*gain) + gain*gain*c.noise)
	v := c.ln(w)
	return exp(v, v-half, v+half)
}

// oneStep is how far, in ln, one more step of the scale moves a batch of so many steps of
// the thin and the thick liquid: that of the liquid which moves it more.
func (c *conditioned) oneStep(thin, thick int64) float64 {
	n := float64(thin + thick)
	here := c.ln(float64(thick) / n)
	return max(math.Abs(c.ln(float64(thick)/(n+1))-here), math.Abs(c.ln(float64(thick+1)/(n+1))-here))
}
