package thermal

// roomCheck checks the air and that it is that of a room: the set clocks know
// -30..60 degC.
func roomCheck(a Air) error {
	if err := a.Validate(); err != nil {
		return err
	}
	return within("room temperature", a.TempC, -30, 60, "degC", "this package's set clocks")
}

// simmering is the hottest that a hot wet surface is taken to be in the air, deg C: just
// below where its vapour would be 95 % of the air pressure (see Exchanger.At). It is
// 98.5 degC at sea level and 90 at some 2700 m.
func simmering(a Air) float64 { return boiling(0.9499 * a.pressure()) }

// roomUncertain is how well a room is known: +-1.5 K, +-6 % RH, air speed divided and
// multiplied by 2, or 0..0.6 m/s where none is given, and convection +-20 %. These are
// engineering estimates: a hygrometer is good to 3..5 %, the place where it hangs to as
// much again, and lamps and people stir the air.
func roomUncertain(a Air) (temp, rh, speed, convection Uncertain) {
	temp = Uncertain{Name: "room temperature", Likely: a.TempC, Low: a.TempC - 1.5, High: a.TempC + 1.5, Min: -30, Max: 60}
	rh = Uncertain{Name: "humidity", Likely: a.RH, Low: a.RH - 0.06, High: a.RH + 0.06, Min: 0, Max: 1}
	speed = Uncertain{Name: "air speed", Likely: a.Speed, Low: a.Speed / 2, High: a.Speed * 2, Min: 0, Max: 30}
	if a.Speed == 0 {
		speed.High = 0.6
	}
	convection = Uncertain{Name: "convection", Likely: 1, Low: 1 / 1.2, High: 1.2, Scale: true}
	return temp, rh, speed, convection
}
