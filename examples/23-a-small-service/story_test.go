package main

import (
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"strings"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/examples/shoot"
)

func TestPage(t *testing.T) { chapter.Check(t) }

// A studio has a tool of its own: a form for the bench, a screen by the monitor, a list
// on the wall. It is written by somebody who knows forms, not fog. What it needs from this
// library is a question in, an answer out, and, when something is wrong with the question,
// the name of the field to colour.
//
// The whole service of this chapter is service.go beside this page, some 150 lines on
// Go's own net/http and nothing else. It has three addresses. Each takes a JSON object by
// POST, calls one function of the library, and sends back what that returns. It keeps
// nothing between two questions: the types of the library are plain values, safe to use
// from many requests at once, and none of them opens a file or holds a lock. Start it with
//
//	go run . -listen localhost:8080
//
// and ask it from another window, or read on: every example below asks the same handler
// that the program serves, without a network in between.
//
// # When does this glass bead?
//
// Inputs and answers go over the wire as they are: the types of the library carry the
// names, with their units, so the service declares a struct of a glass, an air and some
// lamps and is done. What is left out has the default that the manual of the type states,
// or is refused. Times are seconds, and what never happens is null, not a large number
// that a script somewhere turns into a date. An answer is a window: the earliest, the
// likely and the latest moment. A screen that shows only the middle one hides what the
// crew most needs to know, which is how sure it is.
func Example_glass() {
	status, body := ask("/glass", `{
		"glass": {"diameter_m": 0.072, "height_m": 0.125, "wall_thickness_m": 0.0025, "drink_grams": 260, "drink_c": 4, "wall_c": 14},
		"air": {"temp_c": 23, "rh": 0.5, "speed_m_s": 0.1}}`)
	var windows map[string]honestplate.Window
	if err := json.Unmarshal([]byte(body), &windows); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(status)
	for _, event := range []string{"haze", "beads", "runs"} {
		w := windows[event]
		fmt.Printf("%-5s may happen %v, surely by then %v\n", event, w.MayHappen(), !w.Latest.Never)
	}
	// Output:
	// 200
	// haze  may happen true, surely by then true
	// beads may happen true, surely by then false
	// runs  may happen false, surely by then false
}

// A screen can do more with it than show one number. Ask for a row of rooms, and draw the
// windows as bars: then one sees what no single answer tells, that the damp room is not
// only sooner but surer.
//
// Figure: beads
//
// With the drink at 4 degC beads are a safe promise from about 70 % of humidity on; at 10
// degC in none of these rooms. Where a bar ends at never the glass may warm before enough
// water has come: who needs beads there asks for ice, or for another room.
//
// # What to weigh?
//
// A recipe holds two liquids, and a liquid may be milk, syrup, honey or a sauce measured
// this morning. On the wire each says its kind, and what that kind needs: a form shows a
// list of kinds and, for the one that is chosen, its fields. No knowledge of Go is needed
// for that. The answer comes in whole steps of the scale that was named, and its parts add
// up to the batch to the gram.
func Example_recipe() {
	status, body := ask("/recipe", `{"wanted_pa_s": 0.009, "recipe": {
		"thin": {"kind": "dairy", "fat_percent": 3.5}, "thick": {"kind": "dairy", "fat_percent": 30},
		"batch_grams": 900, "step_grams": 1, "temp_c": 7}}`)
	var batch struct {
		Thin  float64 `json:"thin_grams"`
		Thick float64 `json:"thick_grams"`
	}
	if err := json.Unmarshal([]byte(body), &batch); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(status, "together", batch.Thin+batch.Thick, "g")
	// Output:
	// 200 together 900 g
}

// # When the question is wrong
//
// Every error of the module is one of three types. An input that makes no sense: the fat is
// not a number, a name is misspelt, the humidity is missing. A sensible input outside what
// a model knows: it says the limits and whose they are, so that the form can show them
// beside the field. And a refusal where nothing is wrong with the input: the liquid is the
// advertised product, and that is shown as it is sold. One switch maps the three to a
// status, a field, limits and a sentence; the service adds nothing of its own, and what it
// cannot map it keeps to itself.
func Example_problems() {
	for _, q := range []struct{ path, body string }{
		{"/recipe", `{"wanted_pa_s": 0.009, "recipe": {"thin": {"kind": "dairy", "fat_percent": -1}, "thick": {"kind": "dairy", "fat_percent": 30}, "batch_grams": 900, "step_grams": 1, "temp_c": 7}}`},
		{"/recipe", `{"wanted_pa_s": 0.009, "recipe": {"thin": {"kind": "dairy", "fat_percent": 3.5}, "thick": {"kind": "dairy", "fat_percent": 30}, "batch_grams": 900, "step_grams": 1, "temp_c": 7, "advertised": true}}`},
		{"/glass", `{"glass": {"diameter_m": 0.072, "drink_grams": 260, "drink_c": 4}, "air": {"temp_c": 23}}`},
		{"/glass", `{"glas": {}}`},
	} {
		status, body := ask(q.path, q.body)
		var got struct {
			Problems []struct{ Field string }
		}
		if err := json.Unmarshal([]byte(body), &got); err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(status, got.Problems[0].Field)
	}
	// Output:
	// 422 Thin.FatPercent
	// 409 Advertised
	// 400 Air.RH
	// 400 body
}

