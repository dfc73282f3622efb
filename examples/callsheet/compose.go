package main

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"example.org/honestplate"
)

// Sheet sets the plan in the order a crew reads it: the day, what must start
// before, the dishes, what to buy, what to mind, what to sign.
func (p *Plan) Sheet() *Sheet {
	b := p.Brief
	end := p.First
	for i := range p.Shots {
		end = p.Shots[i].At.Add(p.Shots[i].slot())
	}
	var light []string
	for i, l := range b.Lamps {
		light = append(light, fmt.Sprintf("%s (%s) %.0f W/m2", l.Name, l.Source, p.Light[i]))
	}
	s := &Sheet{
		Title: "Call sheet: " + b.Title,
		Lead: []string{
			fmt.Sprintf("%s. %s: call %s, first shot %s, the last slot ends %s.", b.Client, p.Call.Format("Mon 2 Jan 2006"),
				p.Call.Format("15:04"), p.First.Format("15:04"), end.Format("15:04")),
			b.About,
			fmt.Sprintf("Room %.0f degC at %.0f %% humidity: what is colder than the dew point, %.1f degC, fogs. On the food: %s.",
				b.Room.TempC, b.Room.RHPercent, p.DewPointC, strings.Join(light, ", ")),
			"Times are likely (earliest to latest), a 95 % band; estimates, not guarantees. Predict, test, then trust the test.",
		},
	}
	s.Sections = append(s.Sections, p.daySection())
	if sec := p.prepSection(); sec != nil {
		s.Sections = append(s.Sections, *sec)
	}
	for i := range p.Shots {
		s.Sections = append(s.Sections, p.Shots[i].section(i))
	}
	s.Sections = append(s.Sections, p.buySection(), p.cautionSection(), p.recordSection())
	for i := range p.Shots {
		shot := &p.Shots[i]
		s.Sections = append(s.Sections, Section{
			Title: fmt.Sprintf("For the bench: %d %s", i+1, shot.Dish.Name), Figure: shot.layoutName(i), Bench: true,
		})
	}
	return s
}

func (p *Plan) daySection() Section {
	sec := Section{
		Title:  "The day",
		Note:   "What holds longest comes first, to settle the light; what goes fastest comes last. The last column names what most of the uncertainty comes from.",
		Table:  &TableBlock{Head: []string{"shot", "dish", "one unit holds", "swap every", "heroes", "decided by"}},
		Figure: "timeline.svg",
	}
	for i := range p.Shots {
		s := &p.Shots[i]
		holds, swap := cmp.Or(s.Moment, "as long as it is fresh"), "-"
		if s.Holds.MayHappen() {
			holds = s.Holds.String()
		}
		if s.Swap > 0 {
			swap = honestplate.After(s.Swap).String()
		}
		sec.Table.Rows = append(sec.Table.Rows, []string{s.At.Format("15:04"), s.Dish.Name, holds, swap, fmt.Sprint(s.Units), cmp.Or(s.Decides, "-")})
	}
	return sec
}

// prepSection lists what starts before the shots, by the clock.
func (p *Plan) prepSection() *Section {
	type step struct {
		at   time.Time
		what string
	}
	var steps []step
	for i := range p.Shots {
		for _, prep := range p.Shots[i].Prep {
			at := p.Shots[i].At.Add(-prep.Before).Truncate(5 * time.Minute)
			steps = append(steps, step{at, prep.What})
		}
	}
	if len(steps) == 0 {
		return nil
	}
	slices.SortStableFunc(steps, func(a, b step) int { return a.at.Compare(b.at) })
	sec := &Section{Title: "Start before the shots", Note: "Counted back from each shot; the longer end of each band."}
	for _, st := range steps {
		label := st.at.Format("15:04")
		if st.at.YearDay() != p.Call.YearDay() || st.at.Year() != p.Call.Year() {
			label = st.at.Format("Mon 15:04")
		}
		if st.at.Before(p.Call) && st.at.YearDay() == p.Call.YearDay() {
			label += "*"
		}
		sec.add(label, st.what)
	}
	if slices.ContainsFunc(sec.Lines, func(l Line) bool { return strings.HasSuffix(l.Label, "*") }) {
		sec.add("", "* before the crew's call: whoever opens the studio")
	}
	return sec
}

