package pour

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

// judge says whether a liquid that stands may as well gush, by the band of the duration.
func (p *Pour) judge() {
	span := float64(p.Duration.Latest.After) / max(float64(p.Duration.Earliest.After), 1)
	p.MayGush = p.yield.Likely > 0 && (p.MayStay || span > gushes)
}
