package thermal

import (
	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/study"
)

// band is an estimate in its order.
func band(low, likely, high float64) honestplate.Estimate {
	return honestplate.Estimate{Low: low, Likely: likely, High: high}
}

// orBand returns e, or the default where e is zero.
func orBand(e honestplate.Estimate, low, likely, high float64) honestplate.Estimate {
	if e == (honestplate.Estimate{}) {
		return band(low, likely, high)
	}
	return e
}

// factor is an input of a unit that is known to "times or divided by": 1 and its limits.
func factor(key, name string, low, high float64) study.Input {
	return study.Input{Key: key, Name: name, Band: band(low, 1, high), Factor: true}
}

// around is an input of a unit with a value and how far to both sides it may lie.
func around(key, name string, v, by float64) study.Input {
	return study.Input{Key: key, Name: name, Band: band(v-by, v, v+by)}
}

// judged is a threshold: what this crew calls soft, or beads.
func judged(key, name string, e honestplate.Estimate) study.Input {
	return study.Input{Key: key, Name: name, Shared: study.Crew, Band: e}
}

// within puts limits on an input.
func within(in study.Input, low, high float64) study.Input {
	in.Min, in.Max = low, high
	return in
}

// bound binds an input to a field.
func bound(to *float64, in study.Input) study.Input {
	in.To = to
	return in
}

// ofProduct says that an input is one of the product.
func ofProduct(in study.Input) study.Input {
	in.Shared = study.Product
	return in
}

// inRoom says that an input is one of the room.
func inRoom(in study.Input) study.Input {
	in.Shared = study.Room
	return in
}

// lightInput is how well the light that a thing of an absorptance takes from the lamps is
// known, as a factor.
func lightInput(to *float64, a Absorptance, lamps []Lamp) study.Input {
	low, high := lightBand(a, lamps)
	in := factor("lamps.light", "light", low, high)
	in.Shared, in.To = study.Lamps, to
	return in
}

// roomInputs are how well a room is known: +-1.5 K, +-6 % RH, air speed divided and
// multiplied by 2, or 0..0.6 m/s where none is given, and convection +-20 %. These are
// engineering estimates: a hygrometer is good to 3..5 %, the place where it hangs to as
// much again, and lamps and people stir the air.
func roomInputs(a *Air, convection *float64) []study.Input {
	fastest := 2 * a.Speed
	if a.Speed == 0 {
		fastest = 0.6
	}
	in := []study.Input{
		within(bound(&a.TempC, around("room.temp_c", "room temperature", a.TempC, 1.5)), -30, 60),
		within(bound(&a.RH, around("room.rh", "humidity", a.RH, 0.06)), 0, 1),
		within(bound(&a.Speed, study.Input{Key: "room.speed_m_s", Name: "air speed", Band: band(a.Speed/2, a.Speed, fastest)}), 0, 30),
		bound(convection, factor("room.convection", "convection", 1/1.2, 1.2)),
	}
	for i := range in {
		in[i].Shared = study.Room
	}
	return in
}
