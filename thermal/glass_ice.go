package thermal

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/check"
	"example.org/honestplate/thermal/internal/solution"
	"example.org/honestplate/thermal/internal/study"
)

// stirring and what floating melt leaves of the heat transfer to ice, in a drink that is
// sugared well through; see Glass.IceH.
var (
	stirring = honestplate.Estimate{Low: 0.45, Likely: 1, High: 2.5}
	afloat   = honestplate.Estimate{Low: 0.13, Likely: 0.3, High: 1}
)

// afloatFrom is the Brix over which floating melt comes to count, to 1/e.
const afloatFrom = 2.5

// iceFactors multiply what is known of the ice's heat transfer.
type iceFactors struct{ stirring, afloat float64 }

// afloatIn is how much of the heat transfer floating melt leaves in a drink.
func afloatIn(d food.Drink) honestplate.Estimate {
	share := 1 - math.Exp(-d.Brix/afloatFrom)
	of := func(v float64) float64 { return 1 - share*(1-v) }
	return band(of(afloat.Low), of(afloat.Likely), of(afloat.High))
}

func usualIceFactors(d food.Drink) iceFactors { return iceFactors{1, afloatIn(d).Likely} }

// completeIce checks the ice of a glass and fills in its defaults.
func (g Glass) completeIce() (Glass, error) {
	g.DilutionShare = cmp.Or(g.DilutionShare, band(0.08, 0.10, 0.12))
	if g.IceGrams == 0 {
		return g, nil
	}
	g.IceSize = cmp.Or(g.IceSize, g.usualIceSize())
	one := g.IceShape.box(g.IceSize).grams()
	frozen := g.IceGrams * heat.Ice().SpecificHeat * (4 - g.iceC()) / heat.Fusion
	warmth := g.DrinkGrams * heat.WaterHeat * g.DrinkC.Value / heat.Fusion
	err := cmp.Or(check.Not(g.IceGrams > 5*g.DrinkGrams, "IceGrams", g.IceGrams, "g", "at most five times the drink: more is ice with a little drink"),
		g.IceShape.checkAs("IceShape", "IceSize", g.IceSize),
		check.Not(g.IceSize > 0.001 && one > 1.1*g.IceGrams, "IceSize", g.IceSize, "m", "pieces that weigh no more than all the ice"),
		check.Band("DilutionShare", g.DilutionShare, 0.005, 10, "", "below, nobody sees it; above, it is water"),
		check.Not(frozen-warmth > g.DrinkGrams/2, "IceC", g.iceC(), "degC", "not so cold that it freezes half the drink"))
	if err == nil && g.IceH != (honestplate.Estimate{}) {
		err = check.Band("IceH", g.IceH, 5, 20000, "W/(m2 K)", "a drink that is frozen over to one that boils")
	}
	return g, err
}

// usualIceSize is 3 cm, or what one smaller piece has where there is not as much ice.
func (g Glass) usualIceSize() float64 {
	const usual = 0.03
	if one := g.IceShape.box(usual).grams(); one > g.IceGrams {
		return max(0.001, usual*math.Cbrt(g.IceGrams/one))
	}
	return usual
}

// usualIceC is that of ice of no given temperature, deg C.
const usualIceC = -6

func (g Glass) iceC() float64 { return g.IceC.Or(usualIceC) }

// iceInputs is how well the ice is known.
func (g *Glass) iceInputs(f *iceFactors) []study.Input {
	iceC := around("unit.ice_c", "ice's temperature", g.iceC(), 2)
	if !g.IceC.Given {
		iceC.Band = band(-18, usualIceC, 0)
		g.IceC = honestplate.Some(usualIceC)
	}
	stir := study.Input{Key: "unit.ice_h", Name: "stirring", Band: stirring, Factor: true, To: &f.stirring}
	if g.IceH != (honestplate.Estimate{}) {
		stir.Band = band(g.IceH.Low/g.IceH.Likely, 1, g.IceH.High/g.IceH.Likely)
	}
	in := []study.Input{
		stir, bound(&g.IceC.Value, within(iceC, -60, 0)),
		bound(&g.IceGrams, study.Input{Key: "unit.ice_grams", Name: "mass of ice", Band: honestplate.Factor(g.IceGrams, 1.05), Factor: true}),
		bound(&g.DilutionShare.Likely, within(judged("crew.dilution", "dilution that counts", g.DilutionShare), 1e-3, 20)),
	}
	if g.Drink.Brix > 0 && g.IceH == (honestplate.Estimate{}) {
		in = append(in, ofProduct(bound(&f.afloat, study.Input{Key: "product.afloat", Name: "melt that floats", Band: afloatIn(g.Drink), Factor: true})))
	}
	return in
}

