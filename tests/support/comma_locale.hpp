#pragma once

#include <doctest/doctest.h>

#include <clocale>
#include <cstdio>
#include <cstdlib>
#include <locale>
#include <string>

#include "support/commands.hpp"

namespace swathe::test {

/// As long as it exists the program runs in de_DE, where a number has a decimal comma. The locale
/// is made for it alone (Debian package: locales); a test fails without.
class CommaLocale {
 public:
  CommaLocale() : before_(std::setlocale(LC_ALL, nullptr)) {
    // Its warnings end it with 1.
    run("localedef -i de_DE -f UTF-8 " + folder_.file("de_DE.UTF-8") + " >/dev/null 2>&1 || true");
    setenv("LOCPATH", folder_.file("").c_str(), 1);
    REQUIRE(std::setlocale(LC_ALL, "de_DE.UTF-8") != nullptr);
    std::locale::global(std::locale("de_DE.UTF-8"));
    char text[16];
    std::snprintf(text, sizeof text, "%.1f", 0.5);
    REQUIRE(std::string(text) == "0,5");
  }
  CommaLocale(const CommaLocale&) = delete;
  CommaLocale& operator=(const CommaLocale&) = delete;
  ~CommaLocale() {
    std::locale::global(std::locale::classic());
    std::setlocale(LC_ALL, before_.c_str());
    unsetenv("LOCPATH");
  }

 private:
  TemporaryFolder folder_;
  std::string before_;
};

}  // namespace swathe::test
