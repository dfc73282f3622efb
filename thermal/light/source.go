package light

import (
	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/check"
)

// A Source is a kind of light. What it heats depends on it more than on how bright
// it looks: for the same lux a tungsten lamp brings ten times the heat of an LED.
type Source int

// The sources.
const (
	Tungsten  Source = iota // halogen, 3200 K: nine tenths of the radiation is infrared
	Discharge               // metal halide (HMI type), 5600 K
	LED                     // white LED: no infrared to speak of
	Flash                   // xenon tube, 5600 K
)

var sources = [...]string{"tungsten", "discharge", "LED", "flash"}

// String returns the source's name for people.
func (s Source) String() string { return check.Name("source", int(s), sources[:]) }

// MarshalText writes the source's name; an unknown one is refused.
func (s Source) MarshalText() ([]byte, error) { return check.Named("Source", int(s), sources[:]) }

// UnmarshalText reads the source's name.
func (s *Source) UnmarshalText(b []byte) error { return check.Read("Source", b, sources[:], s) }

// A SourceData is what the package takes a kind of light to be. The values are read
// or typical, with bands of 95 %.
type SourceData struct {
	// Radiated is the share of the electrical power (of a flash: of the stored
	// energy) that leaves as radiation, 0..1.
	Radiated honestplate.Estimate `json:"radiated"`
	// Efficacy is in lumens per watt of radiation.
	Efficacy honestplate.Estimate `json:"efficacy_lm_w"`
}

// Data returns the figures of a source, or an [honestplate.InputError] for an unknown one.
//
//	tungsten:  radiates 0.82 (0.80..0.86, published 81..86 %); 27 lm/W (24..34; a
//	           black body at 3200 K has 27.1, behind glass 30.8)
//	discharge: radiates 0.60 (0.44..0.65, published 62..65 % for mercury lamps);
//	           130 lm/W (90..190; metal halide lamps give 65..115 lm per electrical watt)
//	LED:       radiates 0.42 (0.20..0.50: today's heads give 130..150 lm per electrical
//	           watt, from memory; older ones 18..40 %, published); 310 lm/W (250..330)
//	flash:     radiates 0.30 (0.15..0.50, from 15..50 lm s per stored J); 95 lm/W (80..110)
//
// The figures called published were read in trade pages and data sheets; efficacies
// of black bodies are computed; the rest is an engineering estimate.
func (s Source) Data() (SourceData, error) {
	if err := check.One("Source", int(s), sources[:]); err != nil {
		return SourceData{}, err
	}
	return usualData[s], nil
}

var usualData = [...]SourceData{
	Tungsten:  {check.Between(0.80, 0.82, 0.86), check.Between(24, 27, 34)},
	Discharge: {check.Between(0.44, 0.60, 0.65), check.Between(90, 130, 190)},
	LED:       {check.Between(0.20, 0.42, 0.50), check.Between(250, 310, 330)},
	Flash:     {check.Between(0.15, 0.30, 0.50), check.Between(80, 95, 110)},
}
