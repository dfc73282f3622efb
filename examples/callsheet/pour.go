package main

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"time"

	"example.org/honestplate/rheology"
)

// kinds are the liquids a brief may name, each with the field that says which.
var kinds = map[string]struct {
	needs string
	make  func(Liquid) rheology.Liquid
}{
	"dairy":   {"fat_percent", func(l Liquid) rheology.Liquid { return rheology.Dairy{FatPercent: l.FatPercent} }},
	"sucrose": {"brix", func(l Liquid) rheology.Liquid { return rheology.Sucrose{Brix: l.Brix} }},
	"honey":   {"moisture_percent", func(l Liquid) rheology.Liquid { return rheology.Honey{MoisturePercent: l.MoisturePercent} }},
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
	}{{"fat_percent", l.FatPercent}, {"brix", l.Brix}, {"moisture_percent", l.MoisturePercent}} {
		if f.name == kind.needs && f.value == 0 {
			return nil, fieldErrorf(field+"."+f.name, "missing: %s needs it", l.Kind)
		}
		if f.name != kind.needs && f.value != 0 {
			return nil, fieldErrorf(field+"."+f.name, "%s has none", l.Kind)
		}
	}
	liquid := kind.make(l)
	if m := l.Measured; m != nil {
		liquid = rheology.Measured{Liquid: liquid, TempC: m.TempC, PaS: rheology.Within(m.MPaS/1000, m.PlusMinus/100)}
		if _, err := liquid.Viscosity(m.TempC); err != nil {
			return nil, &FieldError{field + ".measured", err}
		}
	}
	return liquid, nil
}

