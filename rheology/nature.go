package rheology

import "math"

// A nature is what a blend must know of one of its liquids.
type nature struct {
	rate    float64    // at which its viscosity is stated, 1/s; 0 for one that does not thin
	fat     float64    // % by mass; NaN unless it is milk or cream
	percent float64    // dissolved, % by mass
	stated  bool       // rate is: not of foods and of liquids of the user's own
	kind    liquidKind // how much is known of it as a part
	of      solute     // what it is a solution of; water is one with nothing in it
}

// syrupOf says of what a [Syrup] is a solution; golden syrup has no law of its own.
var syrupOf = map[string]solute{"maple": ofSucrose, "invert": ofHoney, "glucose": ofGlucose}

// read fills in what a liquid says.
func (n *nature) read(l Liquid) {
	*n = nature{stated: true, kind: otherLiquid, fat: math.NaN()}
	switch l := l.(type) {
	case Water:
		n.of = ofSucrose
	case Dairy:
		n.kind, n.fat = tableDairy, l.FatPercent
		if l.FatPercent > thinningFat {
			n.rate = dairyRate
		}
	case Sucrose:
		n.of, n.percent = ofSucrose, l.Brix
	case Honey:
		n.of, n.percent = ofHoney, 100-l.moisture()
	case Glycerol:
		n.of, n.percent = ofGlycerol, l.Percent
	case Syrup:
		if _, solids, err := l.kind(); err == nil {
			n.of, n.percent = syrupOf[l.Of], solids
		}
	case Measured:
		n.read(l.Liquid)
		n.kind = max(n.kind, someDairy)
	case Custom:
		n.rate = sauceRate
	case Mix:
		n.rate = max(0, l.rate)
		if len(l.parts) > 0 && !math.IsNaN(l.fat) {
			n.kind, n.fat = someDairy, l.fat
		}
	default:
		n.stated = false
	}
}

// commonRate is the one shear rate at which a blend's parts are mixed, given that of the parts
// before: the largest at which the viscosity of one of them is stated, 0 where none thins.
func (n *nature) commonRate(before float64, l Liquid) float64 {
	if !n.stated {
		return max(before, n.rate, l.Describe().ShearRate)
	}
	return max(before, n.rate)
}
