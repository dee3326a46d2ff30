#!/bin/sh
# The module: what lies here, the core, the decoder of WOFF2, and the licenses of all that is in it.
#
# usage: make.sh FOLDER     FOLDER/libraries and FOLDER/core: what was made before; FOLDER/module: it
set -eu
here=$(cd "$(dirname "$0")" && pwd)
top=$(cd "$here/../../.." && pwd)
made=$(cd "$1" && pwd)
module=$made/module
decoder=$made/npm/node_modules/woff2-encoder

# The decoder as the lock file has it; fetched once.
mkdir -p "$made/npm"
if ! cmp -s "$here/package-lock.json" "$made/npm/package-lock.json" || [ ! -d "$decoder" ]; then
  cp "$here/package.json" "$here/package-lock.json" "$here/.npmrc" "$made/npm"
  (cd "$made/npm" && npm ci --silent)
fi

rm -rf "$module"
mkdir -p "$module"
cp "$here"/*.mjs "$here/swathe.d.ts" "$made/core/src/page/core/swathe-core.wasm" "$module"
cp "$decoder/dist/decompress.js" "$module/woff2-decoder.mjs"
version=$(sed -n 's/.*kVersion = "\(.*\)".*/\1/p' "$top/include/swathe/version.hpp")
sed -e "s/\"version\": \"0.0.0\"/\"version\": \"$version\"/" -e '/"engines"/s/,$//' \
  -e '/"devDependencies"/d' "$here/package.json" >"$module/package.json"

# license NAME FILE
license() {
  printf '%s\n\n' "==== $1"
  cat "$2"
  printf '\n\n'
}
{
  license Swathe "$top/LICENSE"
  for one in "$made/libraries/licenses"/*.txt; do license "$(basename "$one" .txt)" "$one"; done
  for one in "$top"/fonts-open/*; do license "font $(basename "$one")" "$one/OFL.txt"; done
  license "WOFF2 decoder" "$decoder/LICENSE"
} >"$module/LICENSES.txt"
