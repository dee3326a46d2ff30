#!/bin/sh
# Lines and branches that the tests reach, a row a room: builds into build-coverage/, runs the unit
# tests and what the tool says, reports and many jobs, then reads the counters with gcovr (Debian:
# gcovr). It takes some twenty minutes of CPU. Left out are the suites against CGAL and cast rays, and
# those in which the tool is killed or its calls fail: counters are written at the end, and by such
# calls.
#
# usage: sh tests/coverage.sh [--files]     --files: a row a file too, the least covered first
set -eu
cd "$(dirname "$0")/.."
command -v gcovr >/dev/null || { echo "gcovr is missing: apt-get install gcovr" >&2; exit 1; }
build=build-coverage
tool=$build/swathe
cmake -S . -B "$build" -DCMAKE_BUILD_TYPE=None -DSWATHE_TESTS=ON \
  -DCMAKE_CXX_FLAGS="-O0 --coverage -fprofile-update=atomic" >/dev/null
cmake --build "$build" -j "$(nproc)" --target swathe_app swathe_tests >/dev/null
find "$build" -name '*.gcda' -delete

count() { grep -c '^ok' | sed "s/\$/ checks: $1/"; }
"$build/tests/swathe_tests" | tail -n 3
python3 tests/golden/golden.py check "$tool" | count "what the tool says"
python3 tests/schema/report_test.py "$tool" | count "the report's schema"
python3 tests/app/many_test.py "$tool" | count "many jobs"
"$tool" --quiet fonts -o "$build/fonts" >/dev/null

gcovr -r . "$build" --filter 'src/' --filter 'include/swathe/' --exclude-throw-branches \
  --exclude-unreachable-branches --json-summary "$build/coverage.json" >/dev/null
python3 tests/coverage_rooms.py "$build/coverage.json" "$@"
