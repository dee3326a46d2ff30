#!/bin/sh
# The library's unit tests as WebAssembly, in node. Long: on request.
#
# usage: unit_tests.sh [DOCTEST_OPTION...]     wants what examples/page.sh makes
set -eu
cd "$(dirname "$0")/../.."
. src/page/libraries/toolchain.sh
cmake -S . -B build-page/core -DSWATHE_PAGE_UNIT_TESTS=ON
cmake --build build-page/core -j "$(nproc)" --target swathe_unit_tests
# Not in it: PNG, WOFF2, and programs to ask.
node --stack-size=4000 build-page/core/swathe_unit_tests.js --no-colors=true \
  --test-case-exclude='files (2)*,files: every word*,*a WOFF2 file*,printer correction: a corrected*' "$@"
