package food

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/check"
	"example.org/honestplate/thermal/internal/root"
	"example.org/honestplate/thermal/internal/solution"
)

// A FrozenMix is the recipe of a frozen dessert, in per cent by mass of the mix.
// What is missing to 100 is water. The zero value of a field means none of it.
type FrozenMix struct {
	Name                  string  `json:"name,omitzero"`                   // for people
	FatPercent            float64 `json:"fat_percent,omitzero"`            // milk fat or other
	MSNFPercent           float64 `json:"msnf_percent,omitzero"`           // milk solids not fat
	WheySolidsPercent     float64 `json:"whey_solids_percent,omitzero"`    // whey solids
	SucrosePercent        float64 `json:"sucrose_percent,omitzero"`        // sucrose and other disaccharides added as such
	MonosaccharidePercent float64 `json:"monosaccharide_percent,omitzero"` // dextrose, fructose, invert sugar
	GlucoseSyrupPercent   float64 `json:"glucose_syrup_percent,omitzero"`  // solids of 42 DE glucose syrup
	OtherSolidsPercent    float64 `json:"other_solids_percent,omitzero"`   // stabiliser, cocoa, egg, fruit fibre: no effect on freezing
	OverrunPercent        float64 `json:"overrun_percent,omitzero"`        // volume of air per volume of mix, x 100; 0..300
	// SyrupFactor is the sucrose equivalent of the glucose syrup solids by mass;
	// 0 means 0.8, deduced from the worked mix of Goff & Hartel 2013. Other
	// sources say up to 1.29 for 42 DE.
	SyrupFactor float64 `json:"syrup_factor,omitzero"`
}

const (
	// msnfFactor and wheyFactor are the sucrose equivalents of the lactose in milk
	// solids not fat and in whey solids; saltFactor makes the depression by milk
	// salts, K, from (MSNF + whey solids)/water. Goff & Hartel 2013, ch. 6, the
	// method of Leighton 1927 (read in a copy).
	msnfFactor  = 0.545
	wheyFactor  = 0.765
	saltFactor  = 2.37
	sugarFactor = 1.9 // monosaccharides: 342/180 by molar mass
	syrupFactor = 0.8

	// glassC is where freezing stops: what is left unfrozen is then so thick that
	// it is a glass. About -30..-35 degC for ice cream mixes, from memory.
	glassC = -33.0

	// unfrozenWaterHeat is the specific heat, J/(kg K), of the water left in a
	// frozen mix. Between sugar molecules it does not show the rise of pure
	// supercooled water, so the value above 0 degC is kept; at -20 degC the
	// difference is 10 % of a small part.
	unfrozenWaterHeat = 4180.0

	mixSource = "method of Leighton, Goff & Hartel 2013"
)

// check reports what is wrong with the recipe: an [honestplate.InputError] for a share that
// is negative or not a number and for shares that leave no water, an [honestplate.RangeError]
// for overrun beyond 300 % or a mix so sweet, or without any solute, that the
// freezing-point table does not hold it.
func (m FrozenMix) check() error {
	return cmp.Or(honestplate.NotNegative("FatPercent", m.FatPercent, "%"), honestplate.NotNegative("MSNFPercent", m.MSNFPercent, "%"),
		honestplate.NotNegative("WheySolidsPercent", m.WheySolidsPercent, "%"), honestplate.NotNegative("SucrosePercent", m.SucrosePercent, "%"),
		honestplate.NotNegative("MonosaccharidePercent", m.MonosaccharidePercent, "%"),
		honestplate.NotNegative("GlucoseSyrupPercent", m.GlucoseSyrupPercent, "%"),
		honestplate.NotNegative("OtherSolidsPercent", m.OtherSolidsPercent, "%"), honestplate.NotNegative("SyrupFactor", m.SyrupFactor, ""),
		honestplate.InRange("OverrunPercent", m.OverrunPercent, 0, 300, "%", "no frozen dessert holds more"),
		check.Not(m.solidsPercent() >= 99, "FrozenMix", m.solidsPercent(), "%", "less than 99 %, to leave water"),
		honestplate.InRange("SucroseEquivalent", m.equivalent(), 3, 180, "g", solution.Leighton))
}

func (m FrozenMix) solidsPercent() float64 {
	return m.FatPercent + m.MSNFPercent + m.WheySolidsPercent + m.SucrosePercent +
		m.MonosaccharidePercent + m.GlucoseSyrupPercent + m.OtherSolidsPercent
}

// water is the water, frozen or not, kg per kg of mix.
func (m FrozenMix) water() float64 { return 1 - m.solidsPercent()/100 }

