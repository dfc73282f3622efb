#!/usr/bin/env bash
# Measures the library and what a user would pick instead, in one run, and writes
# README.md. Installs what the peers need from Debian packages and npm, as root.
# Not part of CI: it takes some minutes and wants a quiet machine.
set -euo pipefail
cd "$(dirname "$0")"

packages="python3-numpy python3-scipy glpk-utils coinor-cbc"
if ! dpkg -s $packages >/dev/null 2>&1; then
	apt-get update -qq
	DEBIAN_FRONTEND=noninteractive apt-get install -y -qq $packages
fi
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
(cd "$work" && npm install --silent --no-fund --no-audit psychrolib@1.1.1 >/dev/null)

go build -o "$work/bench" .
"$work/bench" -instances "$work/instances.json"
# The library is measured before and after the peers; the report takes the later
# figures, and a machine that drifted shows in the two files.
"$work/bench" -measure >"$work/before.jsonl"
here=$PWD
(cd "$work" && node "$here/peers/air.mjs") >"$work/air.jsonl"
for peer in melt recipe milk; do
	/usr/bin/python3 "peers/$peer.py" >"$work/$peer.jsonl"
done
/usr/bin/python3 peers/pick.py "$work/instances.json" >"$work/pick.jsonl"
/usr/bin/python3 peers/learn.py "$work/instances.json" >"$work/learn.jsonl"
/usr/bin/python3 peers/sets.py "$work/instances.json" >"$work/sets.jsonl"
"$work/bench" -measure >"$work/after.jsonl"

{
	cat <<TEXT
<!-- Made by run.sh; do not edit. -->

# Beside what you would pick instead

Each row is one job done by honestplate and by something a competent user might use
for it, measured in one run on one machine. Times are medians of $(grep -o '"repeats":[0-9]*' "$work/after.jsonl" | head -1 | cut -d: -f2)
repeats; the ratio is the other's median over ours, so larger is faster. Both sides
solve the same problem: the last column is how far their answers differ, and a
difference stops the run. Absolute times are this machine's alone.

TEXT
	"$work/bench" -report "$work"/{before,air,melt,recipe,milk,pick,sets,learn,after}.jsonl
	cat <<TEXT

Machine: $(grep -m1 'model name' /proc/cpuinfo | cut -d: -f2 | sed 's/^ *//'), $(nproc) cores, $(uname -sr). $(go version | cut -d' ' -f3), Python $(/usr/bin/python3 -c 'import platform; print(platform.python_version())'), $(date -u +%Y-%m-%d).

A process each means the time of the whole process, its start included; HiGHS and
honestplate are called in process. Run it yourself with \`examples/benchmarks/run.sh\`
(Debian, root for the packages).
TEXT
} >README.md.new
mv README.md.new README.md
cat README.md
