package heat

// defaultEmissivity stands where a Surface gives none: food, water, ice, frost and glass
// are between 0.90 and 0.98 (textbook tables); only bare metal is not.
const defaultEmissivity = 0.94

// A Shape says how air flows around a surface.
type Shape int

// The shapes. Length is what the doc of each says.
const (
	VerticalPlate      Shape = iota // a wall or the side of a block; Length is its height
	VerticalCylinder                // a glass; Length is its height, Diameter its diameter
	HorizontalCylinder              // Length is its diameter
	Sphere                          // Length is its diameter
	PlateUp                         // a surface facing up; Length is area/perimeter, a quarter of a disc's diameter
	PlateDown                       // a surface facing down; Length as for PlateUp
)

var shapes = [...]string{"vertical plate", "vertical cylinder", "horizontal cylinder", "sphere", "plate facing up", "plate facing down"}

// A Surface is what faces the air: the same balance serves a glass, a scoop, a
// cube of ice and a slice of hot cheese. It takes heat by convection, by radiation
// from a room at the air's temperature, from light, and by dew or frost; it loses
// by evaporation if it is moist.
type Surface struct {
	Shape Shape // how the air flows around it
	// Length is the size that governs the flow, m; see the Shape.
	Length float64
	// Diameter is that of a VerticalCylinder, m; 0 takes it as a plate. Others
	// ignore it.
	Diameter float64
	// Emissivity for room-temperature radiation, 0..1; 0 means defaultEmissivity.
	// For none at all give a very small one.
	Emissivity float64
	// Activity is the water activity of what is open to the air, 0..1: 1 for water,
	// ice or a wet film, 0.95..0.99 for moist food, 0 for a dry surface, which takes
	// dew but has nothing to give.
	Activity float64
	// Covered is the share of the surface, 0..1, that gives no vapour off: under fat, a
	// skin, ice. It takes dew as the rest does.
	Covered float64
	// ConvectionFactor multiplies the convection coefficient, and with it the
	// transfer of vapour; 0 means 1. Published correlations are good to +-15 %.
	ConvectionFactor float64
}

// A Flux is what passes through a square metre of surface. Heat is positive into
// the surface, W/m2.
type Flux struct {
	Convection float64 // heat from the air, W/m2
	Radiation  float64 // heat from the room, W/m2
	Latent     float64 // heat of dew or frost; negative for evaporation, W/m2
	Light      float64 // absorbed light, as given, W/m2
	VapourRate float64 // kg/(m2 s); positive is dew or frost, negative evaporation
	H          float64 // convection coefficient, W/(m2 K)
	// Slope and VapourSlope say how Total and VapourRate change with the surface's
	// temperature, W/(m2 K) and kg/(m2 s K), within some 15 % from -20 to 60 degC: for
	// a solver's linearised step. Neither is above 0.
	Slope, VapourSlope float64
}

// Total returns the sum of the four heats, W/m2.
func (f Flux) Total() float64 { return f.Convection + f.Radiation + f.Latent + f.Light }
