package main

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/pour"
)

// kinds are the liquids a brief may name, each with the field that says which.
var kinds = map[string]struct {
	needs string
	make  func(Liquid) rheology.Liquid
}{
	"dairy":   {"fat_percent", func(l Liquid) rheology.Liquid { return rheology.Dairy{FatPercent: l.FatPercent} }},
	"sucrose": {"brix", func(l Liquid) rheology.Liquid { return rheology.Sucrose{Brix: l.Brix} }},
	"honey":   {"moisture_percent", func(l Liquid) rheology.Liquid { return rheology.Honey{MoisturePercent: l.MoisturePercent} }},
	"maple":   {"brix", func(l Liquid) rheology.Liquid { return rheology.Syrup{Of: "maple", SolidsPercent: l.Brix} }},
	"invert":  {"solids_percent", func(l Liquid) rheology.Liquid { return rheology.Syrup{Of: "invert", SolidsPercent: l.SolidsPercent} }},
	"water":   {"", func(Liquid) rheology.Liquid { return rheology.Water{} }},
}

// liquid finds the library's liquid and checks that the brief says of it what its
// kind needs and nothing else.
func (l Liquid) liquid(field string) (rheology.Liquid, error) {
	kind, ok := kinds[l.Kind]
	if !ok {
		var names []string
		for name := range kinds {
			names = append(names, name)
		}
		slices.Sort(names)
		return nil, fieldErrorf(field+".kind", "%q, want one of %q", l.Kind, names)
	}
	for _, f := range []struct {
		name  string
		value float64
	}{{"fat_percent", l.FatPercent}, {"brix", l.Brix}, {"moisture_percent", l.MoisturePercent}, {"solids_percent", l.SolidsPercent}} {
		if f.name == kind.needs && f.value == 0 {
			return nil, fieldErrorf(field+"."+f.name, "missing: %s needs it", l.Kind)
		}
		if f.name != kind.needs && f.value != 0 {
			return nil, fieldErrorf(field+"."+f.name, "%s has none", l.Kind)
		}
	}
	liquid := kind.make(l)
	if m := l.Measured; m != nil {
		liquid = rheology.Measured{Liquid: liquid, TempC: m.TempC, PaS: honestplate.Within(m.MPaS/1000, m.PlusMinus/100)}
		if _, err := liquid.Viscosity(m.TempC); err != nil {
			return nil, &FieldError{field + ".measured", err}
		}
	}
	return liquid, nil
}

// mixAhead leaves time to mix, chill, test, correct and test again; common
// practice, no source.
const mixAhead = 90 * time.Minute

// A mixed liquid is what goes into the jug.
type mixed struct {
	liquid      rheology.Liquid
	tempC       float64
	batch       *rheology.Batch // nil for an advertised liquid, which is not corrected
	thin, thick string          // what the batch's liquids are called
}

func (p *Plan) planPour(s *Shot, d *Pour) error {
	field := s.Field + ".pour"
	var liquids []rheology.Liquid
	for i, l := range d.Liquids {
		liquid, err := l.liquid(fmt.Sprintf("%s.liquids[%d]", field, i))
		if err != nil {
			return err
		}
		liquids = append(liquids, liquid)
	}
	wanted := d.WantedMPaS / 1000
	if like := d.PoursLike; like != nil {
		liquid, err := like.liquid(field + ".pours_like")
		if err != nil {
			return err
		}
		eta, err := liquid.Viscosity(d.TempC)
		if err != nil {
			return &FieldError{field + ".temp_c", err}
		}
		wanted = eta.Likely
	}
	var jug mixed
	var err error
	if s.Dish.find(d.Item).Advertised {
		jug, err = s.serveAsItIs(d, field, liquids[0], wanted)
	} else {
		jug, err = s.mix(d, field, liquids, wanted)
	}
	if err != nil {
		return err
	}
	if err := s.cupTest(jug); err != nil {
		return &FieldError{field, err}
	}
	return s.pourAndLand(d, field, jug)
}

