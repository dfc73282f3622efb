package food

import (
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/check"
)

// Mixed is what becomes of ice and water left together without loss of heat.
type Mixed struct {
	TempC    float64 `json:"temp_c"`    // degC
	IceGrams float64 `json:"ice_grams"` // ice left
	// WaterGrams is the liquid: what there was, and what has melted or less what has
	// frozen.
	WaterGrams float64 `json:"water_grams"`
}

// MixIce returns the end of iceGrams at iceC (-60..0 degC) in waterGrams at waterC
// (0..100 degC), from the balance of heat
//
//	m_w c_w T_w + m_i (c_i T_i - L) = heat of what is left, 0 for water at 0 degC
//
// with c_w 4.19, c_i 2.05 kJ/(kg K) and L 333.6 kJ/kg. Masses are 0..1e6 g, not both
// 0; else an [honestplate.InputError] or a [honestplate.RangeError].
func MixIce(iceGrams, iceC, waterGrams, waterC float64) (Mixed, error) {
	if err := check.Fields("water and ice in a vessel",
		check.Number("IceGrams", iceGrams, 0, 1e6, "g"), check.Number("IceC", iceC, -60, 0, "degC"),
		check.Number("WaterGrams", waterGrams, 0, 1e6, "g"), check.Number("WaterC", waterC, 0, 100, "degC"),
	); err != nil {
		return Mixed{}, err
	}
	all := iceGrams + waterGrams
	if all == 0 {
		return Mixed{}, check.Input("IceGrams", 0, "g", "above 0")
	}
	// J per g x 1000
	joules := waterGrams*heat.WaterHeat*waterC + iceGrams*(heat.Ice().SpecificHeat*iceC-heat.Fusion)
	switch {
	case joules >= 0:
		return Mixed{joules / (all * heat.WaterHeat), 0, all}, nil
	case joules <= -all*heat.Fusion:
		return Mixed{(joules/all + heat.Fusion) / heat.Ice().SpecificHeat, all, 0}, nil
	}
	ice := -joules / heat.Fusion
	return Mixed{0, ice, all - ice}, nil
}
