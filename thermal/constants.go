package thermal

const (
	drinkRho         = 1000.0 // kg/m3
	meltConductivity = 0.57   // W/(m K), water at 0..5 degC

	curveLow   = -90.0 // degC, the coldest that the curves of frozen food reach
	curveRange = "range of the enthalpy curve of frozen food"
)
