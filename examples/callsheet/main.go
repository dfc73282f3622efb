// Command callsheet turns a shoot brief into a call sheet: for each dish what must
// be the real product and what may be a stand-in, the recipes in grams, when things
// go into the freezers, how long they hold on set, how many hero units to prepare,
// what to buy, the order of the shots, the cautions and the record to fill in.
//
//	callsheet                  the embedded, invented demonstration
//	callsheet -brief day.json  another day
//	callsheet -out sheet       also sheet/callsheet.md, its figures and record.json
//
// The exit status is 2 for a brief or a flag that cannot be used and 1 for a file
// that cannot be read or written. A folder gets all of the files or keeps what it had;
// a record.json that was filled in is never replaced.
package main

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
	"syscall"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

func run(args []string, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("callsheet", flag.ContinueOnError)
	flags.SetOutput(stderr)
	brief := flags.String("brief", "", "read the brief from this JSON file instead of the embedded one")
	out := flags.String("out", "", "also write callsheet.md, the figures and record.json into this folder")
	if err := flags.Parse(args); err != nil {
		if errors.Is(err, flag.ErrHelp) {
			return 0
		}
		return 2
	}
	if flags.NArg() > 0 {
		fmt.Fprintf(stderr, "callsheet: %q is not understood; a brief is given with -brief\n", flags.Arg(0))
		return 2
	}
	fail := func(status int, err error) int {
		fmt.Fprintln(stderr, "callsheet:", err)
		return status
	}
	var in io.Reader = bytes.NewReader(demoBrief)
	if *brief != "" {
		f, err := os.Open(*brief)
		if err != nil {
			return fail(1, err)
		}
		defer f.Close()
		in = f
	}
	b, err := ReadBrief(in)
	if err != nil {
		return fail(2, err)
	}
	plan, err := b.Plan()
	if err != nil {
		return fail(2, err)
	}
	sheet := plan.Sheet()
	if *out != "" {
		files, err := plan.Files(sheet)
		if err != nil {
			return fail(1, err)
		}
		interrupt := make(chan os.Signal, 1)
		signal.Notify(interrupt, os.Interrupt, syscall.SIGTERM)
		err = writeFolder(*out, files, interrupt)
		signal.Stop(interrupt)
		if err != nil {
			return fail(1, err)
		}
	}
	if err := sheet.WriteText(stdout); err != nil {
		return fail(1, err)
	}
	return 0
}
