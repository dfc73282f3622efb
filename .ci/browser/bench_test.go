package browser

import (
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"example.org/honestplate/examples/shoot"
)

const log = `document.querySelector("#log").textContent`

// A cup time is typed by thumb, answered, kept over a reload, undone and handed over; the
// plan of the rest of the day corrects the batch from it.
func TestACupTimeIsKeptAndCorrectsTheBatch(t *testing.T) {
	ctx, downloads := open(t, page(t, "autumn"))
	if hidden := ask[bool](t, ctx, `document.querySelector("#timing").hidden`); !hidden {
		t.Error("a dish without a pour asks for a cup time")
	}
	choose(t, ctx, 1)
	if n := ask[int](t, ctx, `document.querySelectorAll("#cups input").length`); n != 2 {
		t.Fatalf("%d fields for a cup time, want seconds and temperature", n)
	}
	if small := ask[int](t, ctx, `[...document.querySelectorAll("#cups button, #cups input")].filter(e => e.offsetHeight < 44 || !(e.textContent || e.labels.length)).length`); small > 0 {
		t.Errorf("%d controls are too small for a thumb, or have no name", small)
	}
	keep := func(seconds string) {
		t.Helper()
		run(t, ctx, chromedp.Evaluate(`document.querySelector("#cup0").value = ""`, nil), focus("#cup0"), chromedp.KeyEvent(seconds), focus(`#cups button[data-key^="keep"]`), chromedp.KeyEvent(kb.Enter))
	}
	for wrong, want := range map[string]string{"": "type the seconds", "2": "too thin", "900": "too thick", "x": "type the seconds"} {
		keep(wrong)
		if said := ask[string](t, ctx, `document.querySelector("#said").textContent`); !strings.Contains(said, want) {
			t.Errorf("%q s is answered with %q, want %q", wrong, said, want)
		}
	}
	if n := ask[int](t, ctx, `document.querySelectorAll("#log li").length`); n != 0 {
		t.Fatalf("%d entries of times that cannot be", n)
	}
	keep("32,5")
	if got := ask[string](t, ctx, log); !strings.Contains(got, "cup of poured milk 32.5 s at 7 °C: right: leave it") {
		t.Errorf("the target's own time: %q", got)
	}
	keep("36")
	run(t, ctx, chromedp.Sleep(200*time.Millisecond), chromedp.Reload(), chromedp.WaitVisible("#cups", chromedp.ByQuery))
	if got := ask[string](t, ctx, log); !strings.Contains(got, "36 s") || !strings.Contains(got, "32.5 s") {
		t.Errorf("after a reload: %q", got)
	}
	run(t, ctx, chromedp.Click("#undo", chromedp.ByQuery))
	if got := ask[string](t, ctx, log); strings.Contains(got, "36 s") || !strings.Contains(got, "32.5 s") {
		t.Errorf("undo: %q", got)
	}
	keep("36")
	facts, _ := handOver(t, ctx, downloads)
	if len(facts.Cups) != 2 || facts.Cups[0].Seconds[0] != 32.5 || facts.Cups[1].Seconds[0] != 36 || facts.Cups[1].TempC != 7 || facts.Cups[1].Dish != "Spiced oat bowl" {
		t.Fatalf("%+v", facts.Cups)
	}
	if got := pourOf(t, planWith(t, "autumn", facts), "Spiced oat bowl").Corrected; got == nil || got.Leave || got.Add != "whole milk" || got.Seconds != 36 {
		t.Errorf("a batch that runs for 36 s: %+v", got)
	}
}

func pourOf(t *testing.T, p *shoot.Plan, dish string) *shoot.PourPlan {
	t.Helper()
	for i := range p.Shots {
		for k := range p.Shots[i].Things {
			if q := p.Shots[i].Things[k].Pour; q != nil && p.Shots[i].Dish == dish {
				return q
			}
		}
	}
	t.Fatalf("no pour in %q", dish)
	return nil
}

