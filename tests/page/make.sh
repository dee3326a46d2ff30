#!/bin/sh
# What the page's tests want: the page, and what drives the browsers. A check for each.
cd "$(dirname "$0")/../.." || exit 1
. examples/packages.sh
need_packages $PAGE_TEST_PACKAGES || exit 1
mkdir -p build-page
sh examples/page.sh >build-page/run.log 2>&1 || { cat build-page/run.log; echo "not ok - the page is made"; exit 1; }
echo "ok - the page is made"

# As the lock file has it; fetched once.
driver=build-page/browsers
if ! cmp -s tests/page/package-lock.json $driver/package-lock.json || [ ! -d $driver/node_modules ]; then
  mkdir -p $driver
  cp tests/page/package.json tests/page/package-lock.json tests/page/.npmrc $driver
  (cd $driver && npm ci --silent) || { echo "not ok - what drives the browsers is fetched"; exit 1; }
fi
echo "ok - what drives the browsers is there"