// A mixed liquid is what goes into the jug.
type mixed struct {
	liquid rheology.Liquid
	tempC  float64
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
		wanted = eta.Value
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
		var outside *rheology.RangeError
		switch {
		case errors.As(err, &outside) && outside.Unit == "Pa s":
			return mixed{}, &FieldError{field + ".wanted_mpas", err}
		case errors.Is(err, rheology.ErrInput):
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
	s.add("Mix", fmt.Sprintf("%s, to pour at %s at %.0f degC; predicted %s", recipeText, mPaS(rheology.Exactly(wanted)), d.TempC, mPaS(batch.Predicted)))
	s.Planned[d.Item] = recipeText
	batches := math.Ceil(d.PouredGrams * float64(s.Units) / d.BatchGrams)
	s.Buys = append(s.Buys, Buy{d.Liquids[0].Name, batch.ThinGrams * batches, 0}, Buy{d.Liquids[1].Name, batch.ThickGrams * batches, 0})
	if batches > 1 {
		s.add("", fmt.Sprintf("%.0f batches for %d takes of %.0f g", batches, s.Units, d.PouredGrams))
	}
	return mixed{liquid, d.TempC}, nil
}

// serveAsItIs plans an advertised liquid: only its temperature may be chosen.
func (s *Shot) serveAsItIs(d *Pour, field string, liquid rheology.Liquid, wanted float64) (mixed, error) {
	_, refused := rheology.Recipe{Thin: liquid, Thick: liquid, BatchGrams: d.BatchGrams, StepGrams: d.StepGrams, TempC: d.TempC, Advertised: true}.For(wanted)
	if !errors.Is(refused, rheology.ErrAdvertised) {
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
	s.add("Serve", fmt.Sprintf("at %.0f degC for %s; predicted %s", tempC, mPaS(rheology.Exactly(wanted)), mPaS(eta)))
	if asIs, err := liquid.Viscosity(d.TempC); err == nil && math.Abs(tempC-d.TempC) >= 1 {
		s.add("", fmt.Sprintf("as it stands, at %.0f degC, it is %s", d.TempC, mPaS(asIs)))
	}
	it := s.Dish.find(d.Item)
	s.Planned[d.Item] = fmt.Sprintf("%.*f g as sold, at %.0f degC", stepDecimals(it.StepGrams), it.Grams, tempC)
	return mixed{liquid, tempC}, nil
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
	cup, err := rheology.ISOCupFor(eta.Value / rho.Value)
	if errors.Is(err, rheology.ErrRange) {
		s.add("Test", fmt.Sprintf("no ISO 2431 cup holds %.3g mm2/s; time the pour itself", 1e6*eta.Value/rho.Value))
		return nil
	}
	if err != nil {
		return err
	}
	likely, shortest, longest, err := cup.TimeOf(jug.liquid, jug.tempC)
	if err != nil {
		// The band may leave the cup's range although the likely value does not.
		if likely, err = cup.Time(eta.Value / rho.Value); err != nil {
			return err
		}
		s.add("Test", fmt.Sprintf("%s cup at %.0f degC: %s confirms it", cup, jug.tempC, seconds(likely)))
		return nil
	}
	s.add("Test", fmt.Sprintf("%s cup at %.0f degC: %s confirms it (the band gives %s to %s); another time corrects the batch",
		cup, jug.tempC, seconds(likely), seconds(shortest), seconds(longest)))
	return nil
}

// pourAndLand follows the liquid from the jug to the food.
func (s *Shot) pourAndLand(d *Pour, field string, jug mixed) error {
	spout := rheology.Spout{Diameter: d.Jug.OutletMM / 1000, Length: d.Jug.LengthMM / 1000, Head: d.Jug.HeadMM / 1000}
	pour, err := spout.Pour(jug.liquid, jug.tempC, d.PouredGrams)
	if err != nil {
		return &FieldError{field + ".jug", err}
	}
	s.add("Pour", fmt.Sprintf("%.0f g in %s (%s to %s), %.0f mL/s, %s", d.PouredGrams, seconds(pour.Duration.Likely),
		seconds(pour.Duration.Shortest), seconds(pour.Duration.Longest), pour.Rate.Value*1e6, pour.Regime))
	stream, err := pour.Stream(d.DropMM / 1000)
	if err != nil {
		return &FieldError{field + ".drop_mm", err}
	}
	s.add("Stream", streamWords(stream))
	splash, err := stream.Splash(rheology.Target{Film: d.FilmMM / 1000})
	if err != nil {
		return &FieldError{field + ".film_mm", err}
	}
	s.add("Splash", splashWords(splash))
	s.Cautions = append(s.Cautions, "liquids and mains: keep jugs away from lamps, packs and leads")
	return nil
}

func streamWords(st rheology.Stream) string {
	switch {
	case st.Drips:
		return fmt.Sprintf("it only drips: drops of %.1f mm; tilt further for a stream", st.Diameter*1000)
	case st.Broken:
		return fmt.Sprintf("in drops of %.1f mm where it lands, at %.1f m/s: it breaks after %s", st.Diameter*1000, st.Speed, millimetres(st.BreakUp))
	}
	return fmt.Sprintf("%.1f mm wide where it lands, at %.1f m/s; whole for %s", st.Diameter*1000, st.Speed, millimetres(st.BreakUp))
}

func splashWords(sp rheology.Splash) string {
	agree, apply := 0, 0
	for _, v := range sp.Verdicts[:sp.Count] {
		if v.Applies {
			apply++
			if v.Splashes {
				agree++
			}
		}
	}
	return fmt.Sprintf("%s: %d of %d criteria say it splashes", sp.Summary, agree, apply)
}

// stepDecimals is how many decimals a mass in steps has.
func stepDecimals(step float64) int {
	for n := range 6 {
		scaled := step * math.Pow10(n)
		if math.Abs(scaled-math.Round(scaled)) < 1e-9 {
			return n
		}
	}
	return 6
}

// mPaS prints a viscosity with its band, if it has one.
func mPaS(e rheology.Estimate) string {
	if e.Low == e.High {
		return fmt.Sprintf("%.2g mPa s", e.Value*1000)
	}
	return fmt.Sprintf("%.2g (%.2g to %.2g) mPa s", e.Value*1000, e.Low*1000, e.High*1000)
}

func millimetres(e rheology.Estimate) string {
	return fmt.Sprintf("%.0f mm (%.0f to %.0f)", e.Value*1000, e.Low*1000, e.High*1000)
}

// seconds prints a short time: to a tenth below ten seconds.
func seconds(d time.Duration) string {
	if d < 10*time.Second {
		return fmt.Sprintf("%.1f s", d.Seconds())
	}
	return fmt.Sprintf("%.0f s", d.Seconds())
}
