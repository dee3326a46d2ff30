#!/bin/sh
# The page: one file with everything in it.
#
# usage: make.sh FOLDER     FOLDER/module: what ../module/make.sh has made; FOLDER/swathe.html: the page
set -eu
here=$(cd "$(dirname "$0")" && pwd)
made=$(cd "$1" && pwd)
web=$made/web

# A copy beside its packages, which are as the lock file has them; fetched once.
mkdir -p "$web"
if ! cmp -s "$here/package-lock.json" "$web/package-lock.json" || [ ! -d "$web/node_modules" ]; then
  cp "$here/package.json" "$here/package-lock.json" "$here/.npmrc" "$web"
  (cd "$web" && npm ci --silent)
fi
find "$web" -mindepth 1 -maxdepth 1 ! -name node_modules ! -name 'package*.json' ! -name .npmrc \
  -exec rm -rf {} +
(cd "$here" && find . -type f ! -path './node_modules/*' ! -name 'package*.json' | tar cf - -T -) |
  tar xf - -C "$web"

(cd "$web" && node_modules/.bin/tsc -p .)
node "$web/make.mjs" "$made"
