package light

import "example.org/honestplate"

// An Absorptance is the share of the light falling on a thing that stays in it as
// heat, 0..1, source by source: a white food throws back an LED's light and drinks
// a tungsten lamp's infrared. Zero everywhere means it absorbs nothing.
//
// No published values for foods under these sources were found. The functions
// below are engineering estimates, from: near infrared below 1.25 um about half
// reflected by foods and far infrared under 10 % (published reviews of infrared
// heating), water's absorption beyond, and how bright the food looks. Take them as
// +-0.15 and put your own in where you can.
type Absorptance struct {
	// The share absorbed of each source's light, 0..1.
	Tungsten  float64 `json:"tungsten"`
	Discharge float64 `json:"discharge"`
	LED       float64 `json:"led"`
	Flash     float64 `json:"flash"`
}

// of returns the absorptance for a source, or an [honestplate.InputError] for an unknown source
// or a share outside 0..1.
func (a Absorptance) of(s Source) (float64, error) {
	v := [...]float64{a.Tungsten, a.Discharge, a.LED, a.Flash}[s]
	name := [...]string{"Tungsten", "Discharge", "LED", "Flash"}[s]
	return v, honestplate.InRange("Absorptance."+name, v, 0, 1, "", "a share of the whole")
}

// WhiteFood is ice cream, cream, milk, foam, white icing (engineering estimate).
func WhiteFood() Absorptance { return Absorptance{0.65, 0.35, 0.15, 0.38} }

// PaleFood is cheese, bread, pastry, butter (engineering estimate).
func PaleFood() Absorptance { return Absorptance{0.70, 0.48, 0.32, 0.50} }

// DarkFood is chocolate, coffee, cola, grilled meat (engineering estimate).
func DarkFood() Absorptance { return Absorptance{0.88, 0.85, 0.85, 0.85} }
