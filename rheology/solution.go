package rheology

import "math"

// A solute is what a solution is a solution of: the parts of a blend that dissolve in
// water share a composition, and the blend has the viscosity of what it has become.
type solute uint8

const (
	ofNothing  solute = iota
	ofSucrose         // sugar and maple syrup, by Brix
	ofHoney           // honey and invert syrup, by what is not water
	ofGlucose         // glucose syrup, by solids
	ofGlycerol        // glycerol
	solutes
)

// Below these solids honey and glucose syrup have no law of their own: they are taken to
// thin as sucrose does, from where they are down to water.
const (
	honeyLeastSolids   = 70.0
	glucoseLeastSolids = 74.0
)

// lnSolution is ln of the viscosity in Pa s of x % by mass of a solute in water.
func lnSolution(of solute, x, tempC float64) float64 {
	switch of {
	case ofHoney:
		return lnThinned(x, honeyLeastSolids, tempC, func(x float64) float64 { return sugarGlass(100-x, tempC) })
	case ofGlucose:
		return lnThinned(x, glucoseLeastSolids, tempC, func(x float64) float64 { return syrupPaS("glucose", x, tempC) })
	case ofGlycerol:
		return lnCheng(x/100, tempC)
	}
	return math.Log(genotelle(x, tempC))
}

func lnThinned(x, least, tempC float64, law func(x float64) float64) float64 {
	if x >= least {
		return math.Log(law(x))
	}
	step := math.Log(law(least) / genotelle(least, tempC))
	return math.Log(genotelle(x, tempC)) + x/least*step
}

// solutionBand is how far a law's E can be off, as a share of it: 95 %.
//
//   - sucrose and glycerol: of the order of their own bands, 3 and 4 %, beside an E of 1;
//   - honey and glucose syrup: engineering estimate, no source; the law between them and
//     water is sucrose's.
var solutionBand = [solutes]float64{ofSucrose: 0.03, ofHoney: 0.3, ofGlucose: 0.3, ofGlycerol: 0.05}
