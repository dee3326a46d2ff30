#!/bin/sh
# Everything there is to test, on a machine with nothing but a shell and packages: installs what is
# missing (and says so), builds into build-tests/, runs every suite. At the end stand the names of
# what failed, then the sum of test cases and checks: "N passed, N failed"; the exit status is 1 when
# any failed.
#
# The page is tested where it can be made: on Debian 12, with what that needs installed or to be had.
#
# Cases are drawn from one seed, the same in each run; SWATHE_SEED=$(date +%s) draws others.
set -u
export SWATHE_SEED="${SWATHE_SEED:-20486}"
cd "$(dirname "$0")/.." || exit 1
. examples/packages.sh
need_packages $BUILD_PACKAGES $TEST_PACKAGES || exit 1

build=build-tests
results=$build/results  # of each lane: failures, counts, its last suite's output
lane=build

fail() {
  echo "not ok - $1"
  echo "$1" >>"$results/$lane.failures"
  echo "0 1" >>"$results/$lane.counts"
}
finish() {
  wait
  failures=$(cat "$results"/*.failures 2>/dev/null)
  if [ -n "$failures" ]; then echo "== failed:"; echo "$failures" | sed 's/^/  /'; fi
  cat "$results"/*.counts | awk '{ good += $1; bad += $2 }
    END { print good + 0 " passed, " bad + 0 " failed"; exit (bad > 0) }'
  exit
}

# begin NAME, and ended: the lines round a suite.
begin() {
  name=$1
  began=$(date +%s)
  log=$results/$lane.log
  echo "== $name"
}
ended() {  # ended GOOD BAD STATUS
  echo "$1 $2" >>"$results/$lane.counts"
  if [ "$2" -eq 0 ] && [ "$3" != 0 ]; then fail "$name broke off (status $3)"; fi
  if [ "$(($1 + $2))" -eq 0 ]; then fail "$name checked nothing"; fi
  echo "# $name: $(($(date +%s) - began)) s"
}

# suite NAME COMMAND...: counts "ok - " and "not ok - " lines. One that ends badly without a failed
# check has broken off, which is a failure too.
suite() {
  begin "$1"
  shift
  { "$@" 2>&1; echo "status $?"; } | tee "$log" | grep -v '^status '
  sed -n "s/^not ok - /$name: /p" "$log" >>"$results/$lane.failures"
  ended "$(grep -c '^ok - ' "$log")" "$(grep -c '^not ok - ' "$log")" "$(sed -n 's/^status //p' "$log")"
}

# cases NAME PROGRAM...: a doctest program; its test cases count.
cases() {
  begin "$1"
  shift
  { "$@" 2>&1; echo "status $?"; } | tee "$log" | grep -v '^status '
  awk -v name="$name" '/^TEST CASE: / { sub(/^TEST CASE: */, ""); said = name ": " $0 }
    / ERROR: / && said { print said; said = "" }' "$log" | sort -u >>"$results/$lane.failures"
  counts=$(sed -n 's/.*test cases: *[0-9]* *| *\([0-9]*\) passed *| *\([0-9]*\) failed.*/\1 \2/p' "$log")
  status=$(sed -n 's/^status //p' "$log")
  [ -n "$counts" ] || counts="0 0"
  ended "${counts% *}" "${counts#* }" "$status"
}

rm -rf "$results"
mkdir -p "$results"

# The page is made beside the build, where what makes it can be had.
page=
if need_packages $PAGE_PACKAGES $PAGE_TEST_PACKAGES >"$results/packages.log" 2>&1; then
  page=yes
  grep '^Installing:' "$results/packages.log"
  (lane=page; suite "the page is made" sh tests/page/make.sh) >"$results/page.output" 2>&1 &
else
  tail -n 5 "$results/packages.log"
  echo "# the page is not tested: what makes it cannot be installed here"
fi

began=$(date +%s)
cmake -S . -B "$build" -DCMAKE_BUILD_TYPE=Release -DCMAKE_CXX_FLAGS_RELEASE=-O2 -DSWATHE_TESTS=ON \
  -DSWATHE_WARNINGS_AS_ERRORS=ON -DSWATHE_PRECOMPILE=ON || { fail "cmake"; finish; }
cmake --build "$build" -j "$(nproc)" || { fail "the build"; finish; }
wait
[ -z "$page" ] || cat "$results/page.output"
echo "# the build: $(($(date +%s) - began)) s"

tool=$build/swathe
faults=$PWD/$build/tests/libswathe_faults.so
memory_faults=$PWD/$build/tests/libswathe_memory_faults.so