// mix plans a blend of the two liquids at hand.
func (s *Shot) mix(d *Pour, field string, liquids []rheology.Liquid, wanted float64) (mixed, error) {
	recipe := rheology.Recipe{Thin: liquids[0], Thick: liquids[1], BatchGrams: d.BatchGrams, StepGrams: d.StepGrams, TempC: d.TempC}
	batch, err := recipe.For(wanted)
	if err != nil {
		var outside *honestplate.RangeError
		switch {
		case errors.As(err, &outside) && outside.Unit == "Pa s":
			return mixed{}, &FieldError{field + ".wanted_mpas", err}
		case errors.Is(err, honestplate.ErrInput):
			return mixed{}, &FieldError{field + ".batch_grams", err}
		}
		return mixed{}, &FieldError{field, err}
	}
	liquid, err := batch.Mix()
	if err != nil {
		return mixed{}, &FieldError{field, err}
	}
	decimals := stepDecimals(d.StepGrams)
	recipeText := fmt.Sprintf("%.*f g %s + %.*f g %s = %.*f g", decimals, batch.ThinGrams, d.Liquids[0].Name,
		decimals, batch.ThickGrams, d.Liquids[1].Name, decimals, d.BatchGrams)
	s.add("Mix", fmt.Sprintf("%s, to pour at %s at %.0f degC; predicted %s", recipeText, mPaS(honestplate.Exactly(wanted)), d.TempC, mPaS(batch.Predicted)))
	s.Prep = append(s.Prep, Prep{mixAhead, fmt.Sprintf("mix the %s, chill it to %.0f degC, time the cup and correct", d.Item, d.TempC)})
	s.Planned[d.Item] = recipeText
	batches := math.Ceil(d.PouredGrams * float64(s.Units) / d.BatchGrams)
	s.Buys = append(s.Buys, Buy{d.Liquids[0].Name, batch.ThinGrams * batches, 0}, Buy{d.Liquids[1].Name, batch.ThickGrams * batches, 0})
	if batches > 1 {
		s.add("", fmt.Sprintf("%.0f batches for %d takes of %.0f g", batches, s.Units, d.PouredGrams))
	}
	return mixed{liquid, d.TempC, &batch, d.Liquids[0].Name, d.Liquids[1].Name}, nil
}

// serveAsItIs plans an advertised liquid: only its temperature may be chosen.
func (s *Shot) serveAsItIs(d *Pour, field string, liquid rheology.Liquid, wanted float64) (mixed, error) {
	_, refused := rheology.Recipe{Thin: liquid, Thick: liquid, BatchGrams: d.BatchGrams, StepGrams: d.StepGrams, TempC: d.TempC, Advertised: true}.For(wanted)
	if !errors.Is(refused, honestplate.ErrAdvertised) {
		return mixed{}, &FieldError{field, fmt.Errorf("blending an advertised liquid was not refused: %v", refused)}
	}
	tempC, err := rheology.ServeAt(liquid, wanted, d.LowestC, d.HighestC)
	if err != nil {
		return mixed{}, &FieldError{field + ".wanted_mpas", err}
	}
	eta, err := liquid.Viscosity(tempC)
	if err != nil {
		return mixed{}, &FieldError{field, err}
	}
	s.add("Mix", fmt.Sprintf("nothing: %s is advertised and pours as it is; only its temperature may be chosen", d.Item))
	s.add("Serve", fmt.Sprintf("at %.0f degC for %s; predicted %s", tempC, mPaS(honestplate.Exactly(wanted)), mPaS(eta)))
	if asIs, err := liquid.Viscosity(d.TempC); err == nil && math.Abs(tempC-d.TempC) >= 1 {
		s.add("", fmt.Sprintf("as it stands, at %.0f degC, it is %s", d.TempC, mPaS(asIs)))
	}
	it := s.Dish.find(d.Item)
	s.Planned[d.Item] = fmt.Sprintf("%.*f g as sold, at %.0f degC", stepDecimals(it.StepGrams), it.Grams, tempC)
	return mixed{liquid: liquid, tempC: tempC}, nil
}

// cupTest says which flow cup and which time confirm the liquid in the jug.
func (s *Shot) cupTest(jug mixed) error {
	eta, err := jug.liquid.Viscosity(jug.tempC)
	if err != nil {
		return err
	}
	rho, err := jug.liquid.Density(jug.tempC)
	if err != nil {
		return err
	}
	cup, err := rheology.ISOCupFor(jug.liquid, jug.tempC)
	if errors.Is(err, honestplate.ErrRange) || errors.Is(err, honestplate.ErrInput) { // too thin, too thick, or it stands
		s.Decides = "a timed pour"
		s.add("Test", fmt.Sprintf("no ISO 2431 cup reaches %s mm2/s: time the pour itself", digits(1e6*eta.Likely/rho.Likely, 2)))
		return nil
	}
	if err != nil {
		return err
	}
	w, err := cup.TimeOf(jug.liquid, jug.tempC)
	if err != nil {
		return err
	}
	likely, shortest, longest := w.Likely.After, w.Earliest.After, w.Latest.After
	least, most := "", ""
	if shortest == cup.Least {
		least = " or less" // the cup reads no shorter
	}
	if longest == cup.Most {
		most = " or more"
	}
	s.add("Test", fmt.Sprintf("%s cup at %.0f degC: %s confirms it (by the band %s%s to %s%s)",
		cup, jug.tempC, seconds(likely), seconds(shortest), least, seconds(longest), most))
	s.Decides = "the cup test"
	if jug.batch == nil {
		return nil
	}
	return s.corrections(cup, likely, jug)
}