// The page is the stop-watch, also when it is loaded anew while the cup runs.
func TestThePageTimesTheCup(t *testing.T) {
	ctx, _ := open(t, page(t, "autumn"))
	choose(t, ctx, 1)
	const watch = `#cups button[data-key^="watch"]`
	run(t, ctx, focus(watch), chromedp.KeyEvent(kb.Enter), chromedp.Sleep(1200*time.Millisecond), chromedp.Reload(), chromedp.WaitVisible(watch, chromedp.ByQuery))
	if got := ask[string](t, ctx, `document.querySelector('`+watch+`').textContent`); !strings.HasPrefix(got, "Stop") {
		t.Fatalf("after a reload the button says %q", got)
	}
	run(t, ctx, focus(watch), chromedp.KeyEvent(kb.Enter))
	if s := ask[float64](t, ctx, `Number(document.querySelector("#cup0").value)`); s < 1.2 || s > 60 {
		t.Errorf("%g s were counted in a second or two", s)
	}
}

// A note needs no take: it is in the facts and in the record, and on the page that is
// planned from them.
func TestANoteWithoutATakeIsHandedOver(t *testing.T) {
	ctx, downloads := open(t, page(t, "coast"))
	const text = `the honey is "too warm"; خفّف الضوء <b>lower</b>`
	run(t, ctx, chromedp.SetValue("#note", "\u202e"+text+"\u2028", chromedp.ByQuery), chromedp.Click("#keep", chromedp.ByQuery),
		chromedp.Click("#out", chromedp.ByQuery), chromedp.SendKeys("#note", "from the left", chromedp.ByQuery), chromedp.Click("#keep", chromedp.ByQuery))
	facts, kept := handOver(t, ctx, downloads)
	if len(facts.Takes) != 0 || len(facts.Notes) != 2 || facts.Notes[0].Text != text || facts.Notes[0].Unit != 0 || facts.Notes[1].Unit != 1 || facts.Notes[1].At.IsZero() {
		t.Fatalf("%+v", facts.Notes)
	}
	if how := kept.Items[0].How; how != text+"; unit 1: from the left" || len(kept.Takes) != 0 {
		t.Errorf("the record says %q", how)
	}
	p := planWith(t, "coast", facts)
	if got := p.Shots[0].Said; len(got) != 2 || got[0].Text != text {
		t.Errorf("the plan of the rest of the day has %+v", got)
	}
}

// Where units overlap each has its countdown; whoever taps one looks at it, and takes and
// weights are of that one.
func TestUnitsThatOverlapEachHaveTheirCountdown(t *testing.T) {
	ctx, downloads := open(t, page(t, "coast"))
	choose(t, ctx, 2)
	for range 3 {
		run(t, ctx, chromedp.Click("#out", chromedp.ByQuery), chromedp.Sleep(300*time.Millisecond))
	}
	const others = `[...document.querySelectorAll("#others button")].map(b => b.textContent).join("|")`
	if got := ask[string](t, ctx, others); !strings.HasPrefix(got, "Unit 1: Wait ") || !strings.Contains(got, "|Unit 2: Wait ") {
		t.Fatalf("beside unit 3 stand %q", got)
	}
	run(t, ctx, focus("#others button"), chromedp.KeyEvent(kb.Enter), chromedp.Click("#good", chromedp.ByQuery), focus("#weights input"), chromedp.KeyEvent("300"), focus("#weights button"), chromedp.KeyEvent(kb.Enter))
	if got := ask[string](t, ctx, others); !strings.HasPrefix(got, "Unit 2: ") || !strings.Contains(got, "|Unit 3: ") {
		t.Errorf("beside unit 1 stand %q", got)
	}
	if wide := ask[int](t, ctx, `document.documentElement.scrollWidth`); wide > 390 {
		t.Errorf("the page is %d points wide", wide)
	}
	facts, kept := handOver(t, ctx, downloads)
	if len(facts.Takes) != 1 || facts.Takes[0].Unit != 1 || len(facts.Weights) != 1 || facts.Weights[0].Unit != 1 || kept.Items[0].Weighed == nil || kept.Items[0].Weighed.Grams != 300 {
		t.Errorf("takes %+v, weights %+v, in the record %+v", facts.Takes, facts.Weights, kept.Items[0].Weighed)
	}
	run(t, ctx, chromedp.Click("#out", chromedp.ByQuery))
	if got := ask[string](t, ctx, log); !strings.Contains(got, "unit 4 is out") || ask[string](t, ctx, `document.querySelector("#counter").textContent`)[:6] != "Unit 4" {
		t.Errorf("the newest is not looked at: %q", got)
	}
}
