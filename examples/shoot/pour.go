package shoot

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/look"
	"example.org/honestplate/rheology/look/sharp"
	"example.org/honestplate/rheology/pour"
	"example.org/honestplate/rheology/viscometer"
)

// mixAhead leaves time to mix, chill, test, correct and test again; common practice, no
// source.
const mixAhead = 20 * time.Minute

// mixing is how long mixing, chilling, testing and correcting take; common practice, no
// source.
const mixing = 75 * time.Minute

// cupGrams is what a cup test drains, g: the standard cups hold about 100 mL.
const cupGrams = 110

// testsPerBatch is how often a batch is timed: before and after a correction, and once
// more on the set.
const testsPerBatch = 3

// puddleAfter is when a puddle is looked at: common practice, no source.
const puddleAfter = 10 * time.Second

// glazed is the angle at which a liquid meets glazed ware, degrees: the middle of the 20 to
// 60 that pour.Pour.Dribble states for glass and glazed ware.
const glazed = 40

// pour works a pour out: what is in the jug, how it is tested, what the stream does.
func (d *day) pour(j *job, t *Thing, p *PlannedThing, at string) error {
	q := t.Pour
	plan := &PourPlan{TempC: q.TempC, PouredGrams: q.PouredG, Outlet: q.Outlet, DropMM: q.DropMM, Onto: q.Onto, DepthMM: q.DepthMM, Into: j.dish.catches(q)}
	p.Pour = plan
	var liquid rheology.Liquid
	var err error
	if len(q.Liquids) == 2 {
		liquid, err = d.blend(j, t, p)
	} else {
		liquid, err = d.asItIs(j, t, p)
	}
	if err != nil {
		return err
	}
	if plan.PredictedPaS, err = liquid.Viscosity(plan.TempC); err != nil {
		return err
	}
	plan.ShearRate = liquid.Describe().ShearRate
	run, err := q.Outlet.pour(liquid, plan.TempC, q.PouredG)
	if err != nil {
		return err
	}
	plan.HeadMM = math.Round(run.headMM*10) / 10
	plan.Lasts = run.Duration
	plan.LiquidRules = run.Friction > 0.5 && math.Log(run.Viscosity.High/run.Viscosity.Low) > 2*run.Hydraulics
	if run.MayGush || run.MayStay {
		p.Notes = append(p.Notes, Note{Code: MayStay, Thing: t.Name})
	}
	if err := plan.landing(q, run.Pour); err != nil {
		return err
	}
	coat, err := pour.Wall{Height: 0.03}.Drain(liquid, plan.TempC, 2*time.Second)
	if err == nil {
		plan.CoatMM = coat.Mean.Times(1000)
	} else if !errors.Is(err, honestplate.ErrRange) {
		return err
	}
	j.tool("jug for "+t.Name, 1)
	return plan.picture(q, liquid)
}

// sensorWidth is that of a full frame, m; the blur allowed is its circle of confusion.
const sensorWidth = 0.036

// picture says how the liquid looks where it lies, and which flash freezes it.
func (plan *PourPlan) picture(q *Pour, liquid rheology.Liquid) error {
	plan.FrameMM = cmp.Or(q.FrameMM, 200)
	camera := sharp.Camera{Magnification: sensorWidth / (plan.FrameMM / 1000), Pixel: 4.4e-6}
	if light, err := camera.Freezes(plan.SpeedMS, sharp.FullFrameCircle); err == nil {
		plan.FreezeS = honestplate.Some(light)
	} else if !errors.Is(err, honestplate.ErrRange) {
		return in("frame_width_mm", err)
	}
	if q.Hides == "" || plan.CoatMM.Likely <= 0 {
		return nil
	}
	milk, err := look.Of(liquid)
	if err != nil {
		return nil // neither milk nor cream: how it looks is not known
	}
	optics, err := milk.Optics()
	if err != nil {
		return err
	}
	ground := map[string]look.Ground{"flake": look.Flake, "chocolate": look.Chocolate, "glass": look.Black}[q.Hides]
	h := &Hides{What: q.Hides}
	plan.Hides = h
	if h.NeedsMM, err = optics.Hides(look.Scene{}, ground, look.White, look.Hidden); err != nil {
		return err
	}
	h.NeedsMM = h.NeedsMM.Times(1000)
	for _, c := range []struct {
		mm float64
		to *float64
	}{{plan.CoatMM.Low, &h.Contrast.Low}, {plan.CoatMM.Likely, &h.Contrast.Likely}, {plan.CoatMM.High, &h.Contrast.High}} {
		if *c.to, err = optics.Contrast(look.Scene{}, c.mm/1000, ground, look.White); err != nil {
			return err
		}
	}
	h.Does = h.Contrast.Likely >= look.Hidden
	return nil
}

