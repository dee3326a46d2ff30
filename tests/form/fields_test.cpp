#include <doctest/doctest.h>

#include <algorithm>
#include <cstdlib>
#include <string>
#include <vector>

#include "support/examples.hpp"
#include "swathe/form.hpp"
#include "swathe/job.hpp"

// How a job's keys stand. What a key is in the text is held against set_value() and remove_value(),
// which find it in another way.
namespace swathe {
namespace {

const Field& field_of(const std::vector<Field>& all, const std::string& key) {
  const auto found = std::ranges::find(all, key, &Field::key);
  REQUIRE_MESSAGE(found != all.end(), key);
  return *found;
}
bool has(const std::vector<Field>& all, const std::string& key) {
  return std::ranges::count(all, key, &Field::key) > 0;
}

std::vector<Field> fields(std::string_view text) {
  auto all = fields_of(text);
  REQUIRE_MESSAGE(all.has_value(), to_text(all.error().front()));
  return *std::move(all);
}

TEST_CASE(
    "fields (1, 2): of all examples, each value set again changes nothing, and is the file's") {
  int given = 0;
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.string());
    const std::string text = test::bytes_of(path);
    const std::string reads = job_text(read_job(text, "job").job);
    for (const Field& field : fields(text)) {
      CAPTURE(field.key);
      if (!field.given) {
        CHECK(field.place.line == 0);
        CHECK_FALSE(remove_value(text, field.key).has_value());
      }
      if (field.value.empty()) continue;
      const auto change = set_value(text, field.key, field.value);
      REQUIRE_MESSAGE(change.has_value(), to_text(change.error().front()));
      if (!field.given) continue;
      ++given;
      CHECK(change->before == field.value);
      CHECK(change->text == text);
      CHECK(job_text(read_job(change->text, "job").job) == reads);
    }
  }
  CHECK(given > 200);
}

/// The numbers of a text, and what is left without them.
std::vector<double> numbers_of(std::string& text) {
  std::vector<double> numbers;
  std::string rest;
  for (const char* at = text.data(); at < text.data() + text.size();) {
    char* end = nullptr;
    const double number = std::strtod(at, &end);
    if (end != at) {
      numbers.push_back(number);
      at = end;
    } else {
      rest += *at++;
    }
  }
  text = rest;
  return numbers;
}

TEST_CASE("fields (1): a default set as it stands reads as before") {
  const std::string text = test::bytes_of(test::example("tin-heron"));
  const JobReading before = read_job(text, "job");
  for (const Field& field : fields(text)) {
    if (field.given || field.value.empty()) continue;
    CAPTURE(field.key);
    const auto change = set_value(text, field.key, field.value);
    REQUIRE(change.has_value());
    // 240 in and 20 ft differ in their last digit.
    std::string now = job_text(read_job(change->text, "job").job), then = job_text(before.job);
    const auto a = numbers_of(now), b = numbers_of(then);
    CHECK(now == then);
    REQUIRE(a.size() == b.size());
    for (std::size_t k = 0; k < a.size(); ++k) CHECK(a[k] == doctest::Approx(b[k]).epsilon(1e-12));
  }
}

TEST_CASE("fields (2): by hand") {
  const std::string text = R"([job]
number = 20486   # ours
colour = "no key of ours"
[frame]
width = "28 in"
depth = 30
[[bumper]]
name = "A"
from = [ "front",
         "50%" ]
to = ["back", "50%"]
[[bumper]]
name = 'B'
[cloth.colors]
red = "#b5121b"
"dark blue" = "#1b3a93"
[numerals]
colour = "#ffffff"
)";
  const auto all = fields(text);
  const Field& number = field_of(all, "job.number");
  CHECK(number.given);
  CHECK(number.value == "20486");
  CHECK(number.shown == "20486");
  CHECK(number.place.line == 2);
  CHECK(number.place.column == 10);
  CHECK(field_of(all, "frame.width").shown == "28 in");
  CHECK(field_of(all, "frame.width").value == "\"28 in\"");
  CHECK(field_of(all, "frame.depth").value == "30");
  CHECK(field_of(all, "bumper.1.from").value == "[ \"front\",\n         \"50%\" ]");
  CHECK(field_of(all, "bumper.1.from").form == "bumper.from");
  CHECK(field_of(all, "bumper.2.name").shown == "B");
  CHECK_FALSE(field_of(all, "bumper.2.from").given);
  CHECK(field_of(all, "cloth.colors").value ==
        "{ \"dark blue\" = \"#1b3a93\", red = \"#b5121b\" }");
  CHECK(field_of(all, "numerals.color").given);  // as it is spelled in Britain
  CHECK(field_of(all, "cloth.flap").value == "\"2 in\"");
  CHECK(field_of(all, "job.title").value.empty());
  CHECK_FALSE(has(all, "frame.corners"));
  CHECK_FALSE(has(all, "paper.width"));
  CHECK_FALSE(has(all, "bracket.1.side"));
  CHECK(has(all, "numerals.sides"));
}

TEST_CASE("fields: an outline has no width, places no sides, a roll its width") {
  const auto all = fields(R"([frame]
corners = [[0, 0], [10, 0], [5, 8]]
[[numerals.place]]
side = "front"
[paper]
sheet = "roll"
)");
  CHECK(has(all, "frame.corners"));
  CHECK_FALSE(has(all, "frame.width"));
  CHECK_FALSE(has(all, "numerals.sides"));
  CHECK(has(all, "paper.width"));
  CHECK(has(all, "numerals.place.1.center"));
}

TEST_CASE("fields: a text that is no TOML is refused at its place") {
  const auto all = fields_of("[job]\nnumber = \n", "mine.toml");
  REQUIRE_FALSE(all.has_value());
  CHECK(all.error().front().place.file == "mine.toml");
  CHECK(all.error().front().place.line == 2);
}

}  // namespace
}  // namespace swathe
