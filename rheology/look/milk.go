package look

import (
	"cmp"
	"math"
	"sync"

	"example.org/honestplate"
	"example.org/honestplate/rheology/look/colour"
	"example.org/honestplate/rheology/look/mie"
)

// Milk is milk or cream as light sees it.
type Milk struct {
	FatPercent float64 `json:"fat_percent"` // % by mass, 0..50
	// ProteinPercent is % by mass, 0..12; left out, 3.4 % of what is not fat.
	ProteinPercent honestplate.Optional `json:"protein_percent,omitzero"`
	// HomogenisedMPa is the pressure of homogenisation, 0 for none or 1..50 MPa; 15 to 25
	// is usual for milk. Left out, milk up to 4 % fat is taken as at 10 MPa, which puts it
	// between the two published whole milks, cream from 24 % as not homogenised, and what
	// lies between as between; the band says that it is not known.
	HomogenisedMPa honestplate.Optional `json:"homogenised_mpa,omitzero"`
	// Carotene is in mg per kg of fat, 0..30: 2 to 5 in winter, 6 to 12 on fresh grass
	// (both from memory), none in goat's milk. It makes cream yellow, so ask for it, or for
	// the client's own b*. Left out it is 5, and bands reach from 2 to 12.
	Carotene honestplate.Optional `json:"carotene_mg_per_kg_fat,omitzero"`
}

// check wants milk that the model knows.
func (m Milk) check() error {
	return cmp.Or(
		honestplate.InRange("FatPercent", m.FatPercent, 0, mostFat, "%", "beyond it globules touch, and the model ends"),
		honestplate.InRange("ProteinPercent", m.ProteinPercent.Or(0), 0, 12, "%", "concentrated milk"),
		honestplate.InRange("HomogenisedMPa", cmp.Or(m.HomogenisedMPa.Or(0), 1), 1, 50, "MPa",
			"Frisvad and others 2007; 0 is none"),
		honestplate.InRange("Carotene", m.Carotene.Or(0), 0, 30, "mg/kg", "twice the most of summer grass"))
}

// Carotene where none is given, and its band: mg per kg of fat.
const (
	winterCarotene, usualCarotene, summerCarotene = 2, 5, 12
)

// Optics works the spectrum out: casein micelles and fat globules by Lorenz and Mie at
// 81 wavelengths, each sphere by itself, and the absorption of serum and carotene.
//
// Beside the measured coefficients of skim and whole milk the reduced scattering is known
// to a factor of 1.2 where the homogenisation is, else to 1.9. In cream globules are too
// near each other for the sum to be right: the model scatters 1.2 to 1.8 times what the one
// published cream did in red and green, whose fat was not said; the factor there is 2.
func (m Milk) Optics() (Optics, error) {
	if err := m.check(); err != nil {
		return Optics{}, err
	}
	fat, volume := m.FatPercent/100, m.volume()
	fatVolume := fat / fatDensity / volume
	usual := proteinPercent * (1 - fat)
	protein := m.ProteinPercent.Or(usual)
	caseinVolume := caseinShare * protein / 100 / caseinDensity / volume

	casein, err := micelles()
	globules, err2 := m.Globules()
	if err := cmp.Or(err, err2); err != nil {
		return Optics{}, err
	}
	out := Optics{index: liquidIndex, factor: m.scatterFactor(), deepL: deepBand(m.FatPercent)}
	for i := range colour.Samples {
		nm := colour.Wavelength(i)
		out.scattering[i] = float64(caseinVolume * casein[i].Scattering)
		out.forward[i] = float64(caseinVolume * casein[i].Scattering * casein[i].Asymmetry)
		if len(globules) > 0 {
			fat := mie.Suspended{Classes: globules, Index: fatIndex.at(nm), Liquid: waterIndex.at(nm)}
			c, err := fat.At(nm * 1e-9)
			if err != nil {
				return Optics{}, err
			}
			out.scattering[i] += float64(fatVolume * c.Scattering)
			out.forward[i] += float64(fatVolume * c.Scattering * c.Asymmetry)
		}
		// Milk that was thinned or thickened has its dyes with its protein.
		serum := (1 - fatVolume) * serumAbsorption(nm) * protein / usual
		carotene := fatVolume * caroteneAbsorption(nm)
		given := m.Carotene.Or(usualCarotene)
		out.absorption[i] = serum + float64(carotene*given)
		out.pale[i] = serum + float64(carotene*m.Carotene.Or(winterCarotene))
		out.yellow[i] = serum + float64(carotene*m.Carotene.Or(summerCarotene))
	}
	return out, nil
}

