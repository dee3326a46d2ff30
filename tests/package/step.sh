# Sourced by the tests of this folder, which each have a `folder` of their own for the log.

# One step of a test: what is said of it, and the command; the first that fails ends the test.
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
