package rheology

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
	switch l := l.(type) {
	case Food:
		if d := foods[l]; d != nil && d.Oil {
			return Composition{FatPercent: 100}, true
		}
	case Measured:
		return CompositionOf(l.Liquid)
	case Mix:
		return l.composition()
	}
	var n nature
	n.read(l)
	switch {
	case n.kind == tableDairy:
		solids := dairySNF(n.fat)
		c = Composition{WaterPercent: 100 - n.fat - solids, FatPercent: n.fat, MilkSolidsPercent: solids}
	case n.of == ofGlycerol:
		c = Composition{WaterPercent: 100 - n.percent, GlycerolPercent: n.percent}
	case n.of != ofNothing || n.percent > 0:
		c = Composition{WaterPercent: 100 - n.percent, SugarPercent: n.percent}
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