// # Plan this brief
//
// The largest question is a whole day. A brief is a file that somebody wrote by hand, so it
// is read strictly: everything that is wrong with it comes back at once, by line and field,
// and a form can colour all of it instead of sending its user round once for every fault.
// The JSON Schema of a brief, which an editor understands, stands beside the package.
func Example_brief() {
	_, body := ask("/plan", "{\n\"title\": \"x\",\n\"klient\": \"y\",\n\"room\": {\"temp_c\": 99, \"rh_percent\": 50}\n}")
	var got struct {
		Problems []struct {
			Line  int
			Field string
		}
	}
	if err := json.Unmarshal([]byte(body), &got); err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range got.Problems {
		fmt.Println("line", p.Line, p.Field)
	}
	// Output:
	// line 1 client
	// line 1 about
	// line 1 days
	// line 1 dishes
	// line 3 klient
	// line 4 room.temp_c
}

// A brief without a fault comes back as the plan: pictures with their times, tasks for
// hands, what to buy, and for each window what decides it.
func Example_wholePlan() {
	file, err := os.ReadFile("../callsheet/days/coast.json")
	if err != nil {
		fmt.Println(err)
		return
	}
	status, body := ask("/plan", string(file))
	var plan shoot.Plan
	if err := json.Unmarshal([]byte(body), &plan); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(status, len(plan.Shots), "pictures, the first at", plan.Shots[0].At.Format("15:04"), "and the plan agrees with itself:", plan.Check() == nil)
	// Output:
	// 200 4 pictures, the first at 09:15 and the plan agrees with itself: true
}

// # What could go wrong
//
// A band takes some hundreds of runs on all cores: the service answers one question a
// core at a time, and limits how long a question may be. It has no users, no keys and no
// encryption: put it behind something that has. A time that it gives is an estimate; the
// page that shows it says so, and who stands by hot lamps and wet floors follows local
// codes.
//
// # Sources
//
// No published value stands in this chapter; the answers' sources are in the chapters on
// the cold glass and the creamier pour.
func Example_sources() {}

func TestNothingButPostIsAnsweredAndHugeBodiesAreRefused(t *testing.T) {
	w := httptest.NewRecorder()
	service().ServeHTTP(w, httptest.NewRequest(http.MethodGet, "/plan", nil))
	if w.Code != http.StatusMethodNotAllowed {
		t.Errorf("GET gives %d", w.Code)
	}
	if status, _ := ask("/glass", strings.Repeat(" ", mostBytes+1)); status == http.StatusOK {
		t.Error("a huge body is taken")
	}
}

// Of a brief that reads well every dish that cannot be planned is told.
func TestEveryDishThatCannotBePlannedIsAProblem(t *testing.T) {
	dish := func(name string) string {
		return `{"name": "` + name + `", "slot_minutes": 30, "wanted_takes": 1, "success_rate": 0.5, "things": [{"name": "tea", "advertised": true, "grams": 900,
			"iced_drink": {"diameter_mm": 60, "height_mm": 90, "wall_mm": 2, "fill_grams": 900, "drink_c": 5, "wanted": "haze"}}]}`
	}
	status, body := ask("/plan", `{"title": "t", "client": "c", "about": "a", "days": [{"date": "2026-10-14", "call": "08:00", "first_shot": "10:00", "wrap": "17:00"}],
		"room": {"temp_c": 20, "rh_percent": 50}, "dishes": [`+dish("one")+", "+dish("two")+"]}")
	var got struct{ Problems []problem }
	if err := json.Unmarshal([]byte(body), &got); err != nil {
		t.Fatal(err)
	}
	if len(got.Problems) != 2 || got.Problems[0].Field != "dishes[0].things[0].iced_drink.height_mm" || got.Problems[1].Field != "dishes[1].things[0].iced_drink.height_mm" || status < 400 {
		t.Errorf("%d %s", status, body)
	}
}
