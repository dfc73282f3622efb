package main

import (
	"encoding/json"
	"os"
	"strings"
	"testing"
	"time"
	_ "time/tzdata"

	"example.org/honestplate/examples/shoot"
)

// nightOf is the coast's day turned into other dates of a zone with summer time.
func nightOf(t *testing.T, slot float64, days ...map[string]any) *shoot.Plan {
	t.Helper()
	data, err := os.ReadFile("days/coast.json")
	if err != nil {
		t.Fatal(err)
	}
	var brief map[string]any
	if err := json.Unmarshal(data, &brief); err != nil {
		t.Fatal(err)
	}
	brief["days"], brief["place"] = days, map[string]any{"time_zone": "Europe/Vienna"}
	for _, d := range brief["dishes"].([]any) {
		d.(map[string]any)["slot_minutes"] = slot
	}
	text, err := json.Marshal(brief)
	if err != nil {
		t.Fatal(err)
	}
	file := t.TempDir() + "/brief.json"
	if err := os.WriteFile(file, text, 0o600); err != nil {
		t.Fatal(err)
	}
	p, err := planOf("autumn", file, "")
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// The hour that comes twice says which one it is.
func TestTheHourThatComesTwice(t *testing.T) {
	zone, err := time.LoadLocation("Europe/Vienna")
	if err != nil {
		t.Fatal(err)
	}
	for at, want := range map[string]string{
		"2026-10-24T23:59:59Z": "01:59", "2026-10-25T00:00:00Z": "02:00 CEST", "2026-10-25T00:59:00Z": "02:59 CEST",
		"2026-10-25T01:00:00Z": "02:00 CET", "2026-10-25T01:59:00Z": "02:59 CET", "2026-10-25T02:00:00Z": "03:00",
		"2026-03-29T00:59:00Z": "01:59", "2026-03-29T01:00:00Z": "03:00", "2026-07-01T00:00:00Z": "02:00",
	} {
		when, err := time.Parse(time.RFC3339, at)
		if err != nil {
			t.Fatal(err)
		}
		if got := wall(when.In(zone)); got != want {
			t.Errorf("%s: %s, want %s", at, got, want)
		}
	}
	if got := wall(time.Date(2026, 10, 25, 2, 30, 0, 0, time.UTC)); got != "02:30" {
		t.Errorf("where clocks do not change: %s", got)
	}
}

// A night over a change of clocks is marked where somebody looks: at the top, in the
// chart, between the tasks before and after it; and that it ends on the next date too.
func TestANightOverAChangeOfClocks(t *testing.T) {
	autumn := nightOf(t, 60, map[string]any{"date": "2026-10-24", "call": "21:00", "first_shot": "23:30", "wrap": "05:00"})
	spring := nightOf(t, 90, map[string]any{"date": "2026-03-28", "call": "21:00", "first_shot": "23:30", "wrap": "07:30"}, map[string]any{"date": "2026-03-29", "call": "20:00", "first_shot": "22:00", "wrap": "02:00"})
	for p, want := range map[*shoot.Plan][]string{
		autumn: {"Sun 25 Oct: the clocks go back 1 h, to 02:00", "wrap\n05:00 on Sun 25 Oct", "Sat 24 Oct ends after midnight", " CEST"},
		spring: {"Sun 29 Mar: the clocks go forward 1 h, to 03:00", "wrap 07:30 on Sun 29 Mar", "Sun 29 Mar 2026: call 20:00, nothing is shot", "wrap 02:00 on Mon 30 Mar"},
	} {
		text := strings.ReplaceAll(textOf(t, p), "Sun\n25 Oct", "Sun 25 Oct")
		for _, w := range want {
			if !strings.Contains(strings.ReplaceAll(text, "\n", " "), strings.ReplaceAll(w, "\n", " ")) {
				t.Errorf("%q is not said in\n%s", w, text[:1800])
			}
		}
		if n := strings.Count(text, "the clocks go"); n != 1 {
			t.Errorf("the change is told %d times", n)
		}
		if chart := string(dayChart(p, 0)); !strings.Contains(chart, clocksChange(&p.Days[0])) || !strings.Contains(chart, p.Days[0].Wrap.Format("Mon 2 Jan")) {
			t.Errorf("the chart says neither the change nor midnight: %s", chart)
		}
	}
	// A change between two tasks stands between them.
	p := *autumn
	p.Tasks = []shoot.Task{
		{What: shoot.OwnStep, Text: "first", Start: p.Days[0].ShiftAt.Add(-time.Hour), End: p.Days[0].ShiftAt.Add(-time.Minute), Hand: 1},
		{What: shoot.OwnStep, Text: "second", Start: p.Days[0].ShiftAt, End: p.Days[0].ShiftAt.Add(time.Hour), Hand: 1},
	}
	var got []string
	for _, r := range before(&p).Rows {
		got = append(got, strings.TrimSpace(r[0]+" "+r[3]))
	}
	if want := "Sun 25 Oct|02:00 CEST first|Sun 25 Oct: clocks go back 1 h, to 02:00|02:00 CET second"; strings.Join(got, "|") != want {
		t.Errorf("the rows are %q, want %q", got, want)
	}
}
