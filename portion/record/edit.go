package record

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.org/honestplate/portion/internal/check"
)

// An Edit is something that was done to the picture after the shutter, in the terms of
// an open vocabulary, so that programs that show where a picture comes from understand
// it: actions such as c2pa.cropped or c2pa.adjustedColor, source types such as
// compositeCapture. Actions of one's own have a prefix (com.example.liquify), source
// types of one's own are a URI. Whoever signs declares it; nothing proves it.
//
// Source: C2PA specification 2.2, table 8 and 18.14; IPTC digital source type
// NewsCodes (both read).
type Edit struct {
	Action     string `json:"action"`               // such as c2pa.cropped; not empty
	SourceType string `json:"source_type,omitzero"` // of what the edit brought in, if anything
	What       string `json:"what,omitzero"`        // what was done, in words
}

func (e Edit) validate() error {
	if err := textAt("Action", e.Action, true); err != nil {
		return err
	}
	want := ""
	switch name, ours := strings.CutPrefix(e.Action, "c2pa."); {
	case e.Action == "c2pa.color_adjustments":
		want = "its new name, c2pa.adjustedColor"
	case ours && !slices.Contains(actions, name):
		want = "one of c2pa." + strings.Join(actions, ", ")
	case !ours && !strings.Contains(strings.Trim(e.Action, "."), "."):
		want = "a c2pa action, or one of your own with a prefix, such as com.example." + e.Action
	}
	if want != "" {
		return check.Input("Action", fmt.Sprintf("%q", e.Action), "", want)
	}
	if e.Action == "c2pa.created" && e.SourceType == "" {
		return check.Input("SourceType", "empty", "",
			"what it was created from: C2PA 2.2, 18.14.2, wants it of c2pa.created")
	}
	return cmp.Or(sourceTypeAt("SourceType", e.SourceType), textAt("What", e.What, false))
}

// actions are those of the C2PA that are not out of date, without their prefix.
var actions = []string{
	"addedText", "adjustedColor", "changedSpeed", "converted", "created", "cropped", "deleted", "drawing", "dubbed",
	"edited", "edited.metadata", "enhanced", "filtered", "opened", "orientation", "placed", "published", "redacted",
	"removed", "repackaged", "resized", "transcoded", "translated", "trimmed", "unknown", "watermarked",
}

// sourceTypes are the current terms, and whether a generative model had a part in it.
var sourceTypes = map[string]bool{
	"digitalCapture": false, "computationalCapture": false, "negativeFilm": false, "positiveFilm": false, "print": false,
	"humanEdits": false, "algorithmicallyEnhanced": false, "digitalCreation": false, "dataDrivenMedia": false,
	"trainedAlgorithmicMedia": true, "algorithmicMedia": false, "screenCapture": false, "virtualRecording": false,
	"composite": false, "compositeCapture": false, "compositeSynthetic": true, "compositeWithTrainedAlgorithmicMedia": true,
	"empty": false, "trainedAlgorithmicData": true,
}

// retiredTypes are terms that are out of use, and what to write instead.
var retiredTypes = map[string]string{
	"minorHumanEdits": "humanEdits", "digitalArt": "digitalCreation", "softwareImage": "a term that says how it was made",
}

func sourceTypeAt(field, term string) error {
	if err := textAt(field, term, false); err != nil {
		return err
	}
	if _, known := sourceTypes[term]; known || term == "" || strings.Contains(term, "://") {
		return nil
	}
	want := "a digital source type such as digitalCapture or compositeCapture, or the URI of another"
	if instead := retiredTypes[term]; instead != "" {
		want = instead + ": the term is out of use"
	}
	return check.Input(field, fmt.Sprintf("%q", term), "", want)
}
