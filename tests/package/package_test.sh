#!/bin/sh
# The README's library example, built against an installed swathe as somebody else would.
# usage: package_test.sh BUILD_FOLDER
set -u
build=$(cd "$1" && pwd)
top=$(cd "$(dirname "$0")/../.." && pwd)
folder=$(mktemp -d) || exit 1
trap 'rm -rf "$folder"' EXIT

step() {  # step WHAT COMMAND...
  what=$1
  shift
  if "$@" >"$folder/log" 2>&1; then
    echo "ok - $what"
  else
    echo "not ok - $what"
    sed 's/^/    /' "$folder/log" | tail -n 30
    exit 1
  fi
}

# The first block of C++ in the README, as it stands there.
mkdir "$folder/user"
cp "$top/tests/package/CMakeLists.txt" "$folder/user/"
sed -n '/^```cpp$/,/^```$/p' "$top/README.md" | sed '/^```/d' >"$folder/user/main.cpp"
step "the README has a library example" test -s "$folder/user/main.cpp"
step "which takes at most 15 lines" test "$(grep -c . "$folder/user/main.cpp")" -le 15

step "swathe installs" cmake --install "$build" --prefix "$folder/prefix"
step "find_package(swathe) finds it" cmake -S "$folder/user" -B "$folder/user/build" \
  -DCMAKE_PREFIX_PATH="$folder/prefix" -DCMAKE_BUILD_TYPE=Release
step "the example builds" cmake --build "$folder/user/build"
cd "$folder" && cp "$top/examples/tin-heron.toml" . && mkdir out
step "and runs" "$folder/user/build/user" tin-heron.toml
step "the installed command runs" "$folder/prefix/bin/swathe" check tin-heron.toml
grep -rlE "$build|$top" "$folder/prefix/lib"*/cmake "$folder/prefix/include" >"$folder/names" 2>/dev/null
step "the installed package names no folder of the build" test ! -s "$folder/names"
