package look

// What milk is made of, for light. The parameters are those of Frisvad, Christensen and
// Jensen 2007, "Computing the scattering properties of participating media using
// Lorenz-Mie theory", as read in the first author's own program; the densities of fat and
// casein are theirs too.
const (
	fatDensity     = 915.0  // kg/m3
	caseinDensity  = 1110.0 // kg/m3, the micelle with its water
	serumDensity   = 1034.0 // kg/m3, milk without its fat (from memory; they hold milk at 1030)
	caseinShare    = 0.76   // of the protein, by mass
	caseinIndex    = 1.503
	caseinRadius   = 43e-9  // m, mean of the volume
	caseinSpread   = 0.23   // of r/(largest - r), one standard deviation
	caseinLargest  = 150e-9 // m
	globuleSpread  = 0.6    // coefficient of variation
	globuleLargest = 10e-6  // m
	proteinPercent = 3.4    // of the part of milk that is not fat, where nothing is given

	// liquidIndex is that of milk seen from air: 1.3448 to 1.3477 (read on a page of
	// teaching material).
	liquidIndex = 1.345
)

// mostFat is where the model stops, % by mass: beyond it, cream is butter on its way, and
// spheres that scatter each by itself are no picture of it.
const mostFat = 50.0
