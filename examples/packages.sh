# Sourced by examples/first-job.sh, examples/page.sh and tests/run.sh: the Debian and Ubuntu packages each needs.
# Asks dpkg what is there first, so that nothing is fetched twice and all works offline afterwards.

BUILD_PACKAGES="g++ cmake make pkg-config libcairo2-dev libharfbuzz-dev libfreetype-dev
  libcli11-dev libtomlplusplus-dev libfmt-dev nlohmann-json3-dev libexpected-dev libfast-float-dev
  libboost-dev libpolyclipping-dev zlib1g-dev"

TEST_PACKAGES="doctest-dev libmpfr-dev libgmp-dev libcgal-dev libeigen3-dev poppler-utils qpdf librsvg2-bin
  groff-base man-db zsh fish dpkg-dev file unzip
  libharfbuzz-bin python3 python3-jsonschema python3-ezdxf locales fonts-dejavu-core
  fonts-liberation fonts-roboto-unhinted fonts-lato fonts-freefont-ttf fonts-urw-base35
  fonts-cantarell fonts-inter"

# For the page's core, beside BUILD_PACKAGES: Debian 12 alone has them. npm and its node may be others.
PAGE_PACKAGES="emscripten clang-16 lld-16 llvm-16 ninja-build dpkg-dev patch xz-utils bzip2
  libharfbuzz-bin"
command -v npm >/dev/null 2>&1 || PAGE_PACKAGES="$PAGE_PACKAGES npm"
# For its tests.
PAGE_TEST_PACKAGES="chromium firefox-esr unzip"

# need_packages NAME...: installs those that are missing, as root or with sudo; else says the line
# to run and gives up.
need_packages() {
  missing=
  for package in "$@"; do
    status=$(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null || true)
    [ "$status" = installed ] || missing="$missing $package"
  done
  [ -n "$missing" ] || return 0
  if [ "$(id -u)" -eq 0 ]; then
    as_root=
  elif command -v sudo >/dev/null 2>&1 && { [ -t 0 ] || sudo -n true 2>/dev/null; }; then
    as_root=sudo
  else
    echo "These packages are missing; install them as root, then start again:" >&2
    echo "  apt-get install --no-install-recommends$missing" >&2
    return 1
  fi
  echo "Installing:$missing"
  $as_root apt-get update -q &&
    $as_root env DEBIAN_FRONTEND=noninteractive apt-get install -q -y --no-install-recommends $missing
}
