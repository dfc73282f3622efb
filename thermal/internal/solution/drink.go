package solution

import "example.org/honestplate/thermal/heat"

// A Drink is one as package food has it, checked: Brix 0..65, of which three tenths at
// least are water.
type Drink struct{ Brix, AlcoholPercent float64 }

const (
	ethanolDensity = 0.789   // of water's, at 20 degC (from memory)
	ethanolMole    = 0.04607 // kg/mol
	ethanolHeat    = 2440.0  // J/(kg K), 20 degC (from memory)
	sucroseHeat    = 1560.0  // J/(kg K): the carbohydrate of Choi and Okos near 10 degC
	// ethanolExcess is by how much a mixture with water holds more heat than its parts,
	// J/(kg K), times the shares of both: brings 20 and 33 % by mass to the 4.3 and 4.05
	// kJ/(kg K) of handbooks (from memory), within 5 %.
	ethanolExcess = 2000.0
	// ethanolDepression lowers the freezing point, K kg/mol: ideal is 1.86; with this a
	// drink of 10, 20, 30 and 40 % by volume freezes at -4, -9, -15 and -23 degC (common
	// tables, from memory) within 6 %.
	ethanolDepression = 2.1
)

// Ethanol is its share by mass.
func (d Drink) Ethanol() float64 {
	if d.AlcoholPercent == 0 {
		return 0
	}
	return d.AlcoholPercent / 100 * ethanolDensity * 1000 / d.Density()
}

// Density returns the density near 20 degC, kg/m3, within 1 %: 1038 at 10 Brix, 1081 at
// 20, 1177 at 40 (tables of sucrose, from memory), 984 with 12 % of alcohol and 948 with
// 40 (the same).
func (d Drink) Density() float64 {
	b := d.Brix
	return 998.2*(1+b*(0.003865+1.3e-5*b)) - 1.26*d.AlcoholPercent
}

// SpecificHeat returns the specific heat, J/(kg K), of the parts' shares and what water
// and alcohol hold more together; within 5 %.
func (d Drink) SpecificHeat() float64 {
	s, e := d.Brix/100, d.Ethanol()
	w := 1 - s - e
	return w*heat.WaterHeat + s*sucroseHeat + e*ethanolHeat + ethanolExcess*w*e/(w+e)
}

// FreezesC returns the temperature at which the drink begins to freeze, degC, after melt
// grams of water were added to each gram of it; negative melt is ice that was frozen
// out. The depressions by sugar (Leighton 1927 after Pickering 1891) and by alcohol add
// up.
func (d Drink) FreezesC(melt float64) float64 {
	if d == (Drink{}) {
		return 0
	}
	s, e := d.Brix/100, d.Ethanol()
	water := max(1-s-e+melt, 0.02)
	kelvin, _ := Depression(100 * s / water)
	return -kelvin - ethanolDepression*e/ethanolMole/water
}

// WaterShare returns the share of the drink's mass that is water, 0..1.
func (d Drink) WaterShare() float64 { return 1 - d.Brix/100 - d.Ethanol() }
