#!/bin/sh
# From a fresh checkout to the sheets of the example job: installs what is missing (and says so),
# builds into build/, makes examples/tin-heron.toml into out/.
set -eu
cd "$(dirname "$0")/.."
. examples/packages.sh
need_packages $BUILD_PACKAGES

cmake -S . -B build -DCMAKE_BUILD_TYPE=Release -DCMAKE_CXX_FLAGS_RELEASE=-O2 -DSWATHE_TESTS=OFF -DSWATHE_PRECOMPILE=ON
cmake --build build -j "$(nproc)"
build/swathe make examples/tin-heron.toml -o out

cat <<'END'

Done. Look at:
  out/               the sheets as PDF: patterns, numerals, the build book; and the report
Next:
  build/swathe check examples/tin-heron.toml
  build/swathe new my-robot.toml      asks about your own robot, and writes its job file
END
