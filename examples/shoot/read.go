package shoot

import (
	"fmt"
	"io"
	"reflect"
	"slices"
	"strings"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/examples/internal/strict"
)

// Faults are all that is wrong with a file, each with its line and an error of the
// root's vocabulary; errors.As finds the first of these.
type Faults = strict.Faults

// Read reads a brief strictly: an unknown field, one given twice, missing, of the wrong
// type or outside its limits, and what no field can say alone, are faults; all are told
// at once. A byte order mark and Windows line ends are passed over.
func Read(r io.Reader) (*Brief, error) {
	b := new(Brief)
	if err := read(r, b, b.faults); err != nil {
		return nil, err
	}
	return b, nil
}

// ReadFacts reads facts as [Read] reads a brief. Whether they fit the brief is for
// [Brief.Plan] to say.
func ReadFacts(r io.Reader) (*Facts, error) {
	f := new(Facts)
	if err := read(r, f, f.faults); err != nil {
		return nil, err
	}
	return f, nil
}

// Schema returns the JSON Schema of a brief; see schema.json.
func Schema() ([]byte, error) {
	return strict.Schema(reflect.TypeFor[Brief](), "a brief of honestplate/shoot")
}

// FactsSchema returns the JSON Schema of facts; see facts.schema.json.
func FactsSchema() ([]byte, error) {
	return strict.Schema(reflect.TypeFor[Facts](), "facts of honestplate/shoot")
}

// read reads a file in two passes: what single fields say, then what they say together.
func read(r io.Reader, into any, together func() []error) error {
	data, err := io.ReadAll(io.LimitReader(r, strict.MostBytes+1))
	if err != nil {
		return err
	}
	if err := strict.Read(data, into); err != nil {
		return err
	}
	return strict.In(data, together()...)
}

// A checker collects what is wrong.
type checker struct{ errs []error }

func (c *checker) add(err error) {
	if err != nil {
		c.errs = append(c.errs, err)
	}
}

// unless notes an InputError where a condition does not hold.
func (c *checker) unless(ok bool, field, got, want string) {
	if !ok {
		c.add(&honestplate.InputError{Field: field, Got: got, Want: want})
	}
}

// one wants one of two fields that say the same in two ways.
func (c *checker) one(first, second bool, at, name, other string) {
	c.unless(first || second, at+"."+name, "missing", "it given, or "+other)
	c.unless(!first || !second, at+"."+name, "given beside "+other, "one of the two")
}

// faults are what the fields of a brief say together.
func (b *Brief) faults() []error {
	c := new(checker)
	if zone, err := b.Place.zone(); err != nil {
		c.add(err)
	} else {
		b.checkDays(c, zone)
	}
	for i := range b.Lamps {
		b.Lamps[i].check(c, fmt.Sprintf("lamps[%d]", i))
	}
	unique(c, "people", len(b.People), func(i int) string { return b.People[i].Name + ", " + b.People[i].Role })
	unique(c, "freezers", len(b.Freezers), func(i int) string { return b.Freezers[i].Name })
	unique(c, "fridges", len(b.Fridges), func(i int) string { return b.Fridges[i].Name })
	unique(c, "ovens", len(b.Ovens), func(i int) string { return b.Ovens[i].Name })
	for i, s := range b.Fridges {
		k := slices.IndexFunc(b.Freezers, func(f Store) bool { return f.Name == s.Name })
		c.unless(k < 0, fmt.Sprintf("fridges[%d].name", i), fmt.Sprintf("%q, as of freezers[%d]", s.Name, k), "a name of its own")
	}
	for i, s := range b.Freezers {
		c.unless(s.TempC < -2, fmt.Sprintf("freezers[%d].temp_c", i), fmt.Sprint(s.TempC), "below -2; a fridge goes under fridges")
	}
	for i, s := range b.Fridges {
		c.unless(s.TempC > -2, fmt.Sprintf("fridges[%d].temp_c", i), fmt.Sprint(s.TempC), "above -2; a freezer goes under freezers")
	}
	unique(c, "dishes", len(b.Dishes), func(i int) string { return b.Dishes[i].Name })
	for i := range b.Dishes {
		d, field := &b.Dishes[i], fmt.Sprintf("dishes[%d]", i)
		c.unless(d.Day <= len(b.Days), field+".day", fmt.Sprint(d.Day), fmt.Sprintf("at most %d, the number of days", len(b.Days)))
		d.check(c, field, b)
	}
	return c.errs
}

