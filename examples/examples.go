// Package examples is the notebook: one folder a chapter, each a question from the
// set answered with the three packages, and callsheet, which answers a whole day.
//
// go generate ./examples rebuilds every page and figure from the chapters' tested
// files, and the index README.md.
package examples

//go:generate go run ./internal/generate
