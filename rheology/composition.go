package rheology

import "math"

// A Composition is what a liquid is made of, in % by mass. What is none of the named parts
// is not stated: salts and acids of syrups and honey count as sugar.
type Composition struct {
	WaterPercent      float64 `json:"water_percent"`       // with that of milk
	FatPercent        float64 `json:"fat_percent"`         // of milk or oil
	MilkSolidsPercent float64 `json:"milk_solids_percent"` // milk's solids-not-fat: protein, lactose, salts
	SugarPercent      float64 `json:"sugar_percent"`       // dissolved, beside the lactose of milk: the Brix of a syrup
	GlycerolPercent   float64 `json:"glycerol_percent"`    // of test liquids
}

// CompositionOf returns what a liquid is made of, if that is known: of water, milk and
// cream, sugar, syrups, honey, glycerol, oils, and of blends and measured liquids of these.
func CompositionOf(l Liquid) (c Composition, known bool) {
	sugar := func(percent float64) Composition {
		return Composition{WaterPercent: 100 - percent, SugarPercent: percent}
	}
	switch l := l.(type) {
	case Water:
		c = sugar(0)
	case Dairy:
		solids := dairySNF(l.FatPercent)
		c = Composition{WaterPercent: 100 - l.FatPercent - solids, FatPercent: l.FatPercent, MilkSolidsPercent: solids}
	case Sucrose:
		c = sugar(l.Brix)
	case Syrup:
		_, solids, err := l.kind()
		if err != nil {
			return Composition{}, false
		}
		c = sugar(solids)
	case Honey:
		c = sugar(100 - l.moisture())
	case Glycerol:
		c = Composition{WaterPercent: 100 - l.Percent, GlycerolPercent: l.Percent}
	case Food:
		if d := foods[l]; d == nil || !d.Oil {
			return Composition{}, false
		}
		c = Composition{FatPercent: 100}
	case Measured:
		return CompositionOf(l.Liquid)
	case Mix:
		return l.composition()
	default:
		return Composition{}, false
	}
	for _, v := range [...]float64{c.WaterPercent, c.FatPercent, c.MilkSolidsPercent, c.SugarPercent, c.GlycerolPercent} {
		if !(v >= 0 && v <= 100) {
			return Composition{}, false
		}
	}
	return c, true
}

func (m Mix) composition() (sum Composition, known bool) {
	for _, p := range m.parts {
		c, ok := CompositionOf(p.liquid)
		if !ok {
			return Composition{}, false
		}
		sum.WaterPercent += p.w * c.WaterPercent
		sum.FatPercent += p.w * c.FatPercent
		sum.MilkSolidsPercent += p.w * c.MilkSolidsPercent
		sum.SugarPercent += p.w * c.SugarPercent
		sum.GlycerolPercent += p.w * c.GlycerolPercent
	}
	return sum, len(m.parts) > 0
}

// dairyOf says how much is known of a liquid as a part of a blend, and its fat in
// % by mass, NaN unless it is milk or cream.
func dairyOf(l Liquid) (liquidKind, float64) {
	switch l := l.(type) {
	case Dairy:
		return tableDairy, l.FatPercent
	case Measured:
		if kind, fat := dairyOf(l.Liquid); kind != otherLiquid {
			return someDairy, fat
		}
	case Mix:
		if len(l.parts) > 0 && !math.IsNaN(l.fat) {
			return someDairy, l.fat
		}
	}
	return otherLiquid, math.NaN()
}
