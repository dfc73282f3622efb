package rheology

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// A FlowModel is the shear stress of a liquid as a function of its shear rate:
// the curve a rheometer draws. The models here are plain structs; a negative or
// NaN rate, or constants that make no sense, give NaN rather than a wrong stress.
// CheckFlow says what is wrong with one.
type FlowModel interface {
	// Name is the model's usual name, such as "Herschel-Bulkley".
	Name() string
	// Stress is the shear stress in Pa at a shear rate in 1/s, 0 or more. At rest a
	// model with a yield stress carries it.
	Stress(shearRate float64) float64
	// YieldStress is the stress in Pa below which the model does not flow; 0 for none.
	YieldStress() float64
}

// Newtonian flows in proportion: stress = PaS x rate.
type Newtonian struct {
	PaS float64 // viscosity, Pa s
}

// Name is "Newtonian".
func (Newtonian) Name() string { return "Newtonian" }

// Stress is in Pa.
func (m Newtonian) Stress(shearRate float64) float64 { return m.PaS * rate(shearRate) }

// YieldStress is 0.
func (Newtonian) YieldStress() float64 { return 0 }

// PowerLaw thins (N below 1) or thickens: stress = K rate^N (Ostwald-de Waele).
type PowerLaw struct {
	K float64 // consistency, Pa s^N
	N float64 // flow behaviour index
}

// Name is "power law".
func (PowerLaw) Name() string { return "power law" }

// Stress is in Pa.
func (m PowerLaw) Stress(shearRate float64) float64 { return m.K * math.Pow(rate(shearRate), m.N) }

// YieldStress is 0.
func (PowerLaw) YieldStress() float64 { return 0 }

// Bingham stands still up to Yield and flows in proportion beyond it:
// stress = Yield + Plastic x rate.
type Bingham struct {
	Yield   float64 // yield stress, Pa
	Plastic float64 // plastic viscosity, Pa s
}

// Name is "Bingham".
func (Bingham) Name() string { return "Bingham" }

// Stress is in Pa.
func (m Bingham) Stress(shearRate float64) float64 { return m.Yield + m.Plastic*rate(shearRate) }

// YieldStress is Yield.
func (m Bingham) YieldStress() float64 { return m.Yield }

// HerschelBulkley stands still up to Yield and thins beyond it:
// stress = Yield + K rate^N.
type HerschelBulkley struct {
	Yield float64 // yield stress, Pa
	K     float64 // consistency, Pa s^N
	N     float64 // flow behaviour index
}

// Name is "Herschel-Bulkley".
func (HerschelBulkley) Name() string { return "Herschel-Bulkley" }

// Stress is in Pa.
func (m HerschelBulkley) Stress(shearRate float64) float64 {
	return m.Yield + m.K*math.Pow(rate(shearRate), m.N)
}

// YieldStress is Yield.
func (m HerschelBulkley) YieldStress() float64 { return m.Yield }

// Casson is the model of melted chocolate:
// sqrt(stress) = sqrt(Yield) + sqrt(Plastic x rate).
type Casson struct {
	Yield   float64 // Casson yield stress, Pa
	Plastic float64 // Casson plastic viscosity, Pa s
}

// Name is "Casson".
func (Casson) Name() string { return "Casson" }

// Stress is in Pa.
func (m Casson) Stress(shearRate float64) float64 {
	s := math.Sqrt(m.Yield) + math.Sqrt(m.Plastic*rate(shearRate))
	return s * s
}

// YieldStress is Yield.
func (m Casson) YieldStress() float64 { return m.Yield }

// Carreau thins between two plateaus, Zero at rest and Infinite at high rate:
//
//	stress = rate [Infinite + (Zero - Infinite) (1 + (Time rate)^2)^((N-1)/2)]
type Carreau struct {
	Zero     float64 // viscosity at rest, Pa s
	Infinite float64 // viscosity at high rate, Pa s
	Time     float64 // s; thinning sets in at the rate 1/Time
	N        float64 // flow behaviour index between the plateaus
}

