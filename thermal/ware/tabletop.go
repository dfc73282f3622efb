package ware

import (
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/check"
)

// A Tabletop is what the table, board or rack is made of on which something lies. It
// brings heat as the food feels a thick body at room temperature: a stone or iron top
// melts ice several times faster than a board does.
type Tabletop int

// The tops.
const (
	CeramicTop Tabletop = iota // a tile, a stoneware plate
	WoodTop                    // a board
	PlasticTop                 // a tray, an acrylic sheet
	GlassTop                   // a pane
	StoneTop                   // slate, marble, a stone or concrete floor
	MetalTop                   // iron or steel some millimetres thick; aluminium rather more
	WireRack                   // air below as above
)

var tabletops = [...]string{"ceramic", "wood", "plastic", "glass", "stone", "metal", "wire rack"}

// String says it for people.
func (t Tabletop) String() string { return check.Name("tabletop", int(t), tabletops[:]) }

// MarshalText writes the words of String; an unknown top is refused.
func (t Tabletop) MarshalText() ([]byte, error) { return check.Named("Tabletop", int(t), tabletops[:]) }

// UnmarshalText reads the words of String.
func (t *Tabletop) UnmarshalText(b []byte) error { return check.Read("Tabletop", b, tabletops[:], t) }

// Material is what the top conducts, and the factor to which it is known what it brings
// (of metal the thickness decides; engineering estimates): typical textbook values, from memory. Metal stands
// for a sheet, in which the heat comes from the sides only: a quarter of what iron in the
// whole would conduct. A rack has none. A top
// that is none of these is an honestplate.InputError.
func (t Tabletop) Material() (m heat.Material, known float64, err error) {
	if err := check.Word("Tabletop", t); err != nil {
		return heat.Material{}, 0, err
	}
	known = 1.5
	if t == MetalTop {
		known = 2.5
	}
	return materials[t], known, nil
}

var materials = [...]heat.Material{
	CeramicTop: {Conductivity: 1.5, Density: 2300, SpecificHeat: 910},
	WoodTop:    {Conductivity: 0.17, Density: 700, SpecificHeat: 2000}, // oak across its grain
	PlasticTop: {Conductivity: 0.22, Density: 1200, SpecificHeat: 1500},
	GlassTop:   {Conductivity: 1.0, Density: 2500, SpecificHeat: 840},
	StoneTop:   {Conductivity: 2.2, Density: 2500, SpecificHeat: 850},
	MetalTop:   {Conductivity: 14, Density: 7800, SpecificHeat: 460},
	WireRack:   {},
}
