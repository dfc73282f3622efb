package rheology

// EmulsionShape is how far the logarithm of the viscosity of milk or cream moves with K.
func EmulsionShape(fatPercent, tempC float64) float64 {
	e := emulsionAt(tempC)
	return e.perK(fatPercent)
}
