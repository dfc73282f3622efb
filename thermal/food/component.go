package food

// A component is one constituent of a food whose properties follow the fits of
// Choi & Okos (1986), Effects of temperature and composition on the thermal
// properties of foods, as used by the ASHRAE Refrigeration handbook (chapter on
// thermal properties of foods). Their range is -40..150 degC.
//
// The constants were read in two public copies and, because both carry
// slips, each was checked against a property value before use: the conductivity
// of water starts at 0.57109 (not 0.457109: 0.60 W/(m K) at 20 degC), the linear
// term of ice is -6.2489e-3 (not ten times that: 2.39 at -20 degC), the specific
// heat of fat has 1.4733e-3, and that of water starts at 4.1762 kJ/(kg K) above
// 0 degC. The row for ice conductivity is from memory.
type component int

// The components of a food.
const (
	waterPart component = iota // liquid
	proteinPart
	fatPart
	carbohydratePart
	ashPart
	icePart // defined to 0 degC
	componentCount
)

// quadratic is a0 + a1 t + a2 t^2, t in degC.
type quadratic struct{ a0, a1, a2 float64 }

func (q *quadratic) at(t float64) float64 { return q.a0 + t*(q.a1+t*q.a2) }

// integral is the integral from 0 to t.
func (q *quadratic) integral(t float64) float64 {
	return t * (q.a0 + t*(q.a1/2+t*q.a2/3))
}

// The fits: density in kg/m3, conductivity in W/(m K), specific heat in J/(kg K).
var (
	densityFits = [componentCount]quadratic{
		waterPart:        {997.18, 3.1439e-3, -3.7574e-3},
		proteinPart:      {1329.9, -0.5184, 0},
		fatPart:          {925.59, -0.41757, 0},
		carbohydratePart: {1599.1, -0.31046, 0},
		ashPart:          {2423.8, -0.28063, 0},
		icePart:          {916.89, -0.13071, 0},
	}
	conductivityFits = [componentCount]quadratic{
		waterPart:        {0.57109, 1.7625e-3, -6.7036e-6},
		proteinPart:      {0.17881, 1.1958e-3, -2.7178e-6},
		fatPart:          {0.18071, -2.7604e-4, -1.7749e-7},
		carbohydratePart: {0.20141, 1.3874e-3, -4.3312e-6},
		ashPart:          {0.32962, 1.4011e-3, -2.9069e-6},
		icePart:          {2.2196, -6.2489e-3, 1.0154e-4},
	}
	heatFits = [componentCount]quadratic{
		waterPart:        {4176.2, -9.0864e-2, 5.4731e-3},
		proteinPart:      {2008.2, 1.2089, -1.3129e-3},
		fatPart:          {1984.2, 1.4733, -4.8008e-3},
		carbohydratePart: {1548.8, 1.9625, -5.9399e-3},
		ashPart:          {1092.6, 1.8896, -3.6817e-3},
		icePart:          {2062.3, 6.0769, 0},
	}
)
