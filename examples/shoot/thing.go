package shoot

import (
	"fmt"
	"math"

	"example.org/honestplate/portion"
	"example.org/honestplate/thermal/heat"
)

// thing works one thing in the frame out. What is shown by a stand-in has no clock of
// the real thing: the stand-in is what stands there.
func (d *day) thing(j *job, t *Thing, at string) (PlannedThing, *shown, error) {
	p := PlannedThing{Name: t.Name, Kind: "plain", Advertised: t.Advertised, StandIn: t.StandIn, Why: t.Why, Grams: t.Grams, Count: t.Count, StepGrams: d.step(), Size: t.size()}
	if k := t.kinds(); len(k) > 0 {
		p.Kind = k[0]
	}
	if t.Build && t.Grams == 0 && t.Count == 0 {
		p.Count = 1
	}
	if !t.Build && (t.Grams > 0 || t.Count > 0) { // the record says what was wanted of props too
		decl := portion.Declaration{Item: t.Name, Grams: t.Grams, StepGrams: d.step(), Count: t.Count, Advertised: t.Advertised}
		if t.Grams == 0 {
			decl.StepGrams = 0
		}
		if err := decl.Validate(); err != nil {
			return p, nil, thingNames.of(err)
		}
	}
	if t.StandIn != "" && t.Pour == nil && t.Drizzle == nil {
		if len(t.kinds()) > 0 {
			p.Notes = append(p.Notes, Note{Code: StandInHolds, Thing: t.Name})
		}
		return p, nil, nil
	}
	var l *shown
	var err error
	switch {
	case t.Bowl != nil:
		l, err = d.bowl(j, t, &p)
		err = in("bowl", bowlNames.of(err))
	case t.Drink != nil:
		l, err = d.drink(j, t, &p)
		err = in("iced_drink", drinkNames.of(err))
	case t.Bottle != nil:
		l, err = d.bottle(j, t, &p)
		err = in("bottle", bottleNames.of(err))
	case t.Scoop != nil:
		l, err = d.scoop(j, t, &p)
		err = in("scoop", scoopNames.of(err))
	case t.Soft != nil:
		l, err = d.soft(j, t, &p)
		err = in("soft_food", softNames.of(err))
	case t.Cheese != nil:
		l, err = d.cheese(j, t, &p)
		err = in("melted_cheese", cheeseNames.of(err))
	case t.Pour != nil:
		err = in("pour", pourNames.of(d.pour(j, t, &p, at)))
	case t.Drizzle != nil:
		err = in("drizzle", drizzleNames.of(d.drizzle(j, t, &p)))
	case t.Pieces != nil:
		err = in("pieces", pieceNames.of(d.pieces(j, t, &p)))
	case t.Build:
		err = in("build", buildNames.of(d.build(j, &p)))
	}
	return p, l, err
}

// step is the bench scale's.
func (d *day) step() float64 {
	if s := d.brief.Scale.StepGrams; s > 0 {
		return s
	}
	return 0.1
}

// pressure of the air at the place's altitude, Pa.
func pressure(altitude float64) (float64, error) { return heat.PressureAtAltitude(altitude) }

// stops turns what a diffuser takes, in stops, into what it passes.
func stops(n float64) float64 { return math.Exp2(-n) }

func field(list string, i int) string { return fmt.Sprintf("%s[%d]", list, i) }
