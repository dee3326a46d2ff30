#!/bin/sh
# Lines and branches that the tests reach, a row a room: builds into build-coverage/, runs the unit
# tests and what the tool says, then reads the counters with gcovr (Debian: gcovr).
#
# usage: sh tests/coverage.sh [--files]     --files: a row a file too, the least covered first
set -eu
cd "$(dirname "$0")/.."
command -v gcovr >/dev/null || { echo "gcovr is missing: apt-get install gcovr" >&2; exit 1; }
build=build-coverage
cmake -S . -B "$build" -DCMAKE_BUILD_TYPE=None -DSWATHE_TESTS=ON \
  -DCMAKE_CXX_FLAGS="-O0 --coverage" >/dev/null
cmake --build "$build" -j "$(nproc)" --target swathe_app swathe_tests >/dev/null
find "$build" -name '*.gcda' -delete
SWATHE_DRAWN=${SWATHE_DRAWN:-20} "$build/tests/swathe_tests" | tail -n 3
python3 tests/golden/golden.py check "$build/swathe" | grep -c '^ok' | sed 's/$/ checks of what the tool says/'
gcovr -r . "$build" --filter 'src/' --filter 'include/swathe/' --exclude-throw-branches \
  --exclude-unreachable-branches --json-summary "$build/coverage.json" >/dev/null
python3 tests/coverage_rooms.py "$build/coverage.json" "$@"
