package flow

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// A Model is the shear stress of a liquid as a function of its shear rate: the curve a
// rheometer draws. The models here are plain structs; a negative or NaN rate, or
// constants that make no sense, give NaN rather than a wrong stress. [Viscosity] says what is
// wrong with one.
type Model interface {
	// Stress is the shear stress in Pa at a shear rate in 1/s, 0 or more. At rest it is
	// the stress below which the model does not flow: Stress(0), 0 for none.
	Stress(shearRate float64) float64
	// String is the model's usual name, such as "Herschel-Bulkley".
	String() string
}

// Newtonian flows in proportion: stress = PaS x rate.
type Newtonian struct {
	PaS float64 `json:"pas"` // viscosity, Pa s
}

// String is "Newtonian".
func (Newtonian) String() string { return "Newtonian" }

// Stress is in Pa.
func (m Newtonian) Stress(shearRate float64) float64 { return m.PaS * rate(shearRate) }

// PowerLaw thins (N below 1) or thickens: stress = K rate^N (Ostwald-de Waele).
type PowerLaw struct {
	K float64 `json:"k_pas_n"` // consistency, Pa s^N
	N float64 `json:"n"`       // flow behaviour index
}

// String is "power law".
func (PowerLaw) String() string { return "power law" }

// Stress is in Pa.
func (m PowerLaw) Stress(shearRate float64) float64 { return m.K * math.Pow(rate(shearRate), m.N) }

// Bingham stands still up to Yield and flows in proportion beyond it:
// stress = Yield + Plastic x rate.
type Bingham struct {
	Yield   float64 `json:"yield_pa"`    // yield stress, Pa
	Plastic float64 `json:"plastic_pas"` // plastic viscosity, Pa s
}

// String is "Bingham".
func (Bingham) String() string { return "Bingham" }

// Stress is in Pa.
func (m Bingham) Stress(shearRate float64) float64 { return m.Yield + m.Plastic*rate(shearRate) }

// HerschelBulkley stands still up to Yield and thins beyond it:
// stress = Yield + K rate^N.
type HerschelBulkley struct {
	Yield float64 `json:"yield_pa"` // yield stress, Pa
	K     float64 `json:"k_pas_n"`  // consistency, Pa s^N
	N     float64 `json:"n"`        // flow behaviour index
}

// String is "Herschel-Bulkley".
func (HerschelBulkley) String() string { return "Herschel-Bulkley" }

// Stress is in Pa.
func (m HerschelBulkley) Stress(shearRate float64) float64 {
	return m.Yield + m.K*math.Pow(rate(shearRate), m.N)
}

// Casson is the model of melted chocolate:
// sqrt(stress) = sqrt(Yield) + sqrt(Plastic x rate).
type Casson struct {
	Yield   float64 `json:"yield_pa"`    // Casson yield stress, Pa
	Plastic float64 `json:"plastic_pas"` // Casson plastic viscosity, Pa s
}

// String is "Casson".
func (Casson) String() string { return "Casson" }

// Stress is in Pa.
func (m Casson) Stress(shearRate float64) float64 {
	s := math.Sqrt(m.Yield) + math.Sqrt(m.Plastic*rate(shearRate))
	return s * s
}

// Carreau thins between two plateaus, Zero at rest and Infinite at high rate:
//
//	stress = rate [Infinite + (Zero - Infinite) (1 + (Time rate)^2)^((N-1)/2)]
type Carreau struct {
	Zero     float64 `json:"zero_pas"`     // viscosity at rest, Pa s
	Infinite float64 `json:"infinite_pas"` // viscosity at high rate, Pa s
	Time     float64 `json:"time_s"`       // s; thinning sets in at the rate 1/Time
	N        float64 `json:"n"`            // flow behaviour index between the plateaus
}

// String is "Carreau".
func (Carreau) String() string { return "Carreau" }

// Stress is in Pa.
func (m Carreau) Stress(shearRate float64) float64 {
	if m.N > 1 && m.Infinite > m.Zero {
		return math.NaN() // see makesSense
	}
	r := rate(shearRate)
	x := m.Time * r
	return r * (m.Infinite + (m.Zero-m.Infinite)*math.Pow(1+x*x, (m.N-1)/2))
}

// rate passes a shear rate of 0 or more and makes NaN of any other.
func rate(shearRate float64) float64 {
	if shearRate >= 0 {
		return shearRate
	}
	return math.NaN()
}

// Viscosity returns stress over rate in Pa s of a flow model at a shear
// rate in 1/s, finite and above 0. A model whose constants make no sense is an InputError that
// names the first of them: viscosities and consistencies are above 0, yield stresses and times
// 0 or more, indices in 0..2, and a Carreau of index above 1 no thicker at high rate than at
// rest; a RangeError beyond 1e12 of their unit. A stress out of any reach is an InputError.
func Viscosity(m Model, shearRate float64) (float64, error) {
	if err := cmp.Or(honestplate.Positive("ShearRate", shearRate, "1/s"), makesSense(m)); err != nil {
		return 0, err
	}
	v := m.Stress(shearRate) / shearRate
	if err := honestplate.Positive("Model.Stress/ShearRate", v, "Pa s"); err != nil {
		return 0, err
	}
	return v, nil
}

// makesSense returns an InputError for constants that do not: viscosities and consistencies
// must be above 0, yield stresses and times 0 or more, indices in 0..2, and a Carreau of index
// above 1 no thicker at high rate than at rest; a RangeError beyond 1e12 of their unit. A model
// of the user's own is asked for its stress at rest only.
func makesSense(m Model) error {
	if check.IsNil(m) {
		return check.Missing("Model", "a flow model, such as HerschelBulkley")
	}
	switch m := m.(type) {
	case Newtonian:
		return constant("PaS", m.PaS, "Pa s")
	case PowerLaw:
		return cmp.Or(constant("K", m.K, "Pa s^n"), index(m.N))
	case Bingham:
		return cmp.Or(level("Yield", m.Yield, "Pa"), constant("Plastic", m.Plastic, "Pa s"))
	case HerschelBulkley:
		return cmp.Or(level("Yield", m.Yield, "Pa"), constant("K", m.K, "Pa s^n"), index(m.N))
	case Casson:
		return cmp.Or(level("Yield", m.Yield, "Pa"), constant("Plastic", m.Plastic, "Pa s"))
	case Carreau:
		if m.N > 1 && m.Infinite > m.Zero {
			// The curve grows without end in Zero - Infinite: its stress would turn negative.
			return check.Input("Infinite", m.Infinite, "Pa s", fmt.Sprintf("at most that at rest, %.6g Pa s, with an index above 1", m.Zero))
		}
		return cmp.Or(constant("Zero", m.Zero, "Pa s"), level("Infinite", m.Infinite, "Pa s"),
			level("Time", m.Time, "s"), index(m.N))
	}
	return level("Stress(0)", m.Stress(0), "Pa")
}

// constant wants a constant above 0 and level one of 0 or more, both of a size that
// leaves room to calculate.
func constant(quantity string, v float64, unit string) error {
	return cmp.Or(honestplate.Positive(quantity, v, unit), honestplate.InRange(quantity, v, 1e-12, 1e12, unit, "anything that flows"))
}

func level(quantity string, v float64, unit string) error {
	return cmp.Or(honestplate.NotNegative(quantity, v, unit), honestplate.InRange(quantity, v, 0, 1e12, unit, "anything that flows"))
}

func index(n float64) error {
	return cmp.Or(honestplate.Positive("N", n, ""), honestplate.InRange("N", n, 0, 2, "", "foods lie between; a steeper curve is a slip"))
}
