#include "app/explain.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "app/everyday_words.hpp"
#include "app/text.hpp"
#include "job/keys.hpp"
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
  CHECK(explanation("").empty());
  CHECK(explanation("cloth flap") == explanation("cloth.flap"));
  CHECK(explanation("staple spacing") == explanation("cloth.staple_spacing"));
}

TEST_CASE("explain: a table lists its keys") {
  const std::string cloth = explanation("cloth");
  CHECK(cloth.starts_with("[cloth]: "));
  CHECK(explanation("bumper").starts_with("[[bumper]]: "));
  for (const swathe::KeyWords& key : swathe::key_words())
    CHECK((cloth.find(key.key + " ") != std::string::npos) == key.key.starts_with("cloth."));
}

TEST_CASE("explain: everyday words lead to keys, tables and checks that there are") {
  CHECK(everyday_words().size() > 100);
  for (const EverydayWord& word : everyday_words()) {
    CAPTURE(word.word);
    CHECK_FALSE(word.names.empty());
    CHECK(names_about(word.word) == word.names);  // none is there twice
    for (const std::string& name : word.names) {
      CAPTURE(name);
      CHECK_FALSE(explanation(name).empty());
      const bool table =
          std::ranges::count(swathe::job_tables(), name, &swathe::KeyTable::path) > 0;
      const std::string first = table ? "[" + name + "]" : name + ": ";
      CHECK(explanation(word.word).find(first) != std::string::npos);
    }
  }
  for (const char* word : {"noodle", "Noodles", "foam", "plywood", "wood", "fabric", "staples",
                           "strap", "paper size", "team", "color", "colors", "colour"})
    CHECK_FALSE(explanation(word).empty());
}

TEST_CASE(
    "explain: of an unknown word, what has it in its words goes before what is spelled alike") {
  CHECK(meant_by("bench") == "these have to do with it: bumper.name");
  CHECK(meant_by("selvedges") == "these have to do with it: cloth.roll_width");
  CHECK(meant_by("cloth.flop") == "the nearest known one is cloth.flap");
  CHECK(meant_by("noodel") == "the nearest known one is noodle");
}
