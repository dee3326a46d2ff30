#include <doctest/doctest.h>

#include <algorithm>
#include <set>
#include <string>

#include "swathe/form.hpp"
#include "swathe/job.hpp"

// What each key holds, for fields: by hand from the reference of the job file.
namespace swathe {
namespace {

KeyForm form_of(const std::string& key) {
  const auto all = key_forms();
  const auto found = std::ranges::find(all, key, &KeyForm::key);
  REQUIRE(found != all.end());
  return *found;
}

TEST_CASE("key forms: every key has one, in the order of its words, and a label of its own table") {
  const auto words = key_words();
  const auto forms = key_forms();
  REQUIRE(forms.size() == words.size());
  std::set<std::string> labels;
  for (std::size_t k = 0; k < forms.size(); ++k) {
    CAPTURE(forms[k].key);
    CHECK(forms[k].key == words[k].key);
    CHECK(!forms[k].label.empty());
    const std::string table = forms[k].key.substr(0, forms[k].key.rfind('.'));
    CHECK(labels.insert(table + ": " + std::string(forms[k].label)).second);
    CHECK((forms[k].kind != KeyForm::Kind::Choice || forms[k].words.size() >= 2));
  }
}

TEST_CASE("key forms: what the reference says of some") {
  const KeyForm flap = form_of("cloth.flap");
  CHECK(flap.kind == KeyForm::Kind::Length);
  CHECK(flap.range == std::pair(5.0, 1000.0));
  CHECK(flap.words.empty());

  const KeyForm joint = form_of("boards.joint");
  CHECK(to_text(joint.kind) == "choice");
  CHECK(joint.words == std::vector<std::string_view>{"lapped", "mitred"});

  const KeyForm from = form_of("bumper.from");
  CHECK(to_text(from.kind) == "end");
  CHECK(from.words == std::vector<std::string_view>{"corner", "opening"});

  CHECK(to_text(form_of("numerals.place.center").kind) == "side-place");
  CHECK(to_text(form_of("paper.sheet").kind) == "paper");
  CHECK(form_of("job.number").range == std::pair(1.0, 5.0));
  CHECK(form_of("bracket.mass").unit == "g");
  CHECK(form_of("numerals.sides").words == std::vector<std::string_view>{"auto", "all"});
  CHECK(form_of("boards.stock").counts == std::pair(2, 2));
  CHECK(to_text(form_of("frame.backed").kind) == "flag");
}

TEST_CASE("key forms: tables that may be there many times") {
  std::set<std::string_view> paths;
  for (const TableForm& table : table_forms()) {
    paths.insert(table.path);
    CHECK(table.least <= table.most);
  }
  CHECK(paths == std::set<std::string_view>{"opening", "bumper", "bracket", "numerals.place",
                                            "sight.blind"});
}

}  // namespace
}  // namespace swathe