// landing follows the stream to the food.
func (plan *PourPlan) landing(q *Pour, run pour.Pour) error {
	stream, err := run.Stream(q.DropMM / 1000)
	if err != nil {
		return in("drop_mm", err)
	}
	plan.StreamMM, plan.SpeedMS, plan.Breaks, plan.MayBreak = stream.Diameter*1000, stream.Speed, stream.Broken || stream.Drips, stream.MayBreak && !stream.Broken
	splash, err := stream.Splash(pour.Target{Film: q.DepthMM / 1000})
	if err == nil {
		plan.Splash = string(splash.Summary)
	} else if !errors.Is(err, honestplate.ErrRange) {
		return in("depth_mm", err)
	}
	if fall, err := run.GreatestFall(pour.Target{Film: q.DepthMM / 1000}); err == nil {
		plan.NoHigherMM = honestplate.Some(1000 * fall.Low)
	} else if !errors.Is(err, honestplate.ErrRange) && !errors.Is(err, honestplate.ErrInput) {
		return in("depth_mm", err) // else no criterion covers this surface
	}
	if q.Onto == "dry plate" {
		puddle, err := run.Puddle(puddleAfter, glazed)
		if err != nil {
			return err
		}
		plan.PuddleMM, plan.PuddleAfter = puddle.Radius.Times(2000), honestplate.After(puddleAfter)
	}
	return nil
}

// ran is a pour with the head that it took.
type ran struct {
	pour.Pour
	headMM float64
}

// pour runs the liquid out of the outlet. Where a duration is wanted, the head that gives
// it is found first.
func (o *Outlet) pour(l rheology.Liquid, tempC, grams float64) (ran, error) {
	lasts := time.Duration(o.Seconds * float64(time.Second))
	if o.Kind == "lip" {
		lip, err := pour.Lip{Width: o.WidthMM / 1000, Length: o.LengthMM / 1000, Head: o.HeadMM / 1000}, error(nil)
		if o.Seconds > 0 {
			lip, err = lip.ForDuration(l, tempC, grams, lasts)
		}
		if err != nil {
			return ran{}, err
		}
		p, err := lip.Pour(l, tempC, grams)
		return ran{p, 1000 * lip.Head}, err
	}
	spout, err := pour.Spout{Diameter: o.WidthMM / 1000, Length: cmp.Or(o.LengthMM, o.WidthMM) / 1000, Head: o.HeadMM / 1000, Closed: o.Kind == "closed bottle"}, error(nil)
	if o.Seconds > 0 {
		spout, err = spout.ForDuration(l, tempC, grams, lasts)
	}
	if err != nil {
		return ran{}, err
	}
	p, err := spout.Pour(l, tempC, grams)
	return ran{p, 1000 * spout.Head}, err
}

// wish puts an error about the thickness that is wanted where the brief has the wish.
func (q *Pour) wish(err error) error {
	return refielded(err, func(field string) string {
		if field == "PaS" && q.PoursLike != nil {
			return "pours_like"
		}
		return field
	})
}

// blend mixes the two liquids at hand, tests and corrects.
func (d *day) blend(j *job, t *Thing, p *PlannedThing) (rheology.Liquid, error) {
	q, plan := t.Pour, p.Pour
	wanted := q.WantedMPaS / 1000
	if q.PoursLike != nil {
		eta, err := q.PoursLike.Is.Viscosity(q.TempC)
		if err != nil {
			return nil, in("pours_like.is", err)
		}
		wanted = eta.Likely
	}
	plan.WantedPaS = honestplate.Some(wanted)
	use := q.PouredG * float64(max(j.shot.Units.Need, 1))
	grams := q.BatchGrams
	if grams == 0 {
		grams = math.Ceil((use+testsPerBatch*cupGrams)*1.05/10) * 10
	}
	plan.BatchGrams = grams
	plan.Batches = int(math.Ceil(use / math.Max(grams-testsPerBatch*cupGrams, q.PouredG)))
	recipe := rheology.Recipe{Thin: q.Liquids[0].Is.Liquid, Thick: q.Liquids[1].Is.Liquid, BatchGrams: grams, StepGrams: math.Max(d.step(), 0.1), TempC: q.TempC}
	batch, err := recipe.For(wanted)
	if err != nil {
		return nil, q.wish(err)
	}
	plan.Blend = []BlendPart{{q.Liquids[0].Name, batch.ThinGrams}, {q.Liquids[1].Name, batch.ThickGrams}}
	liquid, err := batch.Mix()
	if err != nil {
		return nil, err
	}
	most, err := d.cup(j, t, p, &batch, liquid)
	if err != nil {
		return nil, err
	}
	for i, s := range q.Liquids {
		need := plan.Blend[i].Grams * float64(plan.Batches)
		j.buy(Purchase{What: s.Name, Grams: need + most[i]*float64(plan.Batches), PackGrams: cmp.Or(s.PackGrams, 1000)})
	}
	j.drafts = append(j.drafts, draft{task: Task{What: Mix, Thing: t.Name, TempC: q.TempC, HasTemp: true}, ahead: mixAhead, lasts: mixing, hands: true})
	return liquid, nil
}

