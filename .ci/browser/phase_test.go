package browser

import (
	"context"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// A picture is what the page holds of when a unit shows what is wanted.
type picture struct {
	Always bool   `json:"always"`
	Sure   bool   `json:"sure"`
	Opens  window `json:"opens"`
	Closes window `json:"closes"`
	From   *float64
	To     *float64
	Best   *float64
}

type window struct {
	Earliest *float64 `json:"earliest_s"`
	Latest   *float64 `json:"latest_s"`
}

// pictures reads the plan that stands in the page.
func pictures(t *testing.T, ctx context.Context) []picture {
	t.Helper()
	text := ask[string](t, ctx, `JSON.stringify(JSON.parse(document.querySelector("#plan").textContent).shots.map(s => Object.assign({From: s.picture.from_s, To: s.picture.to_s, Best: s.picture.best_s}, s.picture)))`)
	var out []picture
	if err := json.Unmarshal([]byte(text), &out); err != nil {
		t.Fatal(err)
	}
	return out
}

func choose(t *testing.T, ctx context.Context, shot int) {
	t.Helper()
	run(t, ctx, chromedp.Evaluate(fmt.Sprintf(`(() => { const s = document.querySelector("#shot"); s.value = "%d"; s.dispatchEvent(new Event("change")); })()`, shot), nil))
}

// after shifts the start of the last unit so that it is out for so many seconds, and
// loads the page anew.
func after(t *testing.T, ctx context.Context, seconds float64) (phase, word string) {
	t.Helper()
	run(t, ctx, chromedp.Evaluate(fmt.Sprintf(`(() => {
		const key = Object.keys(localStorage).find(k => k.startsWith("honestplate-set-")), state = JSON.parse(localStorage[key]);
		const out = state.entries.filter(e => e.kind === "out" && e.shot === state.shot).pop();
		out.at = new Date(Date.now() - %f).toISOString();
		localStorage[key] = JSON.stringify(state);
	})()`, 1000*seconds), nil), chromedp.Reload(), chromedp.WaitVisible("#phase"))
	return ask[string](t, ctx, `document.querySelector("#phase").dataset.phase`), ask[string](t, ctx, `document.querySelector("#word").textContent`)
}

// Every phase of a unit is told by its word, at the times that stand in the plan.
func TestEveryPhaseOfAUnit(t *testing.T) {
	told := map[string]bool{}
	unsure := 0
	for _, day := range []string{"autumn", "coast", "motion"} {
		ctx, _ := open(t, page(t, day))
		for i, p := range pictures(t, ctx) {
			if p.Always {
				continue
			}
			choose(t, ctx, i)
			run(t, ctx, chromedp.Click("#out"), chromedp.WaitVisible("#phase"))
			type moment struct {
				at          float64
				phase, word string
			}
			var want []moment
			// A moment counts where its phase lasts at least twenty seconds: loading takes some.
			add := func(from, to *float64, phase, word string) {
				low, high := 0.0, math.Inf(1)
				if from != nil {
					low = *from
				}
				if to != nil {
					high = *to
				}
				if high-low > 20 {
					want = append(want, moment{low + 3, phase, word})
				}
			}
			zero := new(float64)
			if !p.Sure {
				unsure++
				if p.Best == nil {
					want = append(want, moment{10, "over", "This picture does not come"})
				} else {
					before, behind := *p.Best-15, *p.Best+15
					add(zero, &before, "wait", "Best chance in")
					add(&before, &behind, "now", "Best chance now")
					add(&behind, nil, "ending", "Best chance has passed")
				}
			} else {
				if p.Opens.Earliest != nil {
					add(zero, p.Opens.Earliest, "wait", "Wait")
				}
				add(p.Opens.Earliest, p.From, "maybe", "May begin")
				add(p.From, p.To, "now", "Shoot")
				if p.To != nil {
					add(p.To, p.Closes.Latest, "ending", "May be over")
					if p.Closes.Latest != nil {
						add(p.Closes.Latest, nil, "over", "Over: a fresh unit")
					}
				}
			}
			for _, m := range want {
				phase, word := after(t, ctx, m.at)
				if phase != m.phase || word != m.word {
					t.Errorf("%s, picture %d after %.0f s: %s, %q; want %s, %q", day, i+1, m.at, phase, word, m.phase, m.word)
				}
				told[phase] = true
			}
		}
	}
	for _, phase := range []string{"wait", "maybe", "now", "ending", "over"} {
		if !told[phase] {
			t.Errorf("no invented day shows the phase %q", phase)
		}
	}
	if unsure == 0 {
		t.Error("no invented day has a picture that is not sure")
	}
}

// A screen reader hears a phase once, not four times a second.
func TestWhatIsSaidDoesNotChatter(t *testing.T) {
	ctx, _ := open(t, page(t, "coast"))
	choose(t, ctx, 2)
	run(t, ctx, chromedp.Click("#out"), chromedp.WaitVisible("#phase"),
		chromedp.Evaluate(`window.heard = 0; new MutationObserver(l => window.heard += l.length).observe(document.querySelector("#said"), { childList: true, characterData: true, subtree: true })`, nil))
	time.Sleep(1500 * time.Millisecond)
	if n := ask[int](t, ctx, `window.heard`); n > 0 {
		t.Errorf("it was said %d times in a second and a half that nothing has changed", n)
	}
	if live := ask[string](t, ctx, `document.querySelector("#phase").getAttribute("role") + " " + document.querySelector("#phase").getAttribute("aria-live")`); live != "timer off" {
		t.Errorf("the countdown is a %q", live)
	}
}

// Whoever works with the keyboard stays where they are, and follows the page's order.
func TestTheKeyboardKeepsItsPlace(t *testing.T) {
	ctx, _ := open(t, page(t, "coast"))
	choose(t, ctx, 2)
	run(t, ctx, chromedp.Click("#out"), chromedp.WaitVisible("#phase"), chromedp.Focus("#seen button"), chromedp.KeyEvent(kb.Enter))
	if at := ask[string](t, ctx, `document.activeElement.dataset.key || document.activeElement.tagName`); at == "BODY" {
		t.Error("the focus is lost when an entry is made")
	}
	run(t, ctx, chromedp.SendKeys("#weights input", "12"), chromedp.Click("#good"))
	if v := ask[string](t, ctx, `document.querySelector("#weights input").value`); v != "12" {
		t.Errorf("what was typed is gone after another entry: %q", v)
	}
	if wild := ask[int](t, ctx, `document.querySelectorAll("[tabindex]").length`); wild != 0 {
		t.Errorf("%d elements have a place of their own in the order of the keyboard", wild)
	}
	run(t, ctx, chromedp.SendKeys("#temp", "24,5"), chromedp.SendKeys("#humidity", "150"), chromedp.Click("#room"))
	if said := ask[string](t, ctx, `document.querySelector("#said").textContent`); said != "Humidity: 5 to 98 %." {
		t.Errorf("a humidity of 150 %% is answered with %q", said)
	}
}

// A name that holds markup, turns the direction of writing or is in another script is a
// name: it stays text, and the page stays as wide as the phone.
func TestHostileNamesStayText(t *testing.T) {
	data, err := os.ReadFile("../../examples/callsheet/days/motion.json")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{
		`</script><script>window.alive=1</script><img src=x onerror="window.alive=1">`, "كنافة بالقشطة <b>حلوة</b> (שלום)",
		"とても長い料理の名前がここに続きますから折り返しが必要です御飯御飯御飯御飯御飯", "Wwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwww&amp;",
	} {
		var brief map[string]any
		if err := json.Unmarshal(data, &brief); err != nil {
			t.Fatal(err)
		}
		dish := brief["dishes"].([]any)[0].(map[string]any)
		dish["name"], dish["about"] = name, name
		dish["things"].([]any)[0].(map[string]any)["name"] = name
		text, err := json.Marshal(brief)
		if err != nil {
			t.Fatal(err)
		}
		file := filepath.Join(t.TempDir(), "brief.json")
		if err := os.WriteFile(file, text, 0o600); err != nil {
			t.Fatal(err)
		}
		dir := pageOf(t, "-brief", file)
		ctx, _ := open(t, dir)
		if got := ask[string](t, ctx, `document.querySelector("#dish").textContent`); got != "1  "+name {
			t.Errorf("%q is shown as %q", name, got)
		}
		run(t, ctx, chromedp.Click("#out"), chromedp.WaitVisible("#phase"), chromedp.Click("#seen button"))
		if wide := ask[int](t, ctx, `document.documentElement.scrollWidth`); wide > 390 {
			t.Errorf("%q makes the page %d points wide", name, wide)
		}
		if ask[bool](t, ctx, `window.alive === 1`) {
			t.Errorf("%q is alive on the set's page", name)
		}
		run(t, ctx, chromedp.Navigate("file://"+filepath.Join(dir, "print.html")), chromedp.WaitReady("body"))
		if ask[bool](t, ctx, `window.alive === 1`) {
			t.Errorf("%q is alive on the printed page", name)
		}
	}
}