// An iceStore is the ice in a drink.
type iceStore struct {
	drink     solution.Drink
	poured    float64 // kg of drink
	capacity  float64 // of the drink as poured, J/K
	start     float64 // kg of ice put in
	kg, tempC float64 // of it that is left
	slush     float64 // kg that froze out where the drink fell below its freezing point, counted at 0 degC
	radius    float64 // at the start, m
	given     float64 // coefficient, W/(m2 K); 0 means the law
	factors   iceFactors
	melting   float64 // kg/s in the last step
	even      float64 // W/(m2 K) that brings a ball of ice to its face, over its radius: 5 k
}

func (g Glass) store() iceStore {
	drink := solution.Drink(g.Drink)
	s := iceStore{drink: drink, poured: g.DrinkGrams / 1000, capacity: g.DrinkGrams / 1000 * drink.SpecificHeat(),
		start: g.IceGrams / 1000, kg: g.IceGrams / 1000, tempC: g.iceC(), given: g.IceH.Likely,
		factors: usualIceFactors(g.Drink), even: 5 * heat.Ice().Conductivity}
	if s.kg > 0 {
		s.radius = g.IceShape.box(g.IceSize).length() / 2
	}
	return s
}

// melt is what has been added to the drink, kg.
func (s *iceStore) melt() float64 { return s.start - s.kg - s.slush }

// heatOf is what a kelvin of the liquid holds, J/K.
func (s *iceStore) heatOf() float64 { return s.capacity + s.melt()*heat.WaterHeat }

// freezesC is where the drink as it is now freezes, deg C.
func (s *iceStore) freezesC() float64 { return s.drink.FreezesC(s.melt() / s.poured) }

// content is the heat of the ice, J, against water at 0 degC.
func (s *iceStore) content() float64 {
	return s.kg*(heat.Ice().SpecificHeat*s.tempC-heat.Fusion) - s.slush*heat.Fusion
}

// pushed is by how much melt keeps solute from the face, 1/K: the specific over the
// fusion heat of water times the ratio of the diffusivities of heat and solute, about
// 100, to the 2/3.
const pushed = heat.WaterHeat / heat.Fusion * 21

// atFace returns how much warmer the drink is than the face of the ice, K, and how that
// changes with the drink's temperature.
func (s *iceStore) atFace(drinkC float64) (above, slope float64) {
	d := -s.freezesC()
	if d <= 0 {
		return drinkC, 1
	}
	// pushed x2 + (1 - pushed T) x - (T + D) = 0; where even x = 0 freezes it, undiluted.
	b := 1 - pushed*drinkC
	root := math.Sqrt(max(b*b+4*pushed*(drinkC+d), 1e-12))
	above = (root - b) / (2 * pushed)
	return above, 0.5 + (2-b)/(2*root)
}

// coefficient is that between drink and ice, W/(m2 K), for pieces of a radius.
func (s *iceStore) coefficient(drinkC, faceC, radius float64) (float64, error) {
	if s.given > 0 {
		return s.given * s.factors.stirring, nil
	}
	h, err := heat.Surface{Shape: heat.Sphere, Length: 2 * radius}.InWater(faceC, drinkC)
	return h * s.factors.stirring * s.factors.afloat, err
}

// conductance is W/K between the drink and a sink at sinkC, the ice's face as it goes
// with the drink's temperature, over a step; face and radius are the ice's.
func (s *iceStore) conductance(drinkC, dt float64) (c, sinkC, faceC, radius float64, err error) {
	kg := max(s.kg-s.melting*dt/2, 0.25*s.kg) // in the middle of the step
	radius = max(s.radius*math.Cbrt(kg/s.start), 1e-5)
	above, slope := s.atFace(drinkC)
	h, err := s.coefficient(drinkC, drinkC-above, radius)
	area := 3 * kg / (heat.Ice().Density * radius) // of all pieces: 3 V/r
	return h * area * slope, drinkC - above/slope, drinkC - above, radius, err
}

// take gives the ice heat, J, over a step; it returns the water that melted, kg, which
// joins at faceC, and the heat that was too much for it.
func (s *iceStore) take(joules, faceC, radius, dt float64) (melted, left float64) {
	ice := heat.Ice()
	tau := ice.SpecificHeat * ice.Density * radius * radius / (3 * s.even)
	inner := s.tempC + (faceC-s.tempC)*-math.Expm1(-dt/tau)
	if s.tempC == faceC {
		inner = faceC
	}
	per := heat.Fusion - ice.SpecificHeat*inner + heat.WaterHeat*faceC
	melted = (joules - s.kg*ice.SpecificHeat*(inner-s.tempC)) / per
	if most := s.kg; melted > most || s.kg-melted < iceRest*s.start {
		left = joules - s.kg*ice.SpecificHeat*(inner-s.tempC) - most*per
		melted = most
	}
	s.kg, s.tempC = s.kg-melted, inner
	s.melting = melted / dt
	return melted, left
}

// iceRest is the share of the ice that melts all at once.
const iceRest = 1e-3

// longest is the longest step that follows the ice, s.
func (s *iceStore) longest() float64 {
	if s.kg == 0 || s.melting == 0 {
		return math.Inf(1)
	}
	return max(0.05, 0.06*s.kg/math.Abs(s.melting))
}
