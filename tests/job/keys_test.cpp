#include "job/keys.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <string>

#include "job/key_path.hpp"
#include "swathe/base.hpp"
#include "swathe/job.hpp"

// What the description says of a key is what its reader holds it to, to the last step.
using namespace swathe;

namespace {

/// A job that has each table once.
std::string job_with(std::string_view path) {
  std::string text =
      new_job({"", "", "", "left 9 in from front, 2 in x 2 in", "", "20486"}).value();
  text += "\n[[numerals.place]]\nbumper = \"A\"\nside = \"left\"\n";
  text += "[[opening]]\nside = \"right\"\nwidth = \"9 in\"\n";
  text += "[[sight.blind]]\nbox = [[0, 0, 0], [1, 1, 1]]\n";
  if (path == "paper.width") text = set_value(text, "paper.sheet", "roll")->text;
  return text;
}

/// Whether the reader takes that value of the key; what it makes of it beside others is no matter.
bool takes(const Key& key, const std::string& value) {
  CAPTURE(key.path);
  CAPTURE(value);
  const auto change = set_value(job_with(key.path), with_number(key.path, 1), value);
  REQUIRE(change.has_value());
  const std::string name(key.path.substr(key.path.rfind('.') + 1));
  const auto faults = read_job(change->text, "job").faults;
  return std::ranges::none_of(faults, [&](const Refusal& fault) {
    return fault.why != Why::DoesNotFit && fault.sentence.find(name + " is ") != std::string::npos;
  });
}

std::string millimeters(double value) { return fmt::format("\"{} mm\"", plain_number(value, 6)); }
std::string angle(double value) { return fmt::format("\"{} deg\"", plain_number(value, 9)); }
std::string figures(double value) { return plain_number(value, 6); }

void check_bounds(const Key& key, double least, double most, double step,
                  std::string (*said)(double)) {
  CHECK(takes(key, said(least)));
  CHECK(takes(key, said(most)));
  CHECK_FALSE(takes(key, said(least - step)));
  CHECK_FALSE(takes(key, said(most + step)));
}

struct AgainstReader {
  const Key& key;
  int& checked;

  void operator()(const OfLength& of) const {
    ++checked;
    check_bounds(key, of.range.least.mm(), of.range.most.mm(), 0.001, millimeters);
  }
  void operator()(const OfAngle& of) const {
    ++checked;
    // A degree is no whole number of radians: just inside, just outside.
    constexpr double kStep = 1e-6;
    check_bounds(key, of.range.least.degrees() + kStep / 2, of.range.most.degrees() - kStep / 2,
                 kStep, angle);
  }
  void operator()(const OfNumber& of) const {
    ++checked;
    check_bounds(key, of.range.least, of.range.most, 0.001, figures);
  }
  void operator()(const OfCount& of) const {
    ++checked;
    check_bounds(key, of.range.least, of.range.most, 1, figures);
  }
  void operator()(const OfFlag&) const {
    ++checked;
    CHECK(takes(key, "true"));
    CHECK(takes(key, "false"));
    CHECK_FALSE(takes(key, "1"));
  }
  void operator()(const OfText& of) const {
    ++checked;
    const auto most = static_cast<std::size_t>(of.most);
    CHECK(takes(key, std::string(most, 'x')));
    CHECK_FALSE(takes(key, std::string(most + 1, 'x')));
    CHECK_FALSE(takes(key, "\"\""));
  }
  void operator()(const OfDigits& of) const {
    ++checked;
    const auto most = static_cast<std::size_t>(of.most);
    CHECK(takes(key, std::string(most, '1')));
    CHECK_FALSE(takes(key, std::string(most + 1, '1')));
  }
  void operator()(const OfChoice& of) const {
    ++checked;
    for (const std::string_view word : of.words) CHECK(takes(key, std::string(word)));
    CHECK_FALSE(takes(key, "no such word"));
  }
  void operator()(const OfColor&) const {
    ++checked;
    CHECK(takes(key, "#123456"));
    CHECK_FALSE(takes(key, "red"));
  }
  /// Of these the limits are each item's; that they take what is shown is checked for every key.
  template <class Other>
  void operator()(const Other&) const {}
};

}  // namespace

TEST_CASE("keys: the reader takes what the description allows, and nothing beside it") {
  int checked = 0;
  for (const Key& key : job_keys()) std::visit(AgainstReader{key, checked}, key.holds);
  CHECK(checked > 70);
}

TEST_CASE("keys: each stands once, with its words, in a table that is described") {
  for (const Key& key : job_keys()) {
    CAPTURE(key.path);
    CHECK(std::ranges::count(job_keys(), key.path, &Key::path) == 1);
    CHECK_FALSE(key.label.empty());
    const std::string_view table = key.path.substr(0, key.path.rfind('.'));
    CHECK(std::ranges::count(job_tables(), table, &KeyTable::path) == 1);
    CHECK(find_key(key.path) == &key);
  }
}
