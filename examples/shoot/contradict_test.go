package shoot

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A setting puts JSON at a path of a tree; an empty one takes what is there away.
type setting struct{ path, json string }

// contradictions are briefs whose fields are each in order and do not go together.
func contradictions(t *testing.T) []broken {
	const (
		oats, cakes, glass, ball, bread, plums = "dishes[0]", "dishes[1]", "dishes[2]", "dishes[3]", "dishes[4]", "dishes[5]"
		milk                                   = oats + ".things[1]"
		maple                                  = cakes + ".things[1]"
	)
	cases := []struct {
		day, what string
		set       []setting
	}{
		{"autumn", "the wrap before the first shot", []setting{{"days[0].wrap", `"09:30"`}}},
		{"autumn", "lunch after the wrap", []setting{{"days[0].lunch", `"18:30"`}}},
		{"autumn", "minutes of a lunch that is not", []setting{{"days[0].lunch", ""}}},
		{"autumn", "the same day twice", []setting{{"days", `[{"date":"2026-10-14","call":"08:00","first_shot":"10:00","wrap":"17:30"},{"date":"2026-10-14","call":"08:00","first_shot":"10:00","wrap":"17:30"}]`}}},
		{"autumn", "a day of the dinosaurs", []setting{{"days[0].date", `"0001-01-01"`}}},
		{"autumn", "the thirtieth of February", []setting{{"days[0].date", `"2026-02-30"`}}},
		{"autumn", "a zone of no atlas", []setting{{"place.time_zone", `"Europe/Atlantis"`}}},
		{"autumn", "the zone of this machine", []setting{{"place.time_zone", `"Local"`}}},
		{"autumn", "tungsten without watts", []setting{{"lamps[0].watts", ""}}},
		{"autumn", "a flash in watts", []setting{{"lamps[0].source", `"flash"`}}},
		{"autumn", "tungsten with pops", []setting{{"lamps[0].joules_per_pop", "400"}}},
		{"autumn", "a lamp nowhere", []setting{{"lamps[0].distance_m", ""}}},
		{"autumn", "a freezer that is warm", []setting{{"freezers[0].temp_c", "4"}}},
		{"autumn", "a fridge that freezes", []setting{{"fridges[0].temp_c", "-18"}}},
		{"autumn", "two stores of one name", []setting{{"fridges[0].name", `"deep freezer"`}}},
		{"autumn", "two dishes of one name", []setting{{plums + ".name", `"Spiced oat bowl"`}}},
		{"autumn", "a day that is not", []setting{{oats + ".day", "2"}}},
		{"autumn", "no success rate at all", []setting{{oats + ".success_rate", ""}}},
		{"autumn", "two success rates", []setting{{oats + ".earlier", `{"good":3,"takes":9}`}}},
		{"autumn", "more good takes than takes", []setting{{oats + ".success_rate", ""}, {oats + ".earlier", `{"good":13,"takes":9}`}}},
		{"autumn", "nothing advertised", []setting{{ball + ".things", `[{"name":"plate"}]`}}},
		{"autumn", "advertised none, and a product", []setting{{ball + ".advertised", `"none"`}}},
		{"autumn", "a product with a stand-in", []setting{{ball + ".things[0].stand_in", `"shortening"`}, {ball + ".things[0].why", `"it melts"`}}},
		{"autumn", "a stand-in without a reason", []setting{{milk + ".why", ""}}},
		{"autumn", "a reason without a stand-in", []setting{{milk + ".stand_in", ""}}},
		{"autumn", "a product without an amount", []setting{{ball + ".things[0].grams", ""}}},
		{"autumn", "grams off the scale's step", []setting{{ball + ".things[0].grams", "62.05"}}},
		{"autumn", "two kinds of one thing", []setting{{ball + ".things[0].soft_food", `{"food":"butter","thickness_mm":6,"across_mm":38,"start_c":5}`}}},
		{"autumn", "more drink than declared", []setting{{glass + ".things[0].iced_drink.fill_grams", "270"}}},
		{"autumn", "ice wanted and none in it", []setting{{glass + ".things[0].iced_drink.wanted", `"ice"`}, {glass + ".things[0].iced_drink.ice", ""}}},
		{"autumn", "ice that is not in the frame", []setting{{glass + ".things[0].iced_drink.ice.thing", `"cubes"`}}},
		{"autumn", "real ice and a stand-in for it", []setting{{glass + ".things[1]", `{"name":"ice","stand_in":"acrylic","why":"it stays"}`}}},
		{"autumn", "other ice than declared", []setting{{glass + ".things[0].iced_drink.ice.grams", "90"}}},
		{"autumn", "a wall as thick as the glass", []setting{{glass + ".things[0].iced_drink.wall_mm", "9"}, {glass + ".things[0].iced_drink.diameter_mm", "18"}}},
		{"autumn", "a glass too small for its drink", []setting{{glass + ".things[0].iced_drink.height_mm", "40"}}},
		{"autumn", "a drink below freezing", []setting{{glass + ".things[0].iced_drink.drink_c", "-9"}}},
		{"autumn", "a glass hotter than the room", []setting{{glass + ".things[0].iced_drink.glass_c", "60"}}},
		{"autumn", "hardened without a freezer", []setting{{"freezers", ""}}},
		{"autumn", "a rim without a middle", []setting{{bread + ".things[1].melted_cheese.rim_mm", "150"}}},
		{"autumn", "cheese without grams", []setting{{bread + ".things[1].grams", ""}, {bread + ".things[1].count", "1"}}},
		{"autumn", "cheese baked above boiling", []setting{{bread + ".things[1].melted_cheese.baked_c", "108"}, {"place.altitude_m", "2500"}}},
		{"autumn", "pieces without a count", []setting{{plums + ".things[0].count", ""}}},
		{"autumn", "two pieces of one name", []setting{{plums + ".things[0].pieces.weighed", `[{"name":"A","grams":18,"looks":50},{"name":"A","grams":18,"looks":50}]`}}},
		{"autumn", "a tolerance above the amount", []setting{{plums + ".things[0].pieces.tolerance_grams", "900"}}},
		{"autumn", "an advertised blend", []setting{{maple + ".pour.liquids", `[{"name":"a","is":{"kind":"water"}},{"name":"b","is":{"kind":"honey"}}]`}}},
		{"autumn", "a wish without a range of temperature", []setting{{maple + ".pour.lowest_c", ""}}},
		{"autumn", "a range of temperature upside down", []setting{{maple + ".pour.lowest_c", "60"}}},
		{"autumn", "a wish that no temperature gives", []setting{{maple + ".pour.wanted_mpa_s", "90000"}}},
		{"autumn", "other syrup than declared", []setting{{maple + ".pour.poured_grams", "50"}}},
		{"autumn", "a wish for one liquid", []setting{{milk + ".pour.liquids", `[{"name":"milk","is":{"kind":"dairy","fat_percent":3.5}}]`}}},
		{"autumn", "two liquids and no wish", []setting{{milk + ".pour.wanted_mpa_s", ""}}},
		{"autumn", "two wishes", []setting{{milk + ".pour.pours_like", `{"name":"cream","is":{"kind":"dairy","fat_percent":18}}`}}},
		{"autumn", "a wish thicker than the thick one", []setting{{milk + ".pour.wanted_mpa_s", "900"}}},
		{"autumn", "a wish thinner than the thin one", []setting{{milk + ".pour.wanted_mpa_s", "0.5"}}},
		{"autumn", "a film without a depth", []setting{{milk + ".pour.depth_mm", ""}}},
		{"autumn", "a dry plate with a depth", []setting{{milk + ".pour.onto", `"dry plate"`}}},
		{"autumn", "a batch below one take", []setting{{milk + ".pour.batch_grams", "50"}}},
		{"autumn", "an outlet without head and time", []setting{{milk + ".pour.outlet.head_mm", ""}}},
		{"autumn", "an outlet with head and time", []setting{{milk + ".pour.outlet.pour_seconds", "4"}}},
		{"autumn", "a pour that lasts an hour", []setting{{milk + ".pour.outlet.head_mm", ""}, {milk + ".pour.outlet.pour_seconds", "3600"}}},
		{"autumn", "a liquid of no kind", []setting{{milk + ".pour.liquids[0].is", `{}`}}},
		{"autumn", "a liquid of an unknown kind", []setting{{milk + ".pour.liquids[0].is", `{"kind":"ketchup"}`}}},
		{"autumn", "a liquid with an unknown field", []setting{{milk + ".pour.liquids[0].is", `{"kind":"dairy","fat":3.5}`}}},
		{"autumn", "milk of 90 per cent fat", []setting{{milk + ".pour.liquids[0].is", `{"kind":"dairy","fat_percent":90}`}}},
		{"autumn", "a liquid that is a text", []setting{{milk + ".pour.liquids[0].is", `"milk"`}}},
		{"autumn", "boiling milk", []setting{{milk + ".pour.temp_c", "95"}}},
		{"autumn", "a specification and no build", []setting{{oats + ".specification", `{"product":"p","version":"1","components":[{"name":"a","grams":9}]}`}}},
		{"autumn", "a wish for 1,292 heroes", []setting{{oats + ".wanted_takes", "1292"}}},
		{"autumn", "many faults at once", []setting{{"lamps[0].watts", ""}, {"freezers[0].temp_c", "4"}, {oats + ".day", "9"}, {milk + ".why", ""}, {plums + ".things[0].count", ""}}},
		{"coast", "a flash without its pops", []setting{{"lamps[0].pops_per_minute", ""}}},
		{"coast", "honey in fractions of water", []setting{{"dishes[2].things[1].drizzle.liquid.is", `{"kind":"honey","moisture_percent":80}`}}},
		{"coast", "other honey than declared", []setting{{"dishes[2].things[1].drizzle.drizzled_grams", "25"}}},
		{"coast", "a blend like honey", []setting{{"dishes[3].things[2].pour.pours_like.is", `{"kind":"honey"}`}}},
		{"motion", "a build without a specification", []setting{{"dishes[2].specification", ""}}},
		{"motion", "two components of one name", []setting{{"dishes[2].specification.components[1].name", `"patty"`}}},
		{"motion", "a component of nothing", []setting{{"dishes[2].specification.components[1].grams", ""}}},
		{"motion", "a tolerance below nothing", []setting{{"dishes[2].specification.components[1].minus_grams", "13"}}},
		{"motion", "cooked without a yield", []setting{{"dishes[2].specification.components[3].yield_percent", ""}}},
		{"motion", "a component off the scale's step", []setting{{"dishes[2].specification.components[1].grams", "12.34"}}},
		{"motion", "a bowl above boiling", []setting{{"dishes[3].things[0].bowl.start_c", "98"}, {"place", `{"altitude_m":3000}`}}},
		{"motion", "an amount above the bench scale", []setting{{"scale.max_grams", "100"}}},
	}
	var out []broken
	for _, c := range cases {
		text, err := os.ReadFile(filepath.Join("..", "callsheet", "days", c.day+".json"))
		if err != nil {
			t.Fatal(err)
		}
		tree := decoded(t, text)
		for _, s := range c.set {
			tree = put(t, tree, s)
		}
		out = append(out, broken{name: c.day + ": " + c.what, text: encoded(t, tree)})
	}
	return out
}

// put puts a setting into a tree.
func put(t *testing.T, tree any, s setting) any {
	parent, name := tree.(map[string]any), s.path
	if i := strings.LastIndex(s.path, "."); i >= 0 {
		name = s.path[i+1:]
		found := false
		walk(place{value: tree}, func(p place) {
			if m, ok := p.value.(map[string]any); ok && p.path == s.path[:i] {
				parent, found = m, true
			}
		})
		if !found {
			t.Fatalf("no %s", s.path[:i])
		}
	}
	if s.json == "" {
		delete(parent, name)
		return tree
	}
	value := decoded(t, []byte(s.json))
	var i int
	if list, _, ok := strings.Cut(name, "["); ok {
		if _, err := fmt.Sscanf(name[len(list):], "[%d]", &i); err != nil {
			t.Fatal(err)
		}
		parent[list].([]any)[i] = value
		return tree
	}
	parent[name] = value
	return tree
}
