#!/bin/sh
# Draws examples/fonts.png: every bundled font with the number 20486, its strokes shaded by their
# width, beside what it measures. The tool makes the sheet; here it only becomes a picture.
#
# usage: fonts.sh [TOOL]      TOOL: the swathe to use, build/swathe where none is named
# needs: pdftoppm (package poppler-utils)
set -eu
cd "$(dirname "$0")/.."
tool=${1:-build/swathe}

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
"$tool" fonts -o "$work" --quiet >/dev/null
pdftoppm -r 110 -gray -singlefile -png "$work/fonts.pdf" examples/fonts
