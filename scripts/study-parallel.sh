#!/bin/sh
# Spreads one study over two workers, and over several processes with GNU parallel as over hosts, and
# checks that the results are those of one worker; also after kills, each resumed. Usage: scripts/study-parallel.sh [tunes.ndjson]
# Needs the built command; installs Debian's `parallel` where it is missing and we may.
set -eu

here=$(cd "$(dirname "$0")/.." && pwd)
command="node $here/packages/reedplate/dist/bin.js"
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT

if ! command -v parallel >/dev/null; then
  apt-get install -y parallel >/dev/null
fi

tunes=${1:-"$folder/tunes.ndjson"}
if [ ! -f "$tunes" ]; then
  node -e '
    for (let number = 0; number < 500; number += 1) {
      const notes = Array.from({ length: 60 }, (_, at) => ({
        start: at * 480, duration: 480, pitch: 74 + Math.round(11 * Math.sin(at * (0.7 + number / 131))),
      }));
      console.log(JSON.stringify({ id: `${number}`, key: "C", line: { notes } }));
    }' >"$tunes"
fi

$command study "$tunes" --workers 1 >"$folder/one.ndjson"

begun=$(date +%s%N)
$command study "$tunes" --workers 2 >"$folder/two.ndjson"
took=$(($(date +%s%N) - begun))
cmp "$folder/one.ndjson" "$folder/two.ndjson"

# Killed again and again, each time after a larger share of what a whole run takes here, and resumed.
inside=0
for share in 40 50 60 70 80 90; do
  seconds=$(awk "BEGIN { print $took * $share / 1e11 }")
  timeout -s KILL "$seconds" $command study "$tunes" --workers 2 --resume \
    --out "$folder/killed.ndjson" || true
  touch "$folder/killed.ndjson"
  written=$(wc -l <"$folder/killed.ndjson")
  echo "after $seconds s: $written tunes"
  if [ "$written" -gt 0 ] && [ "$written" -lt "$(wc -l <"$tunes")" ]; then inside=$((inside + 1)); fi
done
if [ "$inside" -eq 0 ]; then
  echo "no kill fell within the study: nothing is shown of resuming" >&2
  exit 1
fi
$command study "$tunes" --workers 2 --resume --out "$folder/killed.ndjson"
cmp "$folder/one.ndjson" "$folder/killed.ndjson"

# Blocks of whole lines to four processes; --keep-order gives their results in the order of input.
parallel --will-cite --pipe --keep-order --block 100k --jobs 4 \
  "$command study - --workers 1" <"$tunes" >"$folder/spread.ndjson"

# Numbers count within a block; all else must be the same, tune for tune.
without_numbers() { sed 's/^{"number":[0-9]*,/{/' "$1"; }
without_numbers "$folder/one.ndjson" >"$folder/one.txt"
without_numbers "$folder/spread.ndjson" >"$folder/spread.txt"
cmp "$folder/one.txt" "$folder/spread.txt"
blocks=$(grep -c '^{"number":1,' "$folder/spread.ndjson")
echo "$(wc -l <"$folder/spread.ndjson") tunes in $blocks blocks: the same results"
