package shoot

import (
	"cmp"
	"math"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/record"
)

// scale is the bench scale: in service, with its check weight where one was used. One
// that shows more than ten thousand steps is of class II: no coarser class has so many.
func (d *day) scale() portion.Scale {
	s := portion.Scale{StepGrams: d.step(), MaxGrams: cmp.Or(d.brief.Scale.MaxGrams, 3000)}
	if s.MaxGrams > 10_000*s.StepGrams {
		s.Class = portion.ClassII
	}
	if e := d.brief.Scale.CheckG; e > 0 {
		s.Check = portion.CheckWeight{Grams: s.MaxGrams / 2, Reading: s.MaxGrams/2 + e}
	}
	return s
}

// portion is the brief's specification, as portion checks builds against it.
func (s *Specification) portion(step float64) record.Specification {
	out := record.Specification{Product: s.Product, Version: s.Version}
	if s.SignedBy != "" {
		out.Signed = record.Signature{Name: s.SignedBy}
	}
	if s.ValidUntil != nil {
		out.ValidUntil = text(*s.ValidUntil)
	}
	for _, c := range s.Components {
		l := record.Layer{Name: c.Name, Declared: portion.Amount{Grams: c.Grams, MinusGrams: c.MinusGrams, PlusGrams: c.PlusGrams, Count: c.Count}}
		if c.Grams > 0 {
			l.Declared.StepGrams = step
		}
		if c.Cooked {
			l.Basis = record.Cooked
		}
		out.Layers = append(out.Layers, l)
	}
	return out
}

// layer is how long a layer takes to lay and weigh: common practice, no source.
const layer = 2 * time.Minute

// build works a specification out: what to lay, between which readings it agrees, and
// whether the scale can tell at all.
func (d *day) build(j *job, p *PlannedThing) error {
	s := j.dish.Specification
	spec := s.portion(d.step())
	plan := &BuildPlan{Product: s.Product, Version: s.Version, SignedBy: s.SignedBy}
	p.Build = plan
	ref, err := spec.Ref()
	if err != nil {
		return err
	}
	plan.Hash, plan.ValidUntil = ref.SHA256, ref.ValidUntil
	check, err := spec.BeforeWeighing(d.scale())
	if err != nil {
		return err
	}
	total := 0.0
	for i, c := range s.Components {
		f := check.Layers[i]
		total += c.Grams
		l := BuildLayer{Name: c.Name, Grams: c.Grams, Count: c.Count, MinusG: c.MinusGrams, PlusG: c.PlusGrams, TotalG: total, CanTell: f.Verdict == portion.Agrees}
		if c.Grams > 0 {
			zone, err := f.Limits.Accept(f.Standard)
			if err == nil && l.CanTell {
				l.LowG, l.HighG = inward(zone.Low.Value, zone.High.Value, d.step())
			}
			if !l.CanTell {
				p.Notes = append(p.Notes, Note{Code: ScaleTooCoarse, Thing: c.Name, Value: honestplate.Some(c.MinusGrams + c.PlusGrams), Second: honestplate.Some(math.Round(400*f.Standard) / 100)})
			}
		}
		if c.Cooked {
			l.RawGrams = math.Ceil(c.Grams / (c.YieldPercent / 100))
		}
		plan.Layers = append(plan.Layers, l)
		n := float64(max(j.shot.Units.Need, 1))
		j.buy(Purchase{What: c.Name, Grams: cmp.Or(l.RawGrams, l.Grams) * n, Count: c.Count * int(n), PackGrams: c.PackGrams, PackCount: c.PackCount})
	}
	if s.SignedBy == "" {
		p.Notes = append(p.Notes, Note{Code: NotSigned, Thing: p.Name})
	}
	j.built, j.build = p.Name, layer*time.Duration(len(s.Components))
	return nil
}

// inward rounds the ends of a zone to the scale's step, towards its middle.
func inward(low, high, step float64) (float64, float64) {
	return step * math.Ceil(low/step-1e-9), step * math.Floor(high/step+1e-9)
}
