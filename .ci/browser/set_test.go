// Package browser drives the page for the set in a real browser, as a phone would.
//
// It is a module of its own, so that no user of the library inherits a browser driver.
// Where no Chromium is installed the test says so and is skipped.
package browser

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"example.org/honestplate/examples/shoot"
	"example.org/honestplate/portion/record"
)

// chromium finds a browser, or skips.
func chromium(t *testing.T) string {
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	t.Skip("no Chromium is installed here: the page for the set was NOT driven in a browser")
	return ""
}

// program builds the call sheet once.
var program = sync.OnceValues(func() (string, error) {
	dir, err := os.MkdirTemp("", "callsheet-")
	if err != nil {
		return "", err
	}
	path := filepath.Join(dir, "callsheet")
	cmd := exec.Command("go", "build", "-o", path, "./examples/callsheet")
	cmd.Dir = "../.."
	if out, err := cmd.CombinedOutput(); err != nil {
		return "", fmt.Errorf("%w: %s", err, out)
	}
	return path, nil
})

func TestMain(m *testing.M) {
	status := m.Run()
	if path, err := program(); err == nil {
		os.RemoveAll(filepath.Dir(path))
	}
	os.Exit(status)
}

// page writes the pages of an invented day and returns the folder.
func page(t *testing.T, day string) string { return pageOf(t, "-day", day) }

func pageOf(t *testing.T, args ...string) string {
	t.Helper()
	path, err := program()
	if err != nil {
		t.Fatal(err)
	}
	dir := filepath.Join(t.TempDir(), "sheet")
	if out, err := exec.Command(path, append(args, "-out", dir)...).CombinedOutput(); err != nil {
		t.Fatalf("callsheet: %v\n%s", err, out)
	}
	return dir
}

// open starts a phone's browser on the page: 390 by 844 points.
func open(t *testing.T, dir string) (context.Context, string) {
	downloads := t.TempDir()
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(chromium(t)), chromedp.NoSandbox, chromedp.DisableGPU,
		chromedp.WSURLReadTimeout(time.Minute)) // a busy machine takes its time to start a browser
	ctx, cancel := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(cancel)
	ctx, cancel = chromedp.NewContext(ctx)
	t.Cleanup(cancel)
	ctx, cancel = context.WithTimeout(ctx, 5*time.Minute)
	t.Cleanup(cancel)
	run(t, ctx,
		browser.SetDownloadBehavior(browser.SetDownloadBehaviorBehaviorAllow).WithDownloadPath(downloads),
		emulation.SetDeviceMetricsOverride(390, 844, 2, true),
		chromedp.Navigate("file://"+filepath.Join(dir, "set.html")),
		chromedp.WaitVisible("#out", chromedp.ByQuery),
	)
	return ctx, downloads
}

func run(t *testing.T, ctx context.Context, actions ...chromedp.Action) {
	t.Helper()
	if err := chromedp.Run(ctx, actions...); err != nil {
		t.Fatal(err)
	}
}

// focus puts the keyboard on the first element that fits.
func focus(selector string) chromedp.Action {
	return chromedp.Evaluate(fmt.Sprintf("document.querySelector(%q).focus()", selector), nil)
}

// ask evaluates an expression in the page.
func ask[T any](t *testing.T, ctx context.Context, expression string) T {
	t.Helper()
	var out T
	run(t, ctx, chromedp.Evaluate(expression, &out))
	return out
}

func TestAUnitIsStartedCountedAndKeptOverReload(t *testing.T) {
	ctx, _ := open(t, page(t, "coast"))
	if !ask[bool](t, ctx, `document.querySelector("#phase").hidden && document.querySelector("#good").disabled`) {
		t.Error("something counts before a unit is out")
	}
	run(t, ctx, chromedp.SetValue("#shot", "0", chromedp.ByQuery), chromedp.Evaluate(`document.querySelector("#shot").dispatchEvent(new Event("change"))`, nil),
		chromedp.Click("#out", chromedp.ByQuery), chromedp.WaitVisible("#phase", chromedp.ByQuery))
	first := ask[string](t, ctx, `document.querySelector("#hint").textContent + document.querySelector("#count").textContent`)
	time.Sleep(1500 * time.Millisecond)
	if second := ask[string](t, ctx, `document.querySelector("#hint").textContent + document.querySelector("#count").textContent`); second == first {
		t.Errorf("the countdown stands: %s", second)
	}
	run(t, ctx, chromedp.Click("#good", chromedp.ByQuery), chromedp.SendKeys("#note", "lower, and from the left", chromedp.ByQuery), chromedp.Click("#keep", chromedp.ByQuery),
		chromedp.Sleep(200*time.Millisecond), chromedp.Reload(), chromedp.WaitVisible("#phase", chromedp.ByQuery))
	log := ask[string](t, ctx, `document.querySelector("#log").textContent`)
	for _, want := range []string{"unit 1 is out", "good take", "lower, and from the left"} {
		if !strings.Contains(log, want) {
			t.Errorf("after a reload %q is gone: %s", want, log)
		}
	}
	run(t, ctx, chromedp.Click("#undo", chromedp.ByQuery))
	if log := ask[string](t, ctx, `document.querySelector("#log").textContent`); strings.Contains(log, "from the left") || !strings.Contains(log, "good take") {
		t.Errorf("undo took the wrong entry: %s", log)
	}
}