// corrections says what to add if the cup runs a sixth shorter or longer than it should,
// as far as the cup reads such times. Another time is corrected in the same way.
func (s *Shot) corrections(cup rheology.Cup, likely time.Duration, jug mixed) error {
	var lines []string
	for _, t := range []time.Duration{max(likely*5/6, cup.Least), min(likely*7/6, cup.Most)} {
		t = t.Round(time.Second)
		fix, err := jug.batch.CorrectFromCup(cup.Timed(t))
		if errors.Is(err, honestplate.ErrRange) {
			continue // so far off that adding a little of either does not mend it
		}
		if err != nil {
			return err
		}
		grams, name := fix.AddThickGrams, jug.thick
		if fix.AddThinGrams > 0 {
			grams, name = fix.AddThinGrams, jug.thin
		}
		if grams > 0 {
			lines = append(lines, fmt.Sprintf("%s, add %.*f g %s", seconds(t), stepDecimals(jug.batch.Recipe.StepGrams), grams, name))
		}
	}
	if len(lines) > 0 {
		s.add("Correct", "if the cup says "+strings.Join(lines, "; if ")+"; stir, bring back to temperature, time it again")
	}
	return nil
}

// pourAndLand follows the liquid from the jug to the food.
func (s *Shot) pourAndLand(d *Pour, field string, jug mixed) error {
	spout := pour.Spout{Diameter: d.Jug.OutletMM / 1000, Length: d.Jug.LengthMM / 1000, Head: d.Jug.HeadMM / 1000}
	poured, err := spout.Pour(jug.liquid, jug.tempC, d.PouredGrams)
	if err != nil {
		return &FieldError{field + ".jug", err}
	}
	s.add("Pour", fmt.Sprintf("%s g in %s (%s to %s), %s mL/s; decided by: %s", digits(d.PouredGrams, 3), seconds(poured.Duration.Likely.After),
		seconds(poured.Duration.Earliest.After), seconds(poured.Duration.Latest.After), digits(poured.Rate.Likely*1e6, 2), decidesPour(poured)))
	s.Events = []Event{{"pour ends", poured.Duration, true}}
	s.Moment = "pour lasts " + seconds(poured.Duration.Likely.After)
	stream, err := poured.Stream(d.DropMM / 1000)
	if err != nil {
		return &FieldError{field + ".drop_mm", err}
	}
	s.add("Stream", streamWords(stream))
	splash, err := stream.Splash(pour.Target{Film: d.FilmMM / 1000})
	if err != nil {
		return &FieldError{field + ".film_mm", err}
	}
	s.add("Splash", splashWords(splash))
	spot := max(0.01, 3*stream.Diameter)
	if err := s.place(d.Item, d.PlateMM/1000, spot, []portion.Piece{{Name: d.Item, Grams: d.PouredGrams}}); err != nil {
		return &FieldError{field + ".plate_mm", err}
	}
	s.Cautions = append(s.Cautions, "liquids and mains: keep jugs away from lamps, packs and leads")
	return nil
}

// decidesPour says what the duration's band comes from: the liquid or the outlet.
func decidesPour(p pour.Pour) string {
	spread := math.Log(p.Viscosity.High / p.Viscosity.Low)
	if p.Friction > 0.5 && spread > 2*p.Hydraulics {
		return "the liquid's thickness, so test it first"
	}
	return fmt.Sprintf("the jug (%s) more than the liquid", p.Regime)
}

func streamWords(st pour.Stream) string {
	width, speed := digits(st.Diameter*1000, 2), digits(st.Speed, 2)
	switch {
	case st.Drips:
		return fmt.Sprintf("it only drips, in drops of %s mm: tilt further for a stream", width)
	case st.Broken:
		return fmt.Sprintf("broken into drops of %s mm where it lands, at %s m/s: it holds together for %s mm (%s to %s)", width, speed,
			digits(st.BreakUp.Likely*1000, 2), digits(st.BreakUp.Low*1000, 2), digits(st.BreakUp.High*1000, 2))
	case st.MayBreak:
		return fmt.Sprintf("%s mm wide where it lands, at %s m/s; it may break up: it holds together for %s mm (%s to %s)", width, speed,
			digits(st.BreakUp.Likely*1000, 2), digits(st.BreakUp.Low*1000, 2), digits(st.BreakUp.High*1000, 2))
	}
	return fmt.Sprintf("%s mm wide and whole where it lands, at %s m/s", width, speed)
}

func splashWords(sp pour.Splash) string {
	above, apply := 0, 0
	for _, v := range sp.Verdicts {
		if v.Applies {
			apply++
			if v.Exceeded {
				above++
			}
		}
	}
	if apply == 0 {
		return fmt.Sprintf("%s: no published criterion covers this liquid and surface", sp.Summary)
	}
	low, high := digits(sp.Threshold.Low, 2), digits(sp.Threshold.High, 2)
	if low != high {
		low += " to " + high
	}
	return fmt.Sprintf("%s: %d of %d published criteria exceeded; their threshold is %s m/s", sp.Summary, above, apply, low)
}