// unique notes a name that stands twice.
func unique(c *checker, list string, n int, name func(int) string) {
	first := map[string]int{}
	for i := range n {
		if j, ok := first[name(i)]; ok {
			c.add(&honestplate.InputError{Field: fmt.Sprintf("%s[%d].name", list, i), Got: fmt.Sprintf("%q, as of %s[%d]", name(i), list, j), Want: "a name of its own"})
			continue
		}
		first[name(i)] = i
	}
}

func (b *Brief) checkDays(c *checker, zone *time.Location) {
	for i := range b.Days {
		d, field := &b.Days[i], fmt.Sprintf("days[%d]", i)
		c.unless(d.Date.Year >= 1970 && d.Date.Year <= 2199, field+".date", text(d.Date), "a date from 1970 to 2199")
		call, first, wrap := d.at(d.Call, zone), d.at(d.FirstShot, zone), d.at(d.Wrap, zone)
		c.unless(first.Before(wrap), field+".first_shot", d.FirstShot.String(), d.between())
		if !d.Lunch.IsZero() {
			lunch := d.at(d.Lunch, zone)
			c.unless(lunch.After(call) && lunch.Before(wrap), field+".lunch", d.Lunch.String(), d.between())
		} else {
			c.unless(d.LunchMinutes == 0, field+".lunch_minutes", fmt.Sprint(d.LunchMinutes), "lunch given too: when it is")
		}
		if i > 0 {
			before := b.Days[i-1].at(b.Days[i-1].Wrap, zone)
			c.unless(!call.Before(before), field+".date", call.Format("2006-01-02 15:04"), "after the wrap of the day before, "+before.Format("2006-01-02 15:04"))
		}
	}
}

// between says where the times of a day must lie.
func (d Day) between() string {
	wrap := d.Wrap.String()
	if d.Wrap.Minutes < d.Call.Minutes {
		wrap += " on the next date"
	}
	return "a time between the call, " + d.Call.String() + ", and the wrap, " + wrap
}

func (l *Lamp) check(c *checker, field string) {
	flash := l.Source == "flash"
	c.unless(flash || l.Watts > 0, field+".watts", "missing", "it given: a "+l.Source+" lamp has a power")
	c.unless(!flash || l.Joules > 0, field+".joules_per_pop", "missing", "it given: the energy of a flash")
	c.unless(!flash || l.PopsPerMinute > 0, field+".pops_per_minute", "missing", "it given: how often a flash fires")
	c.unless(!flash || l.Watts == 0, field+".watts", fmt.Sprint(l.Watts), "none: a flash has modelling_watts instead")
	c.unless(flash || l.Joules == 0 && l.PopsPerMinute == 0 && l.ModellingW == 0, field+".joules_per_pop", "given", "none: only a flash has pops and a modelling lamp")
	c.unless(l.Lux > 0 || l.DistanceM > 0, field+".distance_m", "missing", "it given, or lux as measured at the food")
	c.unless(l.Lux > 0 || l.BeamDegrees > 0, field+".beam_degrees", "missing", "it given, or lux as measured at the food")
}

func (d *Dish) check(c *checker, field string, b *Brief) {
	c.one(d.SuccessRate > 0, d.Earlier != nil, field, "success_rate", "earlier")
	if e := d.Earlier; e != nil {
		c.unless(e.Good <= e.Takes, field+".earlier.good", fmt.Sprint(e.Good), fmt.Sprintf("at most the takes, %d", e.Takes))
	}
	sold := false
	builds := 0
	unique(c, field+".things", len(d.Things), func(i int) string { return d.Things[i].Name })
	for i := range d.Things {
		t, at := &d.Things[i], fmt.Sprintf("%s.things[%d]", field, i)
		sold = sold || t.Advertised
		if t.Build {
			builds++
		}
		t.check(c, at, d, b)
	}
	none := d.Advertised == "none"
	c.unless(sold || none, field+".advertised", "not none, and no thing is marked advertised", "advertised: true at what is sold, or advertised: none here where nothing is")
	c.unless(!sold || !none, field+".advertised", "none, and a thing is marked advertised", "product, or no thing so marked")
	c.unless(builds <= 1, field+".things", fmt.Sprintf("with %d builds", builds), "one at most: a dish has one specification")
	c.unless(d.Specification == nil || builds > 0, field+".specification", "given, and no thing is built by it", "build: true at the thing that is")
	c.unless(d.Specification != nil || builds == 0, field+".specification", "missing", "it given: a thing is marked build")
	if d.Specification != nil {
		d.Specification.check(c, field+".specification")
	}
}