func (s *Shot) section(i int) Section {
	sec := Section{
		Title: fmt.Sprintf("%d  %s  %s-%s", i+1, s.Dish.Name, s.At.Format("15:04"), s.At.Add(s.slot()).Format("15:04")),
	}
	var real, free []string
	for j := range s.Dish.Frame {
		it := &s.Dish.Frame[j]
		switch {
		case it.Advertised:
			real = append(real, it.Item+" "+it.amount())
		case it.StandIn == "":
			free = append(free, it.Item)
		}
	}
	sec.add("Real", strings.Join(real, ", ")+": advertised, so the product itself in its declared amount")
	for j := range s.Dish.Frame {
		if it := &s.Dish.Frame[j]; it.StandIn != "" {
			sec.add("Stand-in", fmt.Sprintf("%s may be %s: %s", it.Item, it.StandIn, it.Why))
		}
	}
	if len(free) > 0 {
		sec.add("Free", strings.Join(free, ", ")+": not sold, no claim")
	}
	sec.Lines = append(sec.Lines, s.Lines...)
	heroes := fmt.Sprintf("prepare %d for %s at %.0f %% confidence, if %.0f %% of them work", s.Units, takes(s.Dish.Wanted),
		100*s.confidence, 100*s.Dish.SuccessRate)
	sec.add("Heroes", heroes)
	if s.Swap > 0 {
		sec.add("Swap", fmt.Sprintf("a fresh one every %s at the latest: then %s", honestplate.After(s.Swap), s.HoldsTill))
		if need := time.Duration(s.Units) * s.Swap; need < 5*time.Minute {
			sec.add("", fmt.Sprintf("all %d together last %s on set: light with a stand-in, camera ready before each comes out", s.Units, honestplate.After(need)))
		}
	}
	return sec
}

func (it *Item) amount() string {
	var parts []string
	if it.Count > 0 {
		parts = append(parts, fmt.Sprintf("x %d", it.Count))
	}
	if it.Grams > 0 {
		parts = append(parts, fmt.Sprintf("%.*f g", stepDecimals(it.StepGrams), it.Grams))
	}
	return strings.Join(parts, ", ")
}

// buySection adds up the shopping list over the dishes.
func (p *Plan) buySection() Section {
	var total []Buy
	for i := range p.Shots {
		for _, b := range p.Shots[i].Buys {
			if j := slices.IndexFunc(total, func(t Buy) bool { return t.Item == b.Item }); j >= 0 {
				total[j].Grams += b.Grams
				total[j].Count += b.Count
			} else {
				total = append(total, b)
			}
		}
	}
	slices.SortFunc(total, func(a, b Buy) int { return cmp.Compare(a.Item, b.Item) })
	sec := Section{Title: "To buy", Note: "For all hero units and batches; add what is spilt and tasted.", Table: &TableBlock{Head: []string{"what", "pieces", "grams"}}}
	for _, b := range total {
		count, grams := "", ""
		if b.Count > 0 {
			count = fmt.Sprint(b.Count)
		}
		if b.Grams > 0 {
			grams = fmt.Sprintf("%.0f", b.Grams)
		}
		sec.Table.Rows = append(sec.Table.Rows, []string{b.Item, count, grams})
	}
	return sec
}

func (p *Plan) cautionSection() Section {
	cautions := []string{}
	for i, l := range p.Brief.Lamps {
		if l.Source == "tungsten" || l.Source == "discharge" || l.ModellingW > 0 {
			cautions = append(cautions, fmt.Sprintf("%s: hot lamp, %.0f W/m2 on the food; keep cloth, paper and hands away and let it cool before moving it", l.Name, p.Light[i]))
		}
	}
	for i := range p.Shots {
		cautions = append(cautions, p.Shots[i].Cautions...)
	}
	cautions = append(cautions,
		"food that stood under lights or out of the cold is not eaten; keep it apart and say so",
		"allergens: label every jug and tray (milk, nuts, gluten and the rest), also of what is only shown",
		"what may be shown is for the law of advertising and of weights and measures where the picture runs: ask before, not after",
		"local codes and licensed practice come before this sheet")
	sec := Section{Title: "Mind"}
	seen := map[string]bool{}
	for _, c := range cautions {
		if !seen[c] {
			seen[c] = true
			sec.add("-", c)
		}
	}
	return sec
}

// recordSection is the form to fill in: declared, planned, weighed, signed.
func (p *Plan) recordSection() Section {
	sec := Section{
		Title: "Record to fill in",
		Note:  "Weigh each hero as it goes on the set. Signed for the picture: ______________  for the client: ______________",
		Table: &TableBlock{Head: []string{"dish", "item", "declared", "weighed", "planned or stand-in"}},
	}
	for i := range p.Shots {
		s := &p.Shots[i]
		for j := range s.Dish.Frame {
			it := &s.Dish.Frame[j]
			declared, planned := it.amount(), s.Planned[it.Item]
			switch {
			case it.StandIn != "" && planned != "":
				planned = "stand-in: " + planned
			case it.StandIn != "":
				planned = "stand-in: " + it.StandIn
			case !it.Advertised:
				continue
			case planned == "":
				planned = "as declared"
			}
			if declared == "" {
				declared = "-"
			}
			sec.Table.Rows = append(sec.Table.Rows, []string{fmt.Sprint(i + 1), it.Item, declared, "_______", planned})
		}
	}
	return sec
}

// layoutName is the file of a shot's layout.
func (s *Shot) layoutName(i int) string {
	name := strings.Map(func(r rune) rune {
		switch {
		case 'a' <= r && r <= 'z' || '0' <= r && r <= '9':
			return r
		case 'A' <= r && r <= 'Z':
			return r + 'a' - 'A'
		}
		return '-'
	}, s.Dish.Name)
	if len(name) > 60 { // a file's name has a limit
		name = name[:60]
	}
	return fmt.Sprintf("layout-%d-%s.svg", i+1, strings.Trim(name, "-"))
}
