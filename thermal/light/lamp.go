package light

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/check"
)

// A Head is what a lamp sits in.
type Head int

// The heads, with the share of the radiated power in the beam, were it as bright all
// over as in the middle, and the factor to which that is known. Above 1 because a beam
// is brighter in the middle than over the cone that the beam angle names. From published
// photometrics of tungsten stage heads, except the first.
const (
	OpenFace Head = iota // a reflector or soft box: 0.6, divided and multiplied by 3 (estimate)
	Fresnel              // 0.28, by 3: little in full spot, most in flood
	Profile              // an ellipsoidal spot: 1.33, by 1.7
	PAR                  // a PAR 64: 2.4, by 1.3
)

var heads = [...]string{"open face", "Fresnel", "profile", "PAR"}

// String gives the head's name.
func (h Head) String() string { return check.Name("head", int(h), heads[:]) }

// MarshalText writes the head's name; an unknown one is refused.
func (h Head) MarshalText() ([]byte, error) { return check.Named("Head", int(h), heads[:]) }

// UnmarshalText reads the head's name.
func (h *Head) UnmarshalText(b []byte) error { return check.Read("Head", b, heads[:], h) }

// share returns the head's share of the power in the beam and the factor to which it is
// known.
func (h Head) share() (share, factor float64) {
	switch h {
	case Fresnel:
		return 0.28, 3
	case Profile:
		return 1.33, 1.7
	case PAR:
		return 2.4, 1.3
	}
	return 0.6, 3
}

// A Lamp lights the food. Lamp{Watts: 650, Source: Tungsten, Distance: 1.4,
// BeamDegrees: 40} is a 650 W tungsten head at 1.4 m.
//
// Its heat follows from the power and the beam only to a factor of 1.3 to 3, since
// heads differ so much in how much of the light they catch; a light meter at the
// food (Lux) says it to a third.
type Lamp struct {
	// Watts is the electrical power, W, 0..100000. A Flash has none: give Joules.
	Watts float64 `json:"watts,omitzero"`
	// Source is the kind of light.
	Source Source `json:"source,omitzero"`
	// Distance from the lamp to the food, m, 0.05..100.
	Distance float64 `json:"distance_m,omitzero"`
	// BeamDegrees is the full angle of the beam to half its peak, degrees, 1..180;
	// 0 means 60, a plain reflector.
	BeamDegrees float64 `json:"beam_degrees,omitzero"`
	// Head is the kind of head, which says how much of the light is in the beam.
	Head Head `json:"head,omitzero"`
	// Transmittance of what hangs in front, 0..1; 0 means 1. A soft box or a full
	// diffusion frame passes about 0.3..0.5 towards the food, a light one 0.7
	// (engineering estimates).
	Transmittance float64 `json:"transmittance,omitzero"`
	// Lux is the illuminance measured at the food, lx; 0 means not measured. Given,
	// it decides: power, beam and transmittance are not looked at. Of a Flash it is
	// the modelling lamp's.
	Lux float64 `json:"lux,omitzero"`
	// Joules is the energy a Flash stores for one pop, J (Ws), 0..10000.
	Joules float64 `json:"joules,omitzero"`
	// PopsPerMinute is how often a Flash fires, 0..600.
	PopsPerMinute float64 `json:"pops_per_minute,omitzero"`
	// ModellingWatts is the power of a Flash's tungsten modelling lamp while it
	// burns, W, 0..5000.
	ModellingWatts float64 `json:"modelling_watts,omitzero"`
}

// Irradiance returns the radiation that falls on a surface square to the lamp,
// W/m2, averaged over time for a Flash:
//
//	E = Watts x radiated share x beam's share x Transmittance / (2 pi (1 - cos(BeamDegrees/2)) Distance^2)
//
// with the beam's share of the [Head], and for a Flash Joules x PopsPerMinute/60 in place of Watts, with the modelling
// lamp added. With Lux it is Lux over the source's efficacy. The cone law holds
// from about five times the size of the lamp. A field that makes no sense gives an
// [honestplate.InputError] or an [honestplate.RangeError].
//
// Hot lamps burn skin and set paper, gel and fabric alight: keep the maker's
// distances, follow local codes and licensed practice. These are estimates.
//
// The band is that of the factor to which it is known: 1.35 where it was measured (Lux),
// else what the Head is known to.
func (l Lamp) Irradiance() (honestplate.Estimate, error) {
	parts, err := l.parts()
	return honestplate.Factor(parts[0].irradiance+parts[1].irradiance, l.known()), err
}