// cup says how the batch is tested, and what at the most a correction adds of either
// liquid. A cup time that has come back corrects the batch, or says to leave it.
func (d *day) cup(j *job, t *Thing, p *PlannedThing, batch *rheology.Batch, liquid rheology.Liquid) (most [2]float64, err error) {
	tempC := t.Pour.TempC
	cup, err := d.cupFor(liquid, batch, tempC)
	if errors.Is(err, honestplate.ErrRange) || errors.Is(err, honestplate.ErrNoFlow) {
		p.Notes = append(p.Notes, Note{Code: TooThinForCup, Thing: t.Name})
		return most, d.timed(t, p, batch)
	}
	if err != nil {
		return most, err
	}
	expected, err := cup.Test(*batch)
	if errors.Is(err, honestplate.ErrRange) {
		p.Notes = append(p.Notes, Note{Code: TooThinForCup, Thing: t.Name})
		return most, d.timed(t, p, batch)
	}
	if err != nil {
		return most, err
	}
	test := &CupTest{Cup: cup.Name, TempC: tempC, Expected: expected.Time, Leave: honestplate.Lasting(expected.OK.From, expected.OK.Target, expected.OK.To),
		Least: honestplate.After(cup.Least), Most: honestplate.After(cup.Most)}
	p.Pour.Cup = test
	j.tool(cup.Name+" cup", 1)
	// What to add a twelfth off the target, as far as the cup tells. Further off a new batch
	// is cheaper than mending this one: common practice, no source.
	for _, share := range []float64{11. / 12, 13. / 12} {
		at := time.Duration(share * float64(expected.OK.Target)).Round(time.Second)
		if at < cup.Least || at > cup.Most {
			continue
		}
		c, err := correction(t, batch, viscometer.CupReading{Cup: cup, Times: []time.Duration{at}})
		if errors.Is(err, honestplate.ErrRange) {
			continue // so far off that adding a little of either does not mend it
		}
		if err != nil {
			return most, err
		}
		if c.Leave {
			continue
		}
		test.Corrections = append(test.Corrections, c)
		for i, l := range t.Pour.Liquids {
			if l.Name == c.Add {
				most[i] = math.Max(most[i], c.Grams)
			}
		}
	}
	return most, d.timed(t, p, batch)
}

// cupFor is the first cup at hand that can tell the batch; where the brief lists none, the
// standard one that can.
func (d *day) cupFor(liquid rheology.Liquid, batch *rheology.Batch, tempC float64) (cup viscometer.Cup, err error) {
	if len(d.brief.Cups) == 0 {
		return viscometer.ISOCupFor(liquid, tempC)
	}
	for _, name := range d.brief.Cups {
		if cup, err = viscometer.CupNamed(name); err == nil {
			_, err = cup.Test(*batch)
		}
		if err == nil || !errors.Is(err, honestplate.ErrRange) {
			return cup, err
		}
	}
	return cup, err
}

// timed corrects the batch from the last cup times that the facts have of it.
func (d *day) timed(t *Thing, p *PlannedThing, batch *rheology.Batch) error {
	for i, f := range d.facts.Cups {
		if _, of, err := d.brief.find(f.Dish, f.Thing, ""); err != nil || of != t {
			continue
		}
		cup, err := viscometer.CupNamed(f.Cup)
		if err != nil {
			return err // the facts were checked: it is one
		}
		r := viscometer.CupReading{Cup: cup, TempC: honestplate.Some(f.TempC)}
		for _, s := range f.Seconds {
			r.Times = append(r.Times, time.Duration(s*float64(time.Second)))
		}
		c, err := correction(t, batch, r)
		if err != nil {
			return in(fmt.Sprintf("facts.cups[%d]", i), cupNames.of(err))
		}
		p.Pour.Corrected = &c
		p.Notes = slices.DeleteFunc(p.Notes, func(n Note) bool { return n.Code == RevisedBatch })
		p.Notes = append(p.Notes, Note{Code: RevisedBatch, Thing: t.Name})
	}
	return nil
}