// Name is "Carreau".
func (Carreau) Name() string { return "Carreau" }

// Stress is in Pa.
func (m Carreau) Stress(shearRate float64) float64 {
	if m.N > 1 && m.Infinite > m.Zero {
		return math.NaN() // see CheckFlow
	}
	r := rate(shearRate)
	x := m.Time * r
	return r * (m.Infinite + (m.Zero-m.Infinite)*math.Pow(1+x*x, (m.N-1)/2))
}

// YieldStress is 0.
func (Carreau) YieldStress() float64 { return 0 }

// rate passes a shear rate of 0 or more and makes NaN of any other.
func rate(shearRate float64) float64 {
	if shearRate >= 0 {
		return shearRate
	}
	return math.NaN()
}

// ApparentViscosity returns stress over rate in Pa s of a flow model at a shear
// rate in 1/s, finite and above 0. A model whose constants make no sense, or whose
// stress is out of any reach, is an InputError.
func ApparentViscosity(m FlowModel, shearRate float64) (float64, error) {
	if err := honestplate.Positive("shear rate", shearRate, "1/s"); err != nil {
		return 0, err
	}
	if err := CheckFlow(m); err != nil {
		return 0, err
	}
	v := m.Stress(shearRate) / shearRate
	if err := honestplate.Positive("apparent viscosity", v, "Pa s"); err != nil {
		return 0, err
	}
	return v, nil
}

// CheckFlow returns an InputError if the constants of a flow model make no sense:
// viscosities and consistencies must be above 0, yield stresses and times 0 or more,
// indices in 0..2, and a Carreau of index above 1 no thicker at high rate than at rest;
// a RangeError beyond 1e12 of their unit. A model of your own is asked for its yield
// stress only.
func CheckFlow(m FlowModel) error {
	switch m := m.(type) {
	case nil:
		return check.Missing("flow model", "a model")
	case Newtonian:
		return constant("viscosity", m.PaS, "Pa s")
	case PowerLaw:
		return cmp.Or(constant("consistency", m.K, "Pa s^n"), index(m.N))
	case Bingham:
		return cmp.Or(level("yield stress", m.Yield, "Pa"), constant("plastic viscosity", m.Plastic, "Pa s"))
	case HerschelBulkley:
		return cmp.Or(level("yield stress", m.Yield, "Pa"), constant("consistency", m.K, "Pa s^n"), index(m.N))
	case Casson:
		return cmp.Or(level("yield stress", m.Yield, "Pa"), constant("plastic viscosity", m.Plastic, "Pa s"))
	case Carreau:
		if m.N > 1 && m.Infinite > m.Zero {
			// The curve grows without end in Zero - Infinite: its stress would turn negative.
			return check.Input("viscosity at high rate", m.Infinite, "Pa s", fmt.Sprintf("at most that at rest, %.6g Pa s, with an index above 1", m.Zero))
		}
		return cmp.Or(constant("viscosity at rest", m.Zero, "Pa s"), level("viscosity at high rate", m.Infinite, "Pa s"),
			level("time", m.Time, "s"), index(m.N))
	}
	return level("yield stress", m.YieldStress(), "Pa")
}

// constant wants a constant above 0 and level one of 0 or more, both of a size that
// leaves room to calculate.
func constant(quantity string, v float64, unit string) error {
	if err := honestplate.Positive(quantity, v, unit); err != nil {
		return err
	}
	return honestplate.InRange(quantity, v, 1e-12, 1e12, unit, "anything that flows")
}

func level(quantity string, v float64, unit string) error {
	if err := honestplate.NotNegative(quantity, v, unit); err != nil {
		return err
	}
	return honestplate.InRange(quantity, v, 0, 1e12, unit, "anything that flows")
}

func index(n float64) error {
	if err := honestplate.Positive("flow behaviour index", n, ""); err != nil {
		return err
	}
	return honestplate.InRange("flow behaviour index", n, 0, 2, "", "what foods do")
}
