package food

import (
	"cmp"

	"example.org/honestplate"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/check"
	"example.org/honestplate/thermal/light"
)

// A SoftFood is one that keeps its shape while its fat, or its gel, is solid:
// chocolate, butter, whipped cream. The presets say where each number is from; put
// in your own where you can.
type SoftFood struct {
	// Name for people.
	Name string `json:"name"`
	// Material is the solid food; all its properties must be above 0.
	heat.Material `json:"material"`
	// Latent is the heat that melts it, J per kg of food, taken up evenly between
	// MeltsFromC and MeltsToC, degC.
	Latent float64 `json:"latent_j_kg"`
	// MeltsFromC and MeltsToC are at least 1 K apart, -40..80 degC.
	MeltsFromC float64 `json:"melts_from_c"`
	MeltsToC   float64 `json:"melts_to_c"`
	// SoftC is where the skin goes soft, degC: gloss and edges go, a finger leaves
	// its print.
	SoftC honestplate.Estimate `json:"soft_c"`
	// RunC is where it flows or weeps, degC; its values not below those of SoftC.
	RunC honestplate.Estimate `json:"run_c"`
	// Activity is the water activity of the surface, 0..1: 0 for chocolate and
	// butter, which take dew but give off nothing.
	Activity float64 `json:"activity"`
	// Absorptance of the surface for light; zero everywhere absorbs nothing.
	Absorptance light.Absorptance `json:"absorptance"`
}

// chocolate is 0.21 W/(m K), 1300 kg/m3, 1600 J/(kg K) with a third of cocoa butter
// that takes 157 kJ/kg to melt (typical textbook values, from memory).
func chocolate(name string, from, to float64, soft, run honestplate.Estimate, a light.Absorptance) SoftFood {
	return SoftFood{Name: name, Material: heat.Material{Conductivity: 0.21, Density: 1300, SpecificHeat: 1600}, Latent: 52e3, MeltsFromC: from, MeltsToC: to,
		SoftC: soft, RunC: run, Absorptance: a}
}

// UsualSoftFoods are foods whose softening is published or estimated, each with its source.
type UsualSoftFoods struct {
	// DarkChocolate is tempered dark chocolate. Cocoa butter melts at 33.8 degC in form
	// V and at 27.3 in form IV (after Greweling, Chocolates and Confections, read at
	// second hand); another page has 33..35 for form V. It is worked at 31..32, just
	// fluid (trade practice, from memory), which is where the skin is soft.
	DarkChocolate SoftFood
	// MilkChocolate softens 2 K lower, as its working temperature of 29..30 degC says
	// (trade practice, from memory): milk fat mixes with cocoa butter.
	MilkChocolate SoftFood
	// WhiteChocolate is worked at 28..29 degC (trade practice, from memory).
	WhiteChocolate SoftFood
	// Butter melts over 28..36 degC and is a thin liquid at 32..35 (web pages, read);
	// its fat takes 80.8 kJ/kg and is all melted at 35.6 (Milchwissenschaft 53:77, 1998,
	// abstract, read). How much is melted in the cold is disputed (half at 8.6 degC
	// there, at 10 degC from memory); it is spread evenly over 0..36. It gives under a
	// knife at 15..20 degC (common practice, no source). Conductivity, density and heat
	// are those of an example (Geankoplis 5.3-2, read).
	Butter SoftFood
	// WhippedCream is 35 % cream whipped to double its volume. No published softening
	// temperature was found; SoftC and RunC are engineering estimates from milk fat
	// being half melted at 9..10 degC.
	WhippedCream SoftFood
	// SetCream is WhippedCream with gelatin, which melts at 25..35 degC (makers' pages,
	// read); softening is an engineering estimate. Gelatin is not for everybody: say so
	// to whoever eats it.
	SetCream SoftFood
}

// SoftFoods returns them.
func SoftFoods() UsualSoftFoods {
	cream := SoftFood{Name: "whipped cream", Material: heat.Material{Conductivity: 0.2, Density: 500, SpecificHeat: 3200},
		Latent: 28e3, MeltsToC: 36, SoftC: check.Between(8, 12, 16), RunC: check.Between(15, 20, 26), Activity: 0.98, Absorptance: light.WhiteFood()}
	set := cream
	set.Name, set.SoftC, set.RunC = "whipped cream set with gelatin", check.Between(16, 20, 24), check.Between(25, 30, 35)
	return UsualSoftFoods{
		DarkChocolate:  chocolate("dark chocolate", 27, 34, check.Between(29, 31, 33), check.Between(32.5, 33.8, 35), light.DarkFood()),
		MilkChocolate:  chocolate("milk chocolate", 25, 33, check.Between(26, 28.5, 31), check.Between(30, 32, 34), light.DarkFood()),
		WhiteChocolate: chocolate("white chocolate", 24, 32, check.Between(25, 27.5, 30), check.Between(29, 31, 33), light.WhiteFood()),
		Butter: SoftFood{Name: "butter", Material: heat.Material{Conductivity: 0.197, Density: 998, SpecificHeat: 2300},
			Latent: 65e3, MeltsToC: 36, SoftC: check.Between(15, 18, 22), RunC: check.Between(28, 32, 35), Absorptance: light.PaleFood()},
		WhippedCream: cream,
		SetCream:     set,
	}
}

// check reports what is wrong with the food.
func (f SoftFood) check() error {
	const source = "fats and gels"
	return cmp.Or(check.Fields("any matter",
		check.Number("Conductivity", f.Conductivity, 1e-4, 1e9, "W/(m K)"),
		check.Number("Density", f.Density, 0.01, 1e5, "kg/m3"),
		check.Number("SpecificHeat", f.SpecificHeat, 1, 1e6, "J/(kg K)")),
		honestplate.InRange("Latent", f.Latent, 0, 400e3, "J/kg", "no more than ice"),
		honestplate.InRange("MeltsFromC", f.MeltsFromC, -40, 79, "degC", source),
		honestplate.InRange("MeltsToC", f.MeltsToC, f.MeltsFromC+1, 80, "degC", "fats and gels: 1 K above MeltsFromC"),
		check.Band("SoftC", f.SoftC, -40, 80, "degC", source),
		check.Band("RunC", f.RunC, -40, 80, "degC", source),
		honestplate.InRange("RunC.Likely", f.RunC.Likely, f.SoftC.Likely, 80, "degC", "what runs is soft: not below SoftC"),
		honestplate.InRange("Activity", f.Activity, 0, 1, "", "a share of the whole"))
}

// Curve is the food as what conducts heat, by volume, -60..500 degC, or an
// [honestplate.InputError] or [honestplate.RangeError] that says what is wrong with it.
func (f SoftFood) Curve() (heat.Curve, error) {
	if err := f.check(); err != nil {
		return nil, err
	}
	const low, high = -60.0, 500.0 // the skin may get hot before the depth is reached
	h, c := 0.0, f.Density*f.SpecificHeat
	points := heat.Curve{{TempC: low, Conductivity: f.Conductivity}}
	step := func(to, latent float64) {
		h += c*(to-points[len(points)-1].TempC) + f.Density*latent
		points = append(points, heat.CurvePoint{TempC: to, Enthalpy: h, Conductivity: f.Conductivity})
	}
	step(f.MeltsFromC, 0)
	step(f.MeltsToC, f.Latent)
	step(high, 0)
	return points, nil
}