// correction is what one reading asks to add.
func correction(t *Thing, batch *rheology.Batch, r viscometer.CupReading) (Correction, error) {
	fix, err := r.Correct(*batch)
	c := Correction{Leave: fix.LeaveIt}
	for _, s := range r.Times {
		c.Seconds += s.Seconds() / float64(len(r.Times))
	}
	c.Seconds = math.Round(c.Seconds*10) / 10
	switch {
	case fix.AddThickGrams > 0:
		c.Add, c.Grams = t.Pour.Liquids[1].Name, fix.AddThickGrams
	case fix.AddThinGrams > 0:
		c.Add, c.Grams = t.Pour.Liquids[0].Name, fix.AddThinGrams
	default:
		c.Leave = true
	}
	return c, err
}

// asItIs pours one liquid; of an advertised one only the temperature may be chosen.
func (d *day) asItIs(j *job, t *Thing, p *PlannedThing) (rheology.Liquid, error) {
	q, plan := t.Pour, p.Pour
	liquid := q.Liquids[0].Is.Liquid
	wanted := q.WantedMPaS / 1000
	if q.PoursLike != nil {
		eta, err := q.PoursLike.Is.Viscosity(q.TempC)
		if err != nil {
			return nil, in("pours_like.is", err)
		}
		wanted = eta.Likely
	}
	if wanted > 0 {
		plan.WantedPaS = honestplate.Some(wanted)
		tempC, err := rheology.ServeAt(liquid, wanted, q.LowestC.Value, q.HighestC.Value)
		if err != nil {
			return nil, q.wish(err)
		}
		plan.TempC = math.Round(tempC)
	}
	use := q.PouredG * float64(max(j.shot.Units.Need, 1))
	plan.BatchGrams, plan.Batches = math.Max(q.BatchGrams, use), 1
	plan.Blend = []BlendPart{{q.Liquids[0].Name, use}}
	j.buy(Purchase{What: q.Liquids[0].Name, Grams: use + cupGrams, PackGrams: cmp.Or(q.Liquids[0].PackGrams, 1000)})
	if math.Abs(plan.TempC-d.air.TempC) > 2 {
		j.drafts = append(j.drafts, draft{task: Task{What: Warm, Thing: t.Name, TempC: plan.TempC, HasTemp: true}, ahead: 0, lasts: 30 * time.Minute, hands: true})
	}
	return liquid, nil
}

// drizzle works out a thread that coils.
func (d *day) drizzle(j *job, t *Thing, p *PlannedThing) error {
	q := t.Drizzle
	run, err := q.Outlet.pour(q.Liquid.Is.Liquid, q.TempC, q.DrizzleG)
	if err != nil {
		return err
	}
	stream, err := run.Stream(q.DropMM / 1000)
	if err != nil {
		return in("drop_mm", err)
	}
	plan := &CoilPlan{Lasts: run.Duration, HeadMM: math.Round(run.headMM*10) / 10, ThreadMM: stream.Diameter * 1000,
		Grams: q.DrizzleG, TempC: q.TempC, Outlet: q.Outlet, DropMM: q.DropMM}
	p.Coil = plan
	if run.MayGush || run.MayStay {
		p.Notes = append(p.Notes, Note{Code: MayStay, Thing: t.Name})
	}
	coil, err := stream.Coil()
	switch {
	case err == nil:
		plan.Coils, plan.RingMM, plan.TurnsPS = coil.Coils, coil.Radius.Times(2000), coil.Frequency
	case !errors.Is(err, honestplate.ErrRange) && !errors.Is(err, honestplate.ErrNoFlow):
		return err
	}
	use := q.DrizzleG * float64(max(j.shot.Units.Need, 1))
	j.buy(Purchase{What: q.Liquid.Name, Grams: use, PackGrams: cmp.Or(q.Liquid.PackGrams, 1000)})
	if math.Abs(q.TempC-d.air.TempC) > 2 {
		j.drafts = append(j.drafts, draft{task: Task{What: Warm, Thing: t.Name, TempC: q.TempC, HasTemp: true}, ahead: 0, lasts: 30 * time.Minute, hands: true})
	}
	return nil
}
