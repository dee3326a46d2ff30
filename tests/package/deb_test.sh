#!/bin/sh
# The Debian package: built, read by lintian, installed by apt with what it depends on in a clean
# Debian 12 that debootstrap makes, and the main job run there by a plain user, to the same bytes as
# from the build. Then the -dev package with the README's example, and both taken away again.
# Takes minutes, root, a network, and the packages debootstrap, lintian, dpkg-dev and file.
# usage: deb_test.sh [BUILD_FOLDER]     MIRROR=URL for another mirror than the one apt uses here
set -u
top=$(cd "$(dirname "$0")/../.." && pwd)
folder=$(mktemp -d) || exit 1
build=${1:-$folder/build}
root=$folder/root
trap 'umount "$root/proc" 2>/dev/null; rm -rf "$folder"' EXIT

. "$top/tests/package/step.sh"
release=bookworm
mirror=${MIRROR:-$(apt-get indextargets --format '$(RELEASE) $(SITE)' 'Created-By: Packages' |
  sed -n "s/^$release //p" | head -n 1)}
has_mirror() { test -n "$mirror" || { echo "apt has no source of $release here: set MIRROR"; false; }; }
inside() { chroot "$root" env -i PATH=/usr/sbin:/usr/bin:/sbin:/bin HOME=/root LC_ALL=C.UTF-8 \
  DEBIAN_FRONTEND=noninteractive "$@"; }
as_maker() { inside setpriv --reuid maker --regid maker --init-groups env HOME=/home/maker \
  sh -ec 'cd && "$@"' sh "$@"; }
install() { inside apt-get install -q -y --no-install-recommends "$@"; }

make_packages() {
  cmake -S "$top" -B "$build" -DCMAKE_INSTALL_PREFIX=/usr -DSWATHE_TESTS=OFF &&
    cmake --build "$build" -j "$(nproc)" && rm -f "$build"/*.deb &&
    cmake --build "$build" --target package && mkdir -p "$folder/debs" &&
    cp "$build"/*.deb "$folder/debs/"
}
clean_debian() {
  has_mirror && debootstrap --variant=minbase "$release" "$root" "$mirror" &&
    mount -t proc none "$root/proc" && inside apt-get update -q &&
    inside useradd --create-home maker && cp "$folder"/debs/*.deb "$root/tmp/"
}
readme_example() {
  sed -n '/^```cpp$/,/^```$/p' "$top/README.md" | sed '/^```/d' >"$root/home/maker/main.cpp"
  as_maker sh -c 'c++ -std=c++20 main.cpp -o user $(pkg-config --cflags --static --libs swathe)' &&
    as_maker ./user tin-heron.toml
}
nothing_left() {
  left=$(find "$root" -xdev -name '*swathe*' -not -path "$root/tmp/*" -not -path "$root/home/*")
  echo "$left"
  test -z "$left"
}

step "the packages are built" make_packages
step "lintian finds nothing in them" lintian --fail-on error,warning "$folder"/debs/*.deb
step "a clean Debian is made" clean_debian
step "apt installs the command there" install "/tmp/$(basename "$folder"/debs/swathe_*.deb)"
cp "$top/examples/tin-heron.toml" "$root/home/maker/"
step "a plain user makes the job there" as_maker swathe make tin-heron.toml -o out
cp "$top/examples/tin-heron.toml" "$folder/"
step "so does the build, here" sh -c "cd '$folder' && '$build/swathe' make tin-heron.toml -o out"
step "and the bytes are the same" diff -r "$folder/out" "$root/home/maker/out"
step "the user, not root, owns them" test "$(stat -c %u "$root/home/maker/out/report.json")" -ge 1000
step "apt installs the library there" install g++ pkg-config \
  "/tmp/$(basename "$folder"/debs/libswathe-dev_*.deb)"
step "the README's example is built with it and runs" readme_example
step "both are purged" inside apt-get purge -q -y swathe libswathe-dev
step "and nothing of them is left" nothing_left
for deb in "$folder"/debs/*.deb; do
  echo "# $(basename "$deb"): $(stat -c %s "$deb") bytes, $(dpkg-deb -f "$deb" Installed-Size) KiB installed"
done
echo "# depends: $(dpkg-deb -f "$folder"/debs/swathe_*.deb Depends)"
