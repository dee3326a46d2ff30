#!/bin/sh
# Draws examples/tin-heron-pattern.png: the pattern of cover A of the example, as the tool makes it.
#
# usage: pattern.sh [TOOL]    TOOL: the swathe to use, build/swathe where none is named
# needs: pdftoppm (package poppler-utils)
set -eu
cd "$(dirname "$0")/.."
tool=${1:-build/swathe}

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
"$tool" pattern examples/tin-heron.toml -o "$work" --quiet >/dev/null
pdftoppm -r 40 -singlefile -png "$work/A-pattern.pdf" examples/tin-heron-pattern