headers() {
  if cmake --build "$build" -j "$(nproc)" --target all_verify_interface_header_sets >"$build/headers.log" 2>&1
  then echo "ok - every public header compiles alone"
  else echo "not ok - every public header compiles alone"; tail -n 30 "$build/headers.log"; fi
}

# The kept cases of every fuzz target, then mutants of them: a minute of CPU for fonts, less for the
# others, in two lanes side by side; the rooms that take text and fonts apart under sanitizers.
replay() {
  name=$1
  shift
  "$build/tests/fuzz/swathe_replay_$name" "$@" || echo "not ok - fuzz target $name"
}
mutate() {
  name=$1
  seconds=$2
  shift 2
  replay "$name" --mutate 1000000 "$seconds" "$SWATHE_SEED" "$@" tests/fuzz/corpus/"$name"/*
}
fuzz() {
  for target in tests/fuzz/*_fuzz.cpp; do
    name=$(basename "$target" _fuzz.cpp)
    replay "$name" tests/fuzz/corpus/"$name"/*
  done
  {
    mutate font 30 fonts-open/*/*.[to]tf
    mutate job 5
    mutate length 3
  } >"$build/fuzz.lane" 2>&1 &
  mutate stroke 30 fonts-open/*/*.[to]tf
  mutate rules 3
  replay everything --drawn 1000000 7 "$SWATHE_SEED"
  wait
  cat "$build/fuzz.lane"
}

page() {  # page NAME SUITE...
  [ -n "$page" ] || return 0
  name=$1
  shift
  suite "$name" sh tests/page/run.sh "$tool" "$@"
}

# Suites in two lanes side by side, for two cores; what builds in one of them; browsers, which wait
# as much as they work, beside them; what tells times after all of them, alone.
first_lane() {
  cases "unit tests" "$build/tests/swathe_tests"
  cases "unfolding against CGAL" "$build/tests/swathe_cgal_tests"
  cases "sight against cast rays" env SWATHE_VIEWPOINTS=36 "$build/tests/swathe_rays_tests"
  suite "fuzz: kept cases, and mutants for a while" fuzz
  suite "public headers" headers
  suite "the installed package" sh tests/package/package_test.sh "$build"
  suite "a program of the public headers alone" "$build/tests/swathe_public_face"
  suite "maths, the same from every compiler" python3 tests/base/maths/compilers_test.py .
  suite "many jobs" python3 tests/app/many_test.py "$tool"
  page "the page's core: faults, ends" faults ends package
  page "the page as a file" page_file
}
second_lane() {
  suite "the rooms" python3 tests/rooms_test.py
  suite "the texts" python3 tests/texts_test.py
  suite "the words" python3 tests/words_test.py
  suite "what the tool says" python3 tests/golden/golden.py check "$tool"
  suite "the same under de_DE.UTF-8" sh tests/golden/de_DE.sh "$tool" "$faults"
  suite "the report's schema" python3 tests/schema/report_test.py "$tool"
  suite "the man page and completions" python3 tests/app/manual_test.py "$tool" "$build/manual"
  suite "the schema of a job" python3 tests/schema/job_schema_test.py "$tool" "$build/manual/job.schema.json"
  suite "files whole or not at all" python3 tests/app/output_test.py "$tool" "$faults"
  suite "files of earlier runs" python3 tests/app/old_files_test.py "$tool" "$faults"
  suite "some kinds, archives, rules not met" python3 tests/app/zip_test.py "$tool" "$faults"
  suite "the questions of a new job" python3 tests/app/new_test.py "$tool"
  suite "the page as the command gives it" python3 tests/app/page_test.py "$tool"
  suite "names of any kind" python3 tests/app/names_test.py "$tool"
  suite "the same bytes" python3 tests/app/determinism_test.py "$tool" "$faults"
  suite "memory that gives out" python3 tests/app/memory_test.py "$tool" "$memory_faults"
  suite "fonts that nobody would draw" python3 tests/app/odd_fonts_test.py "$tool"
  suite "a stranger's first minutes" python3 tests/app/first_minutes_test.py "$tool"
  page "the page's core: bytes, answers" answers bytes calls browsers
}
browser_lane() {
  page "the page in browsers: paths" web_paths
  page "the page in browsers: looks, parts lit" web_looks web_linked
  page "the page in browsers: files, random actions" web_files web_random
}
(lane=second; second_lane) >"$results/second.output" 2>&1 &
(lane=browsers; browser_lane) >"$results/browsers.output" 2>&1 &
lane=first
first_lane
wait
cat "$results/second.output" "$results/browsers.output"
lane=alone
suite "jobs at the limits" python3 tests/app/limits_test.py "$tool"
suite "time and memory" python3 tests/app/cost_test.py "$tool"
page "the page's core: size and time" budgets
finish
