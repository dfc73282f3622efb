package shoot

import (
	"cmp"

	"example.org/honestplate"
	"example.org/honestplate/thermal"
	"example.org/honestplate/thermal/light"
)

// A clockwork is a thing that thermal has a clock for.
type clockwork[C any] interface {
	comparable
	Knowing(l thermal.Lesson, a thermal.Air, lamps ...light.Lamp) (C, error)
}

// clockOf asks for the clock of a thing in this room. Things that are alike are asked for
// once: the runs of two clocks stand for the same rooms and judgements anyway.
func clockOf[T clockwork[C], C any](d *day, thing T) (clock C, err error) {
	if known, ok := d.clocks[thing]; ok {
		return known.(C), nil
	}
	if clock, err = thing.Knowing(d.lesson, d.air, d.lamps...); err == nil {
		d.clocks[thing] = clock
	}
	return clock, err
}

// mark is an event of a clock and what it does to the picture.
type mark struct {
	key     string
	event   thermal.Event
	runs    []honestplate.Moment
	weights []float64
	opens   bool
	closes  bool
}

// reasonsOf takes over what decides an event.
func reasonsOf(e thermal.Event) []Reason {
	var out []Reason
	for _, s := range e.Decides {
		if s.Share >= 0.01 && len(out) < 4 {
			out = append(out, Reason{Input: s.Input, Share: s.Share})
		}
	}
	return out
}

// clocked turns a clock's events into the thing's events and its look: in every run from
// the last of what opens it until the first of what closes it.
func (d *day) clocked(j *job, t *Thing, marks ...mark) ([]Event, *shown) {
	thing := t.Name
	l := &shown{}
	var events []Event
	for i := range marks {
		m := &marks[i]
		events = append(events, Event{Key: m.key, When: m.event.Window, Opens: m.opens, Closes: m.closes, Reasons: reasonsOf(m.event), Taught: d.taught(t)})
		l.causes = append(l.causes, Cause{Thing: thing, Event: m.key, Reasons: events[i].Reasons})
	}
	at := func(pick func(*mark) honestplate.Moment) interval {
		out := interval{to: honestplate.Never(), opens: -1, closes: -1}
		for i := range marks {
			m := &marks[i]
			if m.opens {
				out = out.intersect(interval{from: pick(m), to: honestplate.Never(), opens: i, closes: -1})
			}
			if m.closes {
				out = out.intersect(interval{to: pick(m), opens: -1, closes: i})
			}
		}
		return out
	}
	for r := range marks[0].runs {
		l.runs = append(l.runs, at(func(m *mark) honestplate.Moment { return m.runs[r] }))
	}
	l.likely = at(func(m *mark) honestplate.Moment { return m.event.Likely })
	j.weights = marks[0].weights
	return events, l
}

// taught reports whether something was seen today of a thing's kind.
func (d *day) taught(t *Thing) bool {
	k := t.kinds()
	return len(k) > 0 && d.seen[family(k[0])]
}

// kept makes a mark of a clock's event by its key among the kept runs.
func kept(runs thermal.Runs, key, clocks string, opens, closes bool) mark {
	return mark{key: key, event: runs.Event(clocks), runs: runs.At(clocks), weights: runs.Weights(), opens: opens, closes: closes}
}

// room is the air of the set: measured where the facts have it, else as the brief expects.
func (d *day) room() (Air, error) {
	r, measured := d.brief.Room, d.brief.Room.Measured
	if d.facts.Room != nil {
		r, measured = *d.facts.Room, true
	}
	d.air = thermal.Air{TempC: r.TempC, RH: r.RHPercent / 100, Speed: r.AirSpeed.Or(0), Still: r.AirSpeed.Given && r.AirSpeed.Value == 0}
	pa, err := pressure(d.brief.Place.AltitudeM)
	if err != nil {
		return Air{}, err
	}
	d.air.PressurePa = pa
	dew, err := d.air.DewPointC()
	if err != nil {
		return Air{}, err
	}
	kelvin, points := 1.5, 6.0
	speed := honestplate.Estimate{Low: 0.05, Likely: 0.12, High: 0.5}
	if r.AirSpeed.Given {
		speed = honestplate.Factor(max(r.AirSpeed.Value, 0.02), 2)
	}
	return Air{
		TempC:     honestplate.Estimate{Low: r.TempC - kelvin, Likely: r.TempC, High: r.TempC + kelvin},
		RHPercent: honestplate.Estimate{Low: max(r.RHPercent-points, 0), Likely: r.RHPercent, High: min(r.RHPercent+points, 100)},
		DewPointC: dew, SpeedMS: speed, Measured: measured,
	}, nil
}

var sources = map[string]light.Source{
	"tungsten": light.Tungsten, "discharge": light.Discharge, "led": light.LED, "flash": light.Flash,
}

// hotIrradiance is the light, W/m2, above which a lamp counts as hot on the food:
// common practice, no source.
const hotIrradiance = 100

// lights are the lamps and the daylight, and what they do to the food.
func (d *day) lights() ([]Light, error) {
	var out []Light
	for i, l := range d.brief.Lamps {
		lamp := light.Lamp{
			Source: sources[l.Source], Watts: l.Watts, Lux: l.Lux, Joules: l.Joules, PopsPerMinute: l.PopsPerMinute,
			ModellingWatts: l.ModellingW, Distance: cmp.Or(l.DistanceM, 1), BeamDegrees: l.BeamDegrees, Transmittance: stops(l.Stops),
		}
		light, err := lamp.Irradiance()
		if err != nil {
			return nil, in(field("lamps", i), lampNames.of(err))
		}
		d.lamps = append(d.lamps, lamp)
		hot := light.Likely >= hotIrradiance || l.Source == "tungsten" || l.Source == "discharge" || l.ModellingW > 0
		out = append(out, Light{Name: l.Name, Source: l.Source, Irradiance: light, Hot: hot})
	}
	if lux := d.brief.Daylight; lux > 0 {
		// Daylight gives 90 to 140 lm per watt of radiation (from memory) and is as white as
		// a discharge lamp, whose band of 90 to 190 holds it.
		window := light.Lamp{Source: light.Discharge, Lux: lux}
		light, err := window.Irradiance()
		if err != nil {
			return nil, in("daylight_lux", err)
		}
		d.lamps = append(d.lamps, window)
		out = append(out, Light{Name: "daylight", Source: "daylight", Irradiance: light})
	}
	return out, nil
}