// Early, likely and late are told apart by words, and spoken to who cannot see them.
func TestThePhaseIsSaidInWords(t *testing.T) {
	ctx, _ := open(t, page(t, "autumn"))
	shots := ask[int](t, ctx, `document.querySelector("#shot").options.length`)
	for i := range shots {
		run(t, ctx, chromedp.Evaluate(`(() => { const s = document.querySelector("#shot"); s.value = "`+string(rune('0'+i))+`"; s.dispatchEvent(new Event("change")); })()`, nil),
			chromedp.Click("#out", chromedp.ByQuery), chromedp.WaitVisible("#phase", chromedp.ByQuery))
		if word := ask[string](t, ctx, `document.querySelector("#word").textContent`); word == "" {
			t.Errorf("picture %d has no word for its phase", i)
		}
		if said := ask[string](t, ctx, `document.querySelector("#said").textContent`); !strings.HasPrefix(said, "Unit 1: ") {
			t.Errorf("picture %d: a screen reader hears %q", i, said)
		}
		if wide := ask[int](t, ctx, `document.documentElement.scrollWidth`); wide > 390 {
			t.Errorf("picture %d is %d points wide on a phone of 390", i, wide)
		}
		if none := ask[int](t, ctx, `[...document.querySelectorAll("button, input, select")].filter(e => !(e.textContent.trim() || e.labels && e.labels.length)).length`); none > 0 {
			t.Errorf("picture %d: %d controls have no name", i, none)
		}
		if small := ask[int](t, ctx, `[...document.querySelectorAll("button")].filter(e => e.offsetParent && e.offsetHeight < 44).length`); small > 0 {
			t.Errorf("picture %d: %d buttons are too small for a thumb", i, small)
		}
	}
}

func TestTheKeyboardReachesTheStart(t *testing.T) {
	ctx, _ := open(t, page(t, "coast"))
	for range 20 {
		run(t, ctx, chromedp.KeyEvent(kb.Tab))
		if ask[string](t, ctx, `document.activeElement.id`) == "out" {
			run(t, ctx, chromedp.KeyEvent(kb.Enter), chromedp.WaitVisible("#phase", chromedp.ByQuery))
			return
		}
	}
	t.Error("the keyboard does not reach the button that starts a unit")
}

func TestFactsAndRecordAreHandedOverAndReadBack(t *testing.T) {
	dir := page(t, "coast")
	ctx, downloads := open(t, dir)
	run(t, ctx, chromedp.Click("#out", chromedp.ByQuery), chromedp.WaitVisible("#phase", chromedp.ByQuery))
	if ask[int](t, ctx, `document.querySelectorAll("#weights input").length`) > 0 {
		run(t, ctx, focus("#weights input"), chromedp.KeyEvent("299,5"), focus("#weights button"), chromedp.KeyEvent(kb.Enter))
	}
	if ask[int](t, ctx, `document.querySelectorAll("#seen button").length`) > 0 {
		run(t, ctx, focus("#seen button"), chromedp.KeyEvent(kb.Enter))
	}
	run(t, ctx, chromedp.Click("#good", chromedp.ByQuery))
	facts, kept := handOver(t, ctx, downloads)
	if len(facts.Takes) != 1 || !facts.Takes[0].Good {
		t.Errorf("takes %+v", facts.Takes)
	}
	if len(kept.Takes) != 1 || !kept.Takes[0].Chosen {
		t.Errorf("takes in the record %+v", kept.Takes)
	}
	if len(facts.Weights) > 0 && facts.Weights[0].Grams != 299.5 {
		t.Errorf("weights %+v", facts.Weights)
	}
	planWith(t, "coast", facts)
}

// handOver takes the facts and the record of the picture that is chosen out of the page,
// read by the library.
func handOver(t *testing.T, ctx context.Context, downloads string) (facts *shoot.Facts, kept *record.Record) {
	t.Helper()
	run(t, ctx, chromedp.Click("#facts", chromedp.ByQuery), chromedp.Click("#record", chromedp.ByQuery))
	for deadline := time.Now().Add(20 * time.Second); time.Now().Before(deadline) && (facts == nil || kept == nil); time.Sleep(200 * time.Millisecond) {
		names, err := filepath.Glob(downloads + "/*.json")
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range names {
			data, err := os.ReadFile(name)
			if err != nil || !json.Valid(data) {
				continue
			}
			if filepath.Base(name) == "facts.json" {
				if facts, err = shoot.ReadFacts(bytes.NewReader(data)); err != nil {
					t.Fatalf("%v\n%s", err, data)
				}
			} else {
				r, err := record.Read(bytes.NewReader(data))
				if err != nil {
					t.Fatalf("%v\n%s", err, data)
				}
				kept = &r
			}
		}
	}
	if facts == nil || kept == nil {
		t.Fatalf("facts %v, record %v", facts != nil, kept != nil)
	}
	return facts, kept
}

// planWith plans the rest of an invented day from what the page has handed over.
func planWith(t *testing.T, day string, facts *shoot.Facts) *shoot.Plan {
	t.Helper()
	f, err := os.Open(filepath.Join("../..", "examples", "callsheet", "days", day+".json"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	brief, err := shoot.Read(f)
	if err != nil {
		t.Fatal(err)
	}
	p, err := brief.Plan(facts)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// The page loads nothing from anywhere.
func TestThePageNeedsNoNetwork(t *testing.T) {
	data, err := os.ReadFile(filepath.Join(page(t, "coast"), "set.html"))
	if err != nil {
		t.Fatal(err)
	}
	for _, link := range []string{"http://", "https://", "src=", "@import", "url("} {
		if bytes.Contains(data, []byte(link)) {
			t.Errorf("the page has %q", link)
		}
	}
}
