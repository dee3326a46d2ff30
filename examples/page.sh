#!/bin/sh
# From a fresh checkout to the page: installs what is missing (and says so), makes the libraries and
# the core for WebAssembly and puts the page around it, all into build-page/. Debian 12 alone.
#
# env: SWATHE_PAGE_CACHE   where fetched sources are kept (src/page/libraries/make.sh)
set -eu
cd "$(dirname "$0")/.."
. examples/packages.sh
need_packages $BUILD_PACKAGES $PAGE_PACKAGES

sh src/page/libraries/make.sh build-page/libraries
sh src/page/core/make.sh build-page
sh src/page/module/make.sh build-page
sh src/page/web/make.sh build-page

cat <<'END'

Made:
  build-page/swathe.html   the page: one file, opened from a disk or any web server
  build-page/module/       the core as a module, for a page or for node: begin at swathe.d.ts
Next:
  sh tests/page/run.sh     holds it against the command, in node and in browsers
END
