# Sourced by make.sh: Debian's source packages, fetched once into $cache and unpacked from there.

packages() { grep '^[a-z]' "$here/sources.txt"; }
version_of() { awk -v name="$1" '$1 == name { print $2 }' "$here/sources.txt"; }
# sums_of PACKAGE: as sha256sum wants them
sums_of() {
  awk -v name="$1" '/^[a-z]/ { on = $1 == name } on && /^  / { print $1 "  " $2 }' "$here/sources.txt"
}
# file_of PACKAGE ENDING
file_of() { sums_of "$1" | sed -n "s/^[0-9a-f]*  \(.*$2\)\$/\1/p"; }
have() { (cd "$cache" && sums_of "$1" | sha256sum --check --status 2>/dev/null); }

# Debian's list of source packages is read into a folder of our own: the machine's stay as they are.
apt_lists=$cache/apt
our_apt() {
  apt-get -q -o Dir::Etc::SourceList="$apt_lists/sources.list" -o Dir::Etc::SourceParts=/dev/null \
    -o Dir::State::Lists="$apt_lists/lists" -o Dir::Cache::pkgcache= -o Dir::Cache::srcpkgcache= \
    -o APT::Sandbox::User="$(id -un)" "$@"
}
read_lists() {
  [ ! -f "$apt_lists/read" ] || return 0
  mkdir -p "$apt_lists/lists/partial"
  apt-get indextargets --format 'deb-src $(REPO_URI) $(CODENAME) $(COMPONENT) $(ORIGIN)' |
    sed -n 's/ Debian$//p' | sort -u >"$apt_lists/sources.list"
  [ -s "$apt_lists/sources.list" ] || give_up "apt has no list of Debian's packages: run apt-get update"
  our_apt update >"$apt_lists/log" 2>&1 || give_up "apt-get update failed: $apt_lists/log"
  touch "$apt_lists/read"
}
# The archive of security updates lists packages that it has passed on to the main one, and gives
# them no more: those are asked of the main one. Their sums say whether they are the same.
# fetch PACKAGE VERSION whole|tar
fetch() {
  say "fetching $1 $2"
  read_lists
  only=
  [ "$3" = whole ] || only=--tar-only
  (cd "$cache" && { our_apt source --download-only $only "$1=$2" ||
    our_apt source --download-only $only "$1/bookworm"; } >"$apt_lists/log" 2>&1) || {
    rm "$apt_lists/read" # so that the next run reads the lists anew
    give_up "$1 $2 cannot be fetched: $apt_lists/log; if Debian has another version by now, say it in $here/sources.txt"
  }
  have "$1" || give_up "$1 $2 has other bytes than $here/sources.txt says"
}
fetch_all() {
  mkdir -p "$cache"
  packages | while read -r name version how; do
    have "$name" || fetch "$name" "$version" "$how" </dev/null
  done || exit 1
  rm -rf "$apt_lists"
}

# unpack PACKAGE [WHAT OF IT]: into $work/PACKAGE, with Debian's patches where sources.txt says so
unpack() {
  package=$1
  shift
  description=$(file_of "$package" '\.dsc')
  if [ -n "$description" ]; then
    dpkg-source --no-copy -x "$cache/$description" "$work/$package" >"$work/log" 2>&1 ||
      give_up "$package cannot be unpacked: $(cat "$work/log")"
  else
    mkdir "$work/$package"
    tar -x --strip-components=1 -C "$work/$package" \
      -f "$cache/$(file_of "$package" '\.orig\.tar\..*')" "$@"
  fi
}
