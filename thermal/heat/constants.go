package heat

// Water and ice, the one place for both in the tree.
const (
	// Fusion is the heat of fusion of ice at 0 degC, J/kg: CRC Handbook, 333.6 kJ/kg
	// (read); IAPWS has 333.44.
	Fusion = 333.6e3

	WaterHeat = 4190.0 // J/(kg K): 4.18..4.22 from 0 to 100 degC
)

// Ice is clear ice near 0 degC: conductivity 2.2 W/(m K) (handbooks 2.14..2.24, read),
// density 917 kg/m3 (CRC Handbook 0.9167, read), specific heat 2050 J/(kg K) between -10
// and 0 degC (CRC Handbook 2.03..2.11, read).
func Ice() Material { return Material{Conductivity: 2.2, Density: 917, SpecificHeat: 2050} }

const (
	kelvin          = 273.15         // K at 0 degC
	vapourGas       = 461.52         // J/(kg K), gas constant of water vapour (R/18.015)
	dryGas          = 287.042        // J/(kg K), gas constant of dry air (ASHRAE 2021, ch. 1, eq. 1)
	ratioOfMoles    = 0.621945       // of water and dry air
	stefanBoltzmann = 5.670374419e-8 // W/(m2 K4), exact in the SI of 2019
	gravity         = 9.80665        // m/s2, standard
	airHeat         = 1006           // J/(kg K), dry air (ASHRAE 2021, ch. 1)
	saturationBy    = "ASHRAE Handbook Fundamentals 2021, ch. 1, eqs. 5 and 6"
)
