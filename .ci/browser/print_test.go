package browser

import (
	"context"
	"path/filepath"
	"regexp"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	printer "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// On a phone the printed pages are read too: nothing is cut and nothing pushed sideways but
// the chart, inside its frame.
func TestThePrintedPagesAreReadOnAPhone(t *testing.T) {
	for _, day := range []string{"autumn", "motion"} {
		dir := pageOf(t, "-day", day)
		ctx, _ := open(t, dir)
		run(t, ctx, chromedp.Navigate("file://"+filepath.Join(dir, "print.html")), chromedp.WaitReady("body", chromedp.ByQuery))
		if wide := ask[int](t, ctx, `document.documentElement.scrollWidth`); wide > 390 {
			t.Errorf("%s: %d points wide on a phone of 390", day, wide)
		}
		for _, cut := range ask[[]string](t, ctx, `[...document.querySelectorAll("section:not(.chart)")].filter(e => e.scrollHeight > e.clientHeight + 1 || e.scrollWidth > e.clientWidth + 1).map(e => e.querySelector("h1, h2").textContent)`) {
			t.Errorf("%s: cut off: %s", day, cut)
		}
	}
}

// A sheet of the printed set: one page of A4 each.
var sheetOf = regexp.MustCompile(`/Type\s*/Page\b[^s]`)

// Each picture is one side of A4, nothing on it is cut off, and a drawing is large enough
// to lay out from: 42 mm, since fonts differ from one machine to the next.
func TestAPictureIsOneSideOfA4(t *testing.T) {
	for _, day := range []string{"autumn", "coast", "motion"} {
		dir := pageOf(t, "-day", day)
		ctx, _ := open(t, dir)
		shots := ask[int](t, ctx, `document.querySelector("#shot").options.length`)
		var pdf []byte
		run(t, ctx, chromedp.Navigate("file://"+filepath.Join(dir, "print.html")), chromedp.WaitReady("body", chromedp.ByQuery),
			chromedp.ActionFunc(func(ctx context.Context) (err error) {
				pdf, _, err = printer.PrintToPDF().WithPreferCSSPageSize(true).Do(ctx)
				return err
			}))
		charts := ask[int](t, ctx, `document.querySelectorAll(".chart").length`)
		if got, want := len(sheetOf.FindAll(pdf, -1)), 1+charts+shots+3; got != want {
			t.Errorf("%s: %d sheets of paper, want %d: the day, %d charts, %d pictures, tasks, shopping, kit", day, got, want, charts, shots)
		}
		// As on paper: A4 less its margins of 12 mm.
		run(t, ctx, emulation.SetDeviceMetricsOverride(703, 1031, 1, false), emulation.SetEmulatedMedia().WithMedia("print"))
		if n := ask[int](t, ctx, `document.querySelectorAll(".dish").length`); n != shots {
			t.Errorf("%s: %d pages for %d pictures", day, n, shots)
		}
		for _, cut := range ask[[]string](t, ctx, `[...document.querySelectorAll(".dish")].filter(e => e.scrollHeight > e.clientHeight + 1 || e.scrollWidth > e.clientWidth + 1).map(e => e.querySelector("h1").textContent + " " + e.scrollHeight + " of " + e.clientHeight)`) {
			t.Errorf("%s: cut off: %s", day, cut)
		}
		for _, small := range ask[[]string](t, ctx, `[...document.querySelectorAll(".drawing")].filter(e => e.clientHeight < 160).map(e => e.closest("section").querySelector("h1").textContent + " " + e.clientHeight)`) {
			t.Errorf("%s: a drawing is too small: %s", day, small)
		}
	}
}
