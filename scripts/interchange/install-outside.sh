#!/usr/bin/env bash
# Installs other people's readers for check-outside.ts, all from Debian: abc2midi, fluidsynth with a
# sound font, MuseScore 3, xmllint, and the official MusicXML schema, which the source of MuseScore 3 carries.
set -euo pipefail
cd "$(dirname "$0")/../.."
outside=.outside
mkdir -p "$outside"

if ! { command -v abc2midi && command -v fluidsynth && command -v xmllint && command -v musescore3; } > /dev/null \
  || ! [ -e /usr/share/sounds/sf2/TimGM6mb.sf2 ]; then
  apt-get update -qq
  DEBIAN_FRONTEND=noninteractive apt-get install -qq --no-install-recommends -y \
    abcmidi fluidsynth timgm6mb-soundfont libxml2-utils musescore3 > /dev/null
fi

if ! [ -e "$outside/schema/musicxml.xsd" ]; then
  # Sources are not listed on every machine: the machine's own list, asked for sources.
  apt="$PWD/$outside/apt"
  mkdir -p "$apt/lists/partial" "$apt/parts"
  cat /etc/apt/sources.list.d/debian.sources 2> /dev/null \
    | sed 's/^Types: deb$/Types: deb-src/' > "$apt/parts/debian.sources"
  options=(-o Dir::Etc::sourcelist=- -o Dir::Etc::sourceparts="$apt/parts" -o Dir::State::lists="$apt/lists")
  apt-get "${options[@]}" update -qq
  # The archive may lack the packaging; the original source is all that is needed.
  (cd "$outside" && apt-get "${options[@]}" source --download-only -qq musescore3) || true
  archive=$(find "$outside" -name 'musescore3_*.orig.tar.xz' | head -n 1)
  if [ -z "$archive" ]; then
    echo 'the MusicXML schema could not be fetched: MusicXML is not checked against it' >&2
    exit 0
  fi
  tar -xJf "$archive" -C "$outside" --wildcards '*/mscore/schema/*.xsd' '*/mtest/musicxml/*' '*/mtest/*.mid'
  mkdir -p "$outside/schema" "$outside/samples"
  cp "$outside"/musescore3-*/mscore/schema/*.xsd "$outside/schema/"
  cp -r "$outside"/musescore3-*/mtest "$outside/samples/musescore3"
  # The schema imports its two helpers from the web; they lie beside it.
  sed -i 's#schemaLocation="http://www.musicxml.org/xsd/#schemaLocation="#' "$outside/schema/musicxml.xsd"
fi
