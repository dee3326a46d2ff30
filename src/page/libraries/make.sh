#!/bin/sh
# The libraries that the core wants, for WebAssembly: zlib, FreeType, HarfBuzz, pixman, Cairo,
# Clipper and libc++ 16, from the source packages of Debian 12.
#
# usage: make.sh FOLDER     what is made: FOLDER/lib, FOLDER/include and FOLDER/licenses; left alone
#                           where nothing has changed
# env:   SWATHE_PAGE_CACHE  where the sources are kept, ~/.cache/swathe-page unless said. Once they
#                           are there, nothing is fetched.
# needs: PAGE_PACKAGES of examples/packages.sh
#
# sources.txt has each package with its version and sums, lists/ what of it is compiled, config/
# what it asks about the machine, patches/ what is changed in it, and why. No configure is run.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
mkdir -p "$1"
made=$(cd "$1" && pwd)
cache=${SWATHE_PAGE_CACHE:-${XDG_CACHE_HOME:-$HOME/.cache}/swathe-page}
work=$made/work
include=$made/include

say() { echo "libraries: $*"; }
give_up() {
  echo "libraries: $*" >&2
  exit 1
}
. "$here/toolchain.sh"
. "$here/sources.sh"

stamp=$({
  find "$here" -type f | LC_ALL=C sort | xargs cat
  emcc --version
  "clang-$LLVM" --version
} | sha256sum)
if [ "$(cat "$made/stamp" 2>/dev/null)" = "$stamp" ]; then
  say "$made has them already"
  exit 0
fi

# A header of config/ says in its first line what it was written for.
find "$here/config" -type f | while read -r header; do
  read -r _ _ name version <"$header"
  [ "$version" = "$(version_of "$name")" ] ||
    give_up "$header is for $name $version, sources.txt has $(version_of "$name"): see what that asks, then say so there"
done || exit 1

fetch_all
rm -rf "$made/stamp" "$made/lib" "$made/licenses" "$include" "$work"
mkdir -p "$made/lib" "$made/licenses" "$include/c++" "$work"

# Their warnings are theirs, but for one: a function that is cast to a type with other arguments ends
# the program where it is called.
warnings="-Wno-everything -Wcast-function-type -Wno-cast-function-type-strict -Werror"

# archive NAME LEVEL COMPILER FLAG...: compiles what lists/NAME.txt has, from this folder, for
# libNAME.a. The page is sent whole: level s, small, but where the time goes; emscripten takes that
# for "nothing inlined", which is taken back.
archive() {
  name=$1
  level=$2
  shift 2
  mkdir -p "$work/$name.o"
  xargs -P "$(nproc)" -I{} sh -c 'source=$1 object=$2/$(echo "$1" | tr / _).o; shift 2
    "$@" -c "$source" -o "$object" || exit 255' - {} "$work/$name.o" "$@" "-O$level" -finline-functions $warnings \
    <"$here/lists/$name.txt" || give_up "lib$name.a cannot be made"
  emar rcs "$made/lib/lib$name.a" "$work/$name.o"/*
}

# license NAME FILE...: what whoever passes the core on passes on with it
license() {
  name=$1
  shift
  cat "$@" >"$made/licenses/$name.txt"
}

# changed_by PACKAGE: by our patches, from this folder
changed_by() { for change in "$here/patches/$1"-*.patch; do patch -s -p1 -i "$change"; done; }

zlib() {
  unpack zlib
  cd "$work/zlib"
  cp -p zlib.h zconf.h "$include"
  license zlib LICENSE
  archive z 2 emcc
}

freetype() {
  unpack freetype
  cd "$work/freetype"
  cp -p "$here/config/freetype/ftmodule.h" include/freetype/config
  license FreeType LICENSE.TXT docs/FTL.TXT
  cp -Rp include/. "$include"
  archive freetype s emcc -DFT2_BUILD_LIBRARY -DFT_CONFIG_OPTION_SYSTEM_ZLIB -I"$include"
}

harfbuzz() {
  unpack harfbuzz --wildcards '*/src/*.h' '*/src/*.hh' '*/src/*.cc' '*/COPYING'
  cd "$work/harfbuzz"
  license HarfBuzz COPYING
  changed_by harfbuzz
  cd src
  cp -p hb.h hb-*.h "$include"
  archive harfbuzz s em++ -std=c++11 -fno-exceptions -fno-rtti -DHB_NO_MT -DHAVE_FREETYPE=1 \
    "-DHB_CONFIG_OVERRIDE_H=\"$here/config/harfbuzz/config.h\"" -I"$include"
}

pixman() {
  unpack pixman
  cd "$work/pixman/pixman"
  license pixman ../COPYING
  cp -p pixman.h pixman-version.h "$include"
  archive pixman s emcc -DPACKAGE=pixman -DHAVE_BUILTIN_CLZ -DPIXMAN_NO_TLS -I.
}

cairo() {
  unpack cairo
  cd "$work/cairo"
  license Cairo COPYING COPYING-MPL-1.1
  changed_by cairo
  cd src
  cp -p cairo.h cairo-pdf.h cairo-deprecated.h ../cairo-version.h \
    "$here/config/cairo/cairo-features.h" "$include"
  archive cairo 2 emcc -DHAVE_CONFIG_H -I"$here/config/cairo" -I. -I"$include"
}

libcxx() {
  unpack llvm-toolchain-16 --wildcards '*/libcxx/include' '*/libcxx/src' '*/libcxx/LICENSE.TXT' \
    '*/libcxxabi/include'
  cd "$work/llvm-toolchain-16/libcxx"
  license libc++ LICENSE.TXT
  cp -Rp include/. ../libcxxabi/include/. "$here/config/libc++/__config_site" "$include/c++"
  archive c++ s em++ -std=c++20 -fwasm-exceptions -nostdinc++ -isystem "$include/c++" -Isrc \
    -fvisibility=hidden -D_LIBCPP_BUILDING_LIBRARY -DLIBCXX_BUILDING_LIBCXXABI
  mv "$made/lib/libc++.a" "$made/lib/libc++$LLVM.a" # emscripten has a libc++.a of its own
}

clipper() {
  unpack libpolyclipping
  cd "$work/libpolyclipping"
  license Clipper License.txt
  changed_by libpolyclipping
  cd cpp
  mkdir "$include/polyclipping"
  cp -p clipper.hpp "$include/polyclipping"
  archive polyclipping 2 em++ -std=c++17 -I"$here/config/polyclipping" -fwasm-exceptions -nostdinc++ -isystem "$include/c++"
}

# What is headers alone is the machine's own, less all its other headers.
header_only() {
  mkdir "$include/header-only"
  for name in boost fast_float fmt nlohmann tl toml++; do
    [ -d "/usr/include/$name" ] || give_up "/usr/include/$name is missing"
    ln -s "/usr/include/$name" "$include/header-only/$name"
  done
  for package in libexpected libfast-float libfmt libtomlplusplus nlohmann-json3; do
    license "$package" "/usr/share/doc/$package-dev/copyright"
  done
  license Boost "$work/libpolyclipping/License.txt" # the same
  license musl /usr/share/emscripten/system/lib/libc/musl/COPYRIGHT
}

for one in zlib freetype harfbuzz pixman cairo libcxx clipper header_only; do
  begun=$(date +%s)
  (
    set -e
    "$one"
  )
  say "$one made in $(($(date +%s) - begun)) s"
done
rm -rf "$work"
echo "$stamp" >"$made/stamp"
