#define DOCTEST_CONFIG_IMPLEMENT
#include <doctest/doctest.h>

/// Under this name emscripten 3.1.6 looks for main(), which clang 16 gives another.
int begin(int count, char** words) __asm__("main");
int begin(int count, char** words) { return doctest::Context(count, words).run(); }