// volume is that of a kg of the milk, in m3.
func (m Milk) volume() float64 {
	fat := m.FatPercent / 100
	return fat/fatDensity + (1-fat)/serumDensity
}

// micelles are what casein scatters for its volume, at the wavelengths of a spectrum: the
// same in all milk.
var micelles = sync.OnceValues(func() (out [colour.Samples]mie.Coefficients, err error) {
	sizes, err := mie.LogNormalBelow(caseinRadius, caseinSpread, caseinLargest)
	if err != nil {
		return out, err
	}
	for i := range out {
		nm := colour.Wavelength(i)
		casein := mie.Suspended{Classes: sizes, Index: caseinIndex, Liquid: waterIndex.at(nm)}
		if out[i], err = casein.At(nm * 1e-9); err != nil {
			return out, err
		}
	}
	return out, nil
})

// globuleRadius is the mean radius of the fat globules in m, of the volume, as the
// model's own program uses it: by fat where the milk was not homogenised, and falling with
// a power of the pressure to that at 50 MPa. Below 2 % fat the program's parabola is
// scaled by 1.0235, so that it meets the power law there and more fat never means less
// scattering.
func (m Milk) globuleRadius() float64 {
	f := m.FatPercent
	raw := 1.456189142 * math.Pow(f, 0.36)
	if f < 2 {
		raw = 1.0235 * (1.418606759 - 0.2528033794*f) * f
	}
	at50 := 7.481403922e-4*f*f + 3.203991829e-2*f + 0.1162155667
	radius := raw
	if at50 < raw {
		radius = raw * math.Pow(at50/raw, m.homogenised())
	}
	const micrometre, toVolumeToSurface = 1e-6, 1 + globuleSpread*globuleSpread
	return radius * micrometre / toVolumeToSurface
}

// homogenised is 0 for raw milk and 1 at 50 MPa, on the logarithm of the pressure.
func (m Milk) homogenised() float64 {
	if p := m.HomogenisedMPa; p.Given {
		return math.Log(max(1, p.Value)) / math.Log(50)
	}
	return math.Log(10) / math.Log(50) * ramp(m.FatPercent, 24, 4)
}

// ramp is 0 at from, 1 at to, straight between and level beyond.
func ramp(v, from, to float64) float64 { return min(max((v-from)/(to-from), 0), 1) }

// scatterFactor says how well the scattering is known.
func (m Milk) scatterFactor() float64 {
	known := math.Exp(math.Log(1.2) + math.Log(2/1.2)*ramp(m.FatPercent, 5, 20))
	if m.HomogenisedMPa.Given || m.FatPercent == 0 {
		return known
	}
	return max(1.9*ramp(m.FatPercent, 0, 0.5), known)
}

// deepBand is half the band of L* of a wide deep pool: 1.5 for whole milk and cream, 4
// for skim and low fat, whose published colours are few and seen through a small port.
func deepBand(fatPercent float64) float64 { return 4 - 2.5*ramp(fatPercent, 2, 3) }

// Globules returns the size classes of the fat globules, by volume; none without fat.
func (m Milk) Globules() ([]mie.Class, error) {
	if err := m.check(); err != nil {
		return nil, err
	}
	radius := m.globuleRadius()
	if radius < smallestGlobule {
		return nil, nil
	}
	return mie.LogNormal(radius, globuleSpread, globuleLargest)
}

// smallestGlobule is the mean radius in m below which fat is taken as none: its share is
// below 0.01 %.
const smallestGlobule = 2e-9
