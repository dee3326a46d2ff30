#!/bin/sh
# The page's core held against the command: makes it where it is not made yet, then runs the suites.
#
# usage: run.sh [TOOL]      TOOL: the swathe to hold it against, build-tests/swathe unless said
# env:   SWATHE_PAGE_LONG   any value: the long runs, told at the head of each suite
set -u
cd "$(dirname "$0")/../.." || exit 1
SWATHE_TOOL=$(realpath "${1:-build-tests/swathe}")
export SWATHE_TOOL
. examples/packages.sh
need_packages $PAGE_TEST_PACKAGES || exit 1
mkdir -p build-page
sh examples/page.sh >build-page/run.log 2>&1 || { cat build-page/run.log; echo "not ok - the page's core is made"; exit 1; }
echo "ok - the page's core is made"

# What drives the browsers, as the lock file has it; fetched once.
driver=build-page/browsers
if ! cmp -s tests/page/package-lock.json $driver/package-lock.json || [ ! -d $driver/node_modules ]; then
  mkdir -p $driver
  cp tests/page/package.json tests/page/package-lock.json tests/page/.npmrc $driver
  (cd $driver && npm ci --silent) || { echo "not ok - what drives the browsers is fetched"; exit 1; }
fi
SWATHE_PAGE_DRIVER=$PWD/$driver
export SWATHE_PAGE_DRIVER

status=0
for suite in answers bytes faults calls ends package budgets browsers; do
  echo "-- $suite"
  node "tests/page/${suite}_test.mjs" || status=1
done
exit $status
