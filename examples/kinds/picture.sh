#!/bin/sh
# Draws examples/kinds.png: the pattern of cover A of every job beside this script, all to one
# scale and seen from the cloth's right side, each above the name of its job. The tool draws them;
# here they only get heavier lines for their small size, and a place on the page.
#
# usage: picture.sh [TOOL]      TOOL: the swathe to use, build/swathe where none is named
# needs: rsvg-convert (package librsvg2-bin)
set -eu
cd "$(dirname "$0")/../.."
tool=${1:-build/swathe}

px_for_m=300 # of cloth
page=1400    # px wide
gap=28       # px between pictures
label=30     # px below a picture
head=46      # mm of each sheet: the legend, too small to read here

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

heavier='<style>
#TEXT, #THIN, #SCALE, #GRAIN, #STAPLE-LINE, #GRAIN-TINT, #THIN-TINT, #MATCH-TINT { display: none }
#CUT { stroke-width: 5px }
#FOLD, #CORNER, #STITCH, #STAPLE { stroke-width: 2.5px }
#NUMERAL { stroke: none }
#NUMERAL-TINT path { fill: #b5bec4 }
</style>'

for job in examples/kinds/*.toml; do
  kind=$(basename "$job" .toml)
  { cat "$job"; printf '\n[paper]\nface = "outside"\n'; } >"$work/$kind.toml"
  "$tool" pattern "$work/$kind.toml" -o "$work/$kind" --quiet >/dev/null
  awk -v style="$heavier" '{ print } /^<title>/ { print style }' \
    "$work/$kind/A-pattern.svg" >"$work/$kind.svg"
  sed -n "s/.* width=\"\([0-9.]*\)mm\" height=\"\([0-9.]*\)mm\".*/$kind \1 \2/p" "$work/$kind.svg"
done >"$work/sizes"

# Pictures flow into rows as words do.
awk -v px_for_m="$px_for_m" -v page="$page" -v gap="$gap" -v label="$label" \
  -v head="$head" '
  {
    px = px_for_m / 1000; w = $2 * px; h = ($3 - head) * px
    if (x > 0 && x + w + gap > page) { y += row + label + gap; x = 0; row = 0 }
    if (x == 0) x = gap
    if (y == 0) y = gap
    body = body sprintf("<svg x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\"", x, y, w, h)
    body = body sprintf(" viewBox=\"0 %s %s %s\">", head, $2, $3 - head)
    body = body sprintf("<image href=\"%s.svg\" width=\"%s\" height=\"%s\"/></svg>\n", $1, $2, $3)
    body = body sprintf("<text x=\"%.1f\" y=\"%.1f\">%s.toml</text>\n", x, y + h + 20, $1)
    x += w + gap
    if (h > row) row = h
  }
  END {
    height = y + row + label
    printf "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%d\" height=\"%d\">\n", page, height
    print "<rect width=\"100%\" height=\"100%\" fill=\"white\"/>"
    print "<g font-family=\"sans-serif\" font-size=\"17\">"
    printf "%s</g></svg>\n", body
  }' "$work/sizes" >"$work/page.svg"

rsvg-convert --unlimited "$work/page.svg" -o examples/kinds.png
