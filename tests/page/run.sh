#!/bin/sh
# The page and its core held against the command: makes them where they are not made yet, then runs
# all suites. Where suites are named it runs these, of what is made.
#
# usage: run.sh [TOOL [SUITE...]]   TOOL: the swathe to hold it against, build-tests/swathe unless
#                                   said; SUITE: NAME of NAME_test.mjs
# env:   SWATHE_PAGE_LONG           any value: the long runs, told at the head of each suite
set -u
cd "$(dirname "$0")/../.." || exit 1
SWATHE_TOOL=$(realpath "${1:-build-tests/swathe}")
SWATHE_PAGE_DRIVER=$PWD/build-page/browsers
export SWATHE_TOOL SWATHE_PAGE_DRIVER
[ $# -eq 0 ] || shift
suites=$*
if [ -z "$suites" ]; then
  sh tests/page/make.sh || exit 1
  suites=$(cd tests/page && for file in *_test.mjs; do echo "${file%_test.mjs}"; done)
fi

status=0
for suite in $suites; do
  echo "-- $suite"
  node "tests/page/${suite}_test.mjs" || status=1
done
exit $status