// thing returns the thing of a name, or nil.
func (d *Dish) thing(name string) *Thing {
	for i := range d.Things {
		if d.Things[i].Name == name {
			return &d.Things[i]
		}
	}
	return nil
}

func (d *Dish) advertised() string {
	if d.Advertised == "" {
		return "product"
	}
	return d.Advertised
}

func (t *Thing) check(c *checker, field string, d *Dish, b *Brief) {
	kinds := t.kinds()
	if len(kinds) > 1 {
		c.add(&honestplate.InputError{Field: field, Got: "both " + strings.Join(kinds, " and "), Want: "one kind at most; what else is in the frame is a thing of its own"})
	}
	c.unless(!t.Advertised || t.StandIn == "", field+".stand_in", fmt.Sprintf("given, and %q is advertised", t.Name), "none: what is advertised is shown as it is sold")
	c.unless(!t.Advertised || t.Grams > 0 || t.Count > 0 || t.Build, field+".grams", "missing", "grams or count: what is advertised declares its amount")
	c.unless(t.StandIn == "" || t.Why != "", field+".why", "missing", "it given: a stand-in needs its reason")
	c.unless(t.StandIn != "" || t.Why == "", field+".stand_in", "missing", "it given: there is a reason, but nothing that it is for")
	if t.Drink != nil {
		t.Drink.check(c, field+".iced_drink", t, d)
	}
	if t.Pour != nil {
		t.Pour.check(c, field+".pour", t)
	}
	if t.Drizzle != nil {
		t.Drizzle.Outlet.check(c, field+".drizzle.outlet")
		c.unless(!t.Advertised || t.Grams == 0 || t.Grams == t.Drizzle.DrizzleG, field+".drizzle.drizzled_grams", fmt.Sprint(t.Drizzle.DrizzleG), fmt.Sprintf("%g, as declared", t.Grams))
	}
	if t.Scoop != nil && t.Scoop.Freeze {
		c.unless(len(b.Freezers) > 0, field+".scoop.deep_freeze", "true, and there is no freezer", "a freezer under freezers, or none of it")
	}
	if p := t.Pieces; p != nil {
		c.unless(t.Grams > 0 || t.Advertised && t.Count == 0, field+".grams", "missing", "it given: what the pieces of one unit weigh together")
		c.unless(t.Count > 0, field+".count", "missing", "it given: the pieces of one unit")
		c.unless(p.ToleranceGrams <= t.Grams || t.Grams == 0, field+".pieces.tolerance_grams", fmt.Sprint(p.ToleranceGrams), fmt.Sprintf("at most the grams, %g", t.Grams))
		unique(c, field+".pieces.weighed", len(p.Weighed), func(i int) string { return p.Weighed[i].Name })
	}
	if t.Cheese != nil {
		c.unless(t.Grams > 0 || t.Advertised && t.Count == 0, field+".grams", "missing", "it given: the cheese of one unit")
		c.unless(2*t.Cheese.RimMM < t.Cheese.DiameterMM, field+".melted_cheese.rim_mm", fmt.Sprint(t.Cheese.RimMM), "less than half the diameter")
	}
}

// kinds lists the kinds that a thing has.
func (t *Thing) kinds() []string {
	var out []string
	for _, k := range []struct {
		name string
		has  bool
	}{
		{"bowl", t.Bowl != nil}, {"iced_drink", t.Drink != nil}, {"bottle", t.Bottle != nil}, {"scoop", t.Scoop != nil},
		{"soft_food", t.Soft != nil}, {"melted_cheese", t.Cheese != nil}, {"pour", t.Pour != nil}, {"drizzle", t.Drizzle != nil},
		{"pieces", t.Pieces != nil}, {"build", t.Build},
	} {
		if k.has {
			out = append(out, k.name)
		}
	}
	return out
}

func (d *Drink) check(c *checker, field string, t *Thing, in *Dish) {
	c.unless(!t.Advertised || t.Grams == 0 || t.Grams == d.FillGrams, field+".fill_grams", fmt.Sprint(d.FillGrams), fmt.Sprintf("%g, as declared", t.Grams))
	c.unless(d.Wanted != "ice" || d.Ice != nil, field+".ice", "missing", "it given: ice is what is wanted")
	if d.Ice != nil {
		ice := in.thing(d.Ice.Thing)
		switch {
		case ice == nil:
			c.add(&honestplate.InputError{Field: field + ".ice.thing", Got: fmt.Sprintf("%q", d.Ice.Thing), Want: "a thing of this dish: real ice is in the frame"})
		case ice.StandIn != "":
			c.add(&honestplate.InputError{Field: field + ".ice", Got: fmt.Sprintf("given, and %q has a stand-in", d.Ice.Thing), Want: "one of the two: real ice melts, acrylic does not"})
		default:
			c.unless(!ice.Advertised || ice.Grams == 0 || ice.Grams == d.Ice.Grams, field+".ice.grams", fmt.Sprint(d.Ice.Grams), fmt.Sprintf("%g, as declared", ice.Grams))
		}
	}
	c.unless(2*d.WallMM < d.DiameterMM, field+".wall_mm", fmt.Sprint(d.WallMM), "less than half the diameter")
}