// Illuminance returns the lx that the lamp gives at the food, from its Irradiance
// and the source's efficacy; for a Flash that of the modelling lamp alone.
func (l Lamp) Illuminance() (honestplate.Estimate, error) {
	parts, err := l.parts()
	p := parts[0]
	if l.Source == Flash {
		p = parts[1]
	}
	return honestplate.Factor(p.irradiance*usualData[p.source].Efficacy.Likely, l.known()), err
}

// At returns the lamp moved to another distance, m: a measured Lux falls with the
// square of it.
func (l Lamp) At(distance float64) (Lamp, error) {
	_, err := l.parts()
	if err := cmp.Or(inStudio(distance), err); err != nil {
		return Lamp{}, err
	}
	if l.Lux > 0 {
		if err := inStudio(l.Distance); err != nil {
			return Lamp{}, err
		}
		l.Lux *= l.Distance * l.Distance / (distance * distance)
	}
	l.Distance = distance
	return l, nil
}

// A part is what one of the two lights of a Lamp gives.
type part struct {
	source     Source
	irradiance float64 // W/m2
}

// check returns the error of the first field that makes no sense, or contradicts another.
func (l Lamp) check() error {
	flash, off, ofFlash := l.Source == Flash, l.power() == 0 && l.Lux == 0, max(l.Joules, l.PopsPerMinute, l.ModellingWatts)
	err := cmp.Or(check.One("Source", int(l.Source), sources[:]), check.One("Head", int(l.Head), heads[:]), check.Fields(studio,
		check.Number("Watts", l.Watts, 0, 1e5, "W"),
		check.Number("BeamDegrees", cmp.Or(l.BeamDegrees, 60), 1, 180, "degrees"),
		check.Number("Transmittance", l.Transmittance, 0, 1, ""),
		check.Number("Lux", l.Lux, 0, 1e7, "lx"),
		check.Number("Joules", l.Joules, 0, 1e4, "J"),
		check.Number("PopsPerMinute", l.PopsPerMinute, 0, 600, "/min"),
		check.Number("ModellingWatts", l.ModellingWatts, 0, 5000, "W"),
	), check.Not(flash && l.Watts > 0, "Watts", l.Watts, "W", "0 for a flash: give Joules, PopsPerMinute and ModellingWatts"),
		check.Not(!flash && ofFlash > 0, "Joules", ofFlash, "", "0, as PopsPerMinute and ModellingWatts, unless the Source is a flash"),
		check.Not(flash && off, "Joules", 0, "J", "the energy of a pop, ModellingWatts or Lux; leave out a lamp that is off"),
		check.Not(off, "Watts", 0, "W", "the electrical power, or Lux as measured at the food; leave out a lamp that is off"))
	if err == nil && l.power() > 0 && (flash || l.Lux == 0) {
		err = inStudio(l.Distance)
	}
	return err
}

const studio = "lamps of a studio"

func inStudio(distance float64) error {
	return honestplate.InRange("Distance", distance, 0.05, 100, "m", studio)
}

func (l Lamp) power() float64 { return max(l.Watts, l.Joules, l.ModellingWatts) }

// parts checks the lamp and returns its light and, for a Flash, that of the
// modelling lamp. What a meter measured counts instead of the power.
func (l Lamp) parts() (parts [2]part, err error) {
	if err := l.check(); err != nil {
		return parts, err
	}
	perWatt := 0.0 // irradiance per watt radiated
	if l.power() > 0 && l.Distance > 0 {
		share, _ := l.Head.share()
		cone := 2 * math.Pi * (1 - math.Cos(cmp.Or(l.BeamDegrees, 60)/2*math.Pi/180))
		perWatt = share * cmp.Or(l.Transmittance, 1) / (cone * l.Distance * l.Distance)
	}
	of := func(s Source, watts float64) part { return part{s, watts * usualData[s].Radiated.Likely * perWatt} }
	parts[0] = of(l.Source, l.Watts)
	metered := &parts[0]
	if l.Source == Flash {
		parts[0] = of(Flash, l.Joules*l.PopsPerMinute/60)
		parts[1] = of(Tungsten, l.ModellingWatts)
		metered = &parts[1]
	}
	if l.Lux > 0 {
		metered.irradiance = l.Lux / usualData[metered.source].Efficacy.Likely
	}
	return parts, nil
}
