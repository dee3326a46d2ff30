#include "app/explain.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "app/text.hpp"
#include "swathe/job.hpp"

using namespace swathe::app;

TEST_CASE("explain: every key and every check takes two lines of 80 columns") {
  const auto names = explained_names();
  CHECK(names.size() > swathe::key_words().size());
  for (const std::string& name : names) {
    const std::string text = explanation(name);
    CAPTURE(text);
    CHECK(std::ranges::count(text, '\n') == 2);
    CHECK(text.starts_with(name + ": "));
    for (const std::string& line :
         {text.substr(0, text.find('\n')), text.substr(text.find('\n') + 1)})
      CHECK(columns_of(line.substr(0, line.find('\n'))) <= kColumns);
  }
}

TEST_CASE("explain: a name without its table is every key so called") {
  const std::string flaps = explanation("flap");
  CHECK(flaps == explanation("cloth.flap") + explanation("cloth.hook_and_loop.flap"));
  CHECK(explanation("padding").empty());
  CHECK(explanation("").empty());
}