func (p *Pour) check(c *checker, field string, t *Thing) {
	p.Outlet.check(c, field+".outlet")
	c.unless(p.WantedMPaS == 0 || p.PoursLike == nil, field+".wanted_mpa_s", "given beside pours_like", "one of the two")
	wish := p.WantedMPaS > 0 || p.PoursLike != nil
	if t.Advertised {
		c.unless(len(p.Liquids) == 1, field+".liquids", fmt.Sprintf("a list of %d", len(p.Liquids)), "one: what is advertised pours as it is")
		const only = ": only the temperature of what is advertised may be chosen"
		c.unless(!wish || p.LowestC.Given, field+".lowest_c", "missing", "it given"+only)
		c.unless(!wish || p.HighestC.Given, field+".highest_c", "missing", "it given"+only)
		c.unless(!p.LowestC.Given || !p.HighestC.Given || p.LowestC.Value < p.HighestC.Value, field+".lowest_c", fmt.Sprint(p.LowestC.Value), fmt.Sprintf("below highest_c, %g", p.HighestC.Value))
		c.unless(t.Grams == 0 || t.Grams == p.PouredG, field+".poured_grams", fmt.Sprint(p.PouredG), fmt.Sprintf("%g, as declared", t.Grams))
	} else {
		c.unless(len(p.Liquids) == 2 || !wish, field+".liquids", fmt.Sprintf("a list of %d", len(p.Liquids)), "two, a thin and a thick one, for a wanted thickness")
		c.unless(len(p.Liquids) == 1 || wish, field+".wanted_mpa_s", "missing", "it or pours_like given: two liquids are blended for a wanted thickness")
	}
	dry := p.Onto == "dry plate"
	c.unless(dry || p.DepthMM > 0, field+".depth_mm", "missing", "it given: a "+p.Onto+" has a depth")
	c.unless(!dry || p.DepthMM == 0, field+".depth_mm", fmt.Sprint(p.DepthMM), "none on a dry plate, or onto: film or pool")
	c.unless(p.BatchGrams == 0 || p.BatchGrams >= p.PouredG, field+".batch_grams", fmt.Sprint(p.BatchGrams), fmt.Sprintf("%g or more, what one take pours", p.PouredG))
}

func (o *Outlet) check(c *checker, field string) {
	c.one(o.HeadMM > 0, o.Seconds > 0, field, "head_mm", "pour_seconds")
}

// faults are what the fields of facts say together.
func (f *Facts) faults() []error {
	c := new(checker)
	c.unless(!f.Now.IsZero(), "now", "missing", "the time, with its offset")
	for i, s := range f.Seen {
		field := fmt.Sprintf("seen[%d]", i)
		c.one(s.Event != "", s.TempC.Given, field, "event", "temp_c")
		c.unless(!s.NotYet || s.Event != "", field+".not_yet", "true", "an event that has not come yet")
	}
	for i, t := range f.Takes {
		c.unless(!t.At.After(f.Now), fmt.Sprintf("takes[%d].at", i), t.At.String(), "not after now")
	}
	return c.errs
}

// find returns the dish and the thing that a fact names; an empty thing names the dish.
func (b *Brief) find(dish, thing, field string) (*Dish, *Thing, error) {
	for i := range b.Dishes {
		if d := &b.Dishes[i]; d.Name == dish {
			for j := range d.Things {
				if d.Things[j].Name == thing {
					return d, &d.Things[j], nil
				}
			}
			if thing == "" {
				return d, nil, nil
			}
			return nil, nil, &honestplate.InputError{Field: field + ".thing", Got: fmt.Sprintf("%q", thing), Want: "a thing of the dish " + dish}
		}
	}
	return nil, nil, &honestplate.InputError{Field: field + ".dish", Got: fmt.Sprintf("%q", dish), Want: "a dish of the brief"}
}
