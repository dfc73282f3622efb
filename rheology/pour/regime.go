package pour

import "math"

// Ends of the laminar and of the transitional regime, in Reynolds numbers: of a bore, V D/nu,
// and of a lip's film, 4 q/nu, which turns turbulent at 1500 to 2000 (from memory).
const (
	boreLaminar, boreTurbulent = 2000.0, 4000.0
	lipLaminar, lipTurbulent   = 1500.0, 2000.0
)

// regime names what the flow is held by.
func (p *Pour) regime() string {
	laminar, rough := boreLaminar, boreTurbulent
	if p.out.width > 0 {
		laminar, rough = lipLaminar, lipTurbulent
	}
	switch {
	case p.glugs:
		return glugging
	case p.Reynolds >= rough:
		return turbulent
	case p.Reynolds > laminar:
		return transitional
	case p.Friction > 0.5:
		return friction
	}
	return inertia
}

// judge says what rules the band: slow and fast are the durations' ratios at the ends of the
// viscosity's band.
func (p *Pour) judge(slow, fast float64) {
	p.Ruled = ruledByOutlet
	if math.Log(slow/fast)/2 > math.Log1p(p.Hydraulics) {
		p.Ruled = ruledByLiquid
	}
	span := float64(p.Duration.Latest.After) / max(float64(p.Duration.Earliest.After), 1)
	p.MayGush = p.yield.Likely > 0 && (p.MayStay || span > gushes)
}
