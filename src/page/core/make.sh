#!/bin/sh
# The core for WebAssembly.
#
# usage: make.sh FOLDER     FOLDER/libraries: what ../libraries/make.sh has made; FOLDER/core: the
#                           core's own build
set -eu
here=$(cd "$(dirname "$0")" && pwd)
made=$(cd "$1" && pwd)
. "$here/../libraries/toolchain.sh"
emcmake cmake -G Ninja -S "$here/../../.." -B "$made/core" -DCMAKE_BUILD_TYPE=Release \
  -DCMAKE_CXX_FLAGS_RELEASE=-Os -DSWATHE_PAGE_LIBRARIES="$made/libraries" \
  -DSWATHE_WARNINGS_AS_ERRORS=ON >/dev/null
cmake --build "$made/core" -j "$(nproc)"
