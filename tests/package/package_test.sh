#!/bin/sh
# The README's library example, built against an installed swathe as somebody else would, with CMake
# and with pkg-config; and the command, which needs nothing but itself wherever it is put.
# usage: package_test.sh BUILD_FOLDER
set -u
build=$(cd "$1" && pwd)
top=$(cd "$(dirname "$0")/../.." && pwd)
folder=$(mktemp -d) || exit 1
trap 'rm -rf "$folder"' EXIT

. "$top/tests/package/step.sh"

# Runs a command where nothing of the sources or the build can be seen (this suite wants root).
without_sources() {
  unshare -m sh -ec 'mount -t tmpfs none "$1"; mount -t tmpfs none "$2"; shift 2; exec "$@"' \
    sh "$build" "$top" "$@"
}

cmake_user() {  # cmake_user PREFIX BUILD: the example by find_package
  cmake -S "$folder/user" -B "$2" -DCMAKE_PREFIX_PATH="$1" -DCMAKE_BUILD_TYPE=Release &&
    cmake --build "$2"
}

pkg_config_user() {  # pkg_config_user PREFIX PROGRAM: the example by the .pc file
  pc=$(dirname "$(find "$1" -name swathe.pc)")
  PKG_CONFIG_PATH=$pc pkg-config --validate swathe &&
    flags=$(PKG_CONFIG_PATH=$pc pkg-config --cflags --static --libs swathe) &&
    c++ -std=c++20 "$folder/user/main.cpp" -o "$2" $flags
}

# The first block of C++ in the README, as it stands there.
mkdir "$folder/user"
cp "$top/tests/package/CMakeLists.txt" "$folder/user/"
sed -n '/^```cpp$/,/^```$/p' "$top/README.md" | sed '/^```/d' >"$folder/user/main.cpp"
step "the README has a library example" test -s "$folder/user/main.cpp"
step "which takes at most 15 lines" test "$(grep -c . "$folder/user/main.cpp")" -le 15

step "swathe installs" cmake --install "$build" --prefix "$folder/prefix"
cd "$folder" && cp "$top/examples/tin-heron.toml" . || exit 1
step "the command runs from the build" "$build/swathe" make tin-heron.toml -o from-build
step "the installed command runs" prefix/bin/swathe make tin-heron.toml -o from-prefix
step "and makes the same bytes" diff -r from-build from-prefix
for file in man/man1/swathe.1.gz bash-completion/completions/swathe zsh/*/_swathe \
  fish/vendor_completions.d/swathe.fish swathe/job.schema.json; do
  step "share/$file is installed" test -s "$(find prefix/share -path "prefix/share/$file")"
done
step "find_package(swathe) serves the example" cmake_user "$folder/prefix" user/build
step "pkg-config swathe serves the example" pkg_config_user "$folder/prefix" user/by-pkg-config
step "the two say the same of the job" sh -c \
  'user/build/user tin-heron.toml >one && user/by-pkg-config tin-heron.toml >two && test -s one && diff one two'
grep -rlE "$build|$top" prefix/lib*/cmake prefix/lib*/pkgconfig prefix/include >names 2>/dev/null
step "the installed package names no folder of the build" test ! -s names

step "CPack makes the Debian packages" cmake --build "$build" --target package
package=$(find "$build" -maxdepth 1 -name 'swathe_*.deb')
depends=$(dpkg-deb -f "$package" Depends)
for library in libcairo2 libharfbuzz0b libfreetype6; do
  step "the command's package depends on $library" test "${depends#*"$library "}" != "$depends"
done

page=$top/build-page/swathe.html
if [ -e "$page" ]; then  # where the page was made
  step "the command's package unpacks" dpkg-deb -x "$package" unpacked
  step "and its command gives the page" unpacked/usr/bin/swathe page given.html
  step "which is the one that was made" cmp given.html "$page"
fi

mkdir "$folder/host" && cp "$top/tests/package/host/CMakeLists.txt" "$folder/user/main.cpp" "$folder/host/"
step "a project that adds the sources keeps its build type and flags" \
  cmake -S host -B host/build -DSWATHE_SOURCE="$top"

mv prefix moved && rm -r user/build
step "find_package(swathe) serves the example from where the prefix was moved" \
  cmake_user "$folder/moved" user/build
step "so does pkg-config" pkg_config_user "$folder/moved" user/by-pkg-config
step "the sources can be hidden" without_sources test ! -e "$top/README.md"
step "without them the moved command runs" without_sources moved/bin/swathe make tin-heron.toml -o from-moved
step "and makes the same bytes still" diff -r from-build from-moved
step "without them the example runs" without_sources user/by-pkg-config tin-heron.toml