// equivalent is the sucrose equivalent, g per 100 g of all the water.
func (m FrozenMix) equivalent() float64 {
	se := msnfFactor*m.MSNFPercent + wheyFactor*m.WheySolidsPercent + m.SucrosePercent +
		sugarFactor*m.MonosaccharidePercent + cmp.Or(m.SyrupFactor, syrupFactor)*m.GlucoseSyrupPercent
	return se / m.water()
}

// salts is the depression by milk salts if no water is ice, K.
func (m FrozenMix) salts() float64 {
	return saltFactor * (m.MSNFPercent + m.WheySolidsPercent) / 100 / m.water()
}

// thawC returns the temperature at which the share frozen of the water is ice.
func (m FrozenMix) thawC(frozen float64) float64 {
	left := 1 - frozen
	kelvin, _ := solution.Depression(m.equivalent() / left)
	return -kelvin - m.salts()/left
}

// ice is the share of the water that is ice at a temperature: thawC the other way. Below
// glassC nothing more freezes.
func (m FrozenMix) ice(tempC float64) float64 {
	sugar, salts, tempC := m.equivalent(), m.salts(), max(tempC, glassC)
	if tempC >= m.thawC(0) {
		return 0
	}
	return 1 - 1/root.Newton(func(inverse float64) (f, step float64) { // of the unfrozen share
		kelvin, slope := solution.Depression(sugar * inverse)
		f = kelvin + salts*inverse + tempC
		return f, f / (sugar*slope + salts)
	}, 1, 1e6, 1, 1e-12)
}

// FrozenAtC returns the temperature, degC, at which the given share of the water,
// 0..0.95, is ice: the freezing curve. At 0 it is the freezing point, published at
// -1.4..-3 degC for ice cream mixes; for the worked mix of Goff & Hartel (2013, Table
// 6.2) it is within 0.01 K. With W the water and SE the sucrose
// equivalent, per cent of mix,
//
//	SE = 0.545 MSNF + 0.765 WS + S + 1.9 M + 0.8 G
//	T = -D(100 SE/Wu) - 2.37 (MSNF + WS)/Wu,  Wu = W (1 - frozen)
//
// where D is SucroseDepression. Source: Leighton 1927, as in Goff & Hartel, Ice
// Cream, 7th ed. 2013, ch. 6 (read in a copy; 0.8 deduced from its
// worked mix). Within 0.02 K of that mix while SE is inside the table, 0.3 K
// beyond. An invalid recipe is an input error; another share is an [honestplate.RangeError].
func (m FrozenMix) FrozenAtC(frozen float64) (float64, error) {
	if err := cmp.Or(m.check(), honestplate.InRange("Frozen", frozen, 0, 0.95, "", mixSource)); err != nil {
		return 0, err
	}
	return m.thawC(frozen), nil
}

// IceShare returns the share of the water, 0..1, that is ice at tempC, -90..90 degC: the
// freezing curve the other way. Published to about -17 degC, it is carried on below; from
// -33 degC down nothing more freezes. Errors as FrozenAtC.
func (m FrozenMix) IceShare(tempC float64) (float64, error) {
	if err := cmp.Or(m.check(), inCurve(tempC)); err != nil {
		return 0, err
	}
	return m.ice(tempC), nil
}

// Density returns the density with its air, kg/m3:
//
//	1000 / (1.075 fat + 0.63 (solids - fat) + water) / (1 + overrun)
//
// in mass fractions. Mixes are published at 1090..1100. Source: Goff, Figuring overrun
// (University of Guelph pages, read).
func (m FrozenMix) Density() (float64, error) {
	if err := m.check(); err != nil {
		return 0, err
	}
	return m.density(), nil
}

func (m FrozenMix) density() float64 {
	fat, solids := m.FatPercent/100, m.solidsPercent()/100
	return 1000 / (1.075*fat + 0.63*(solids-fat) + 1 - solids) / (1 + m.OverrunPercent/100)
}

// Overrun returns the overrun, per cent, from the densities (or the masses of
// equal volumes) of mix and frozen product: 100 (mix - product)/product (Goff,
// University of Guelph pages, read). Both must be above 0 and the product not
// heavier than the mix, else an [honestplate.InputError].
func Overrun(mix, product float64) (float64, error) {
	overrun := 100 * (mix - product) / product
	if err := cmp.Or(honestplate.Positive("Mix", mix, ""), honestplate.Positive("Product", product, ""),
		check.Not(product > mix, "Product", product, "", "at most that of the mix"),
		check.Not(math.IsInf(overrun, 0), "Product", product, "", "within the same range of sizes as the mix")); err != nil {
		return 0, err
	}
	return overrun, nil
}
