package thermal

const (
	drinkRho         = 1000.0 // kg/m3
	meltConductivity = 0.57   // W/(m K), water at 0..5 degC
)
