#!/bin/sh
# The golden suite where a number has a decimal comma: the locale is made for this run alone, and
# the faults library sets it in the tool, as a program that links the library might.
# usage: de_DE.sh TOOL FAULTS_LIBRARY
set -u
here=$(dirname "$0")
folder=$(mktemp -d) || exit 1
trap 'rm -rf "$folder"' EXIT
localedef -i de_DE -f UTF-8 "$folder/de_DE.UTF-8" >/dev/null 2>&1
unset LC_ALL
# The system's own words for its errors stay as they are: app never asks for others.
export LOCPATH="$folder" LANG=de_DE.UTF-8 LC_NUMERIC=de_DE.UTF-8 LC_MESSAGES=C
if [ "$(locale decimal_point 2>/dev/null)" = "," ]; then
  echo "ok - the locale de_DE.UTF-8 is set: a decimal comma"
else
  echo "not ok - the locale de_DE.UTF-8 cannot be set (Debian package: locales)"
  exit 1
fi
# The library must really bring the comma into a program: printf is one that shows it.
comma=$(LD_PRELOAD=$2 SWATHE_TEST_LOCALE=1 python3 -c 'import ctypes
libc = ctypes.CDLL(None); text = ctypes.create_string_buffer(16)
libc.snprintf(text, 16, b"%.1f", ctypes.c_double(0.5)); print(text.value.decode())')
if [ "$comma" = "0,5" ]; then
  echo "ok - the locale reaches a program through the faults library"
else
  echo "not ok - the locale does not reach a program through the faults library: $comma"
  exit 1
fi
LD_PRELOAD=$2 SWATHE_TEST_LOCALE=1 PYTHONUTF8=1 python3 "$here/golden.py" check "$1"
