#include <doctest/doctest.h>

#include <algorithm>
#include <cctype>
#include <set>
#include <string>
#include <vector>

#include "book/book_sheet.hpp"
#include "book/staple_words.hpp"
#include "book/steps.hpp"
#include "support/examples.hpp"
#include "support/label_font.hpp"
#include "support/made.hpp"
#include "support/overlaps.hpp"
#include "swathe/write.hpp"

// A day at the bench: the order of work is read step by step, with nothing at hand but what was
// bought, printed or made in an earlier step. Its order is common practice, no source; that each
// step can be done is looked up here in the book as it is printed.
namespace swathe {
namespace {

using Names = std::vector<std::string>;

/// Everything that is printed for a job, as one text a page.
struct Printed {
  Names book, sheets;
};

Printed printed_for(const Made& made) {
  const Font labels = test::label_font();
  Printed printed;
  const auto text_of = [](const Page& page) {
    std::string words;
    for (const TextMark& text : test::texts_of(page.drawing)) words += text.text + "\n";
    return words;
  };
  for (const Sheet& sheet : all_sheets(made, labels))
    for (const Page& page : sheet.pages)
      (sheet.kind == SheetKind::Book ? printed.book : printed.sheets).push_back(text_of(page));
  return printed;
}

/// What is not made at the bench, and the words by which it is found in print, on a page that also
/// says `page`.
struct Source {
  std::string name, words, page;
};

const std::vector<Source> kInBook = {{"board stock", " thick", "To buy, for all colors"},
                                     {"padding stock", " long", "To buy, for all colors"},
                                     {"cloth", " cloth\n", "To buy, for all colors"},
                                     {"wood screws", "wood screws\n", "To buy, for all colors"},
                                     {"wood glue", "wood glue", "To buy, for all colors"},
                                     {"staples", "\nstaples\n", "To buy, for all colors"},
                                     {"loop strip", "loop strip\n", "To buy, for all colors"},
                                     {"hook strip", "hook strip\n", "To buy, for all colors"},
                                     {"plan", "Seen from above", ""},
                                     {"list of cuts", "Cuts, in the order", ""},
                                     {"list of lengths across", "Lengths across", "corner "},
                                     {"list of brackets", "holes: along", "nearer edge"},
                                     {"list of match marks", "mark and distance", ""},
                                     {"list of padding", "Padding\n", "one set"},
                                     {"list of joints", "joints at", ""},
                                     {"list of hollows", "leaves hollows", "strips"},
                                     {"list of strips", "on all covers", ""},
                                     {"picture of the roll", "How the covers lie", ""},
                                     {"staple numbers", "Drive the staples", ""},
                                     {"inspector's card", "the inspector decides", ""}};
const std::vector<Source> kOnSheets = {{"printed sheets", "100 mm", ""},
                                       {"pattern", "INSIDE UP", "cover"},
                                       {"printed numerals", "umeral", ""}};

void look_for(const std::vector<Source>& sources, const Names& pages, Names& found) {
  const auto has = [](const std::string& page, const std::string& words) {
    return page.find(words) != std::string::npos;
  };
  for (const Source& source : sources)
    if (std::ranges::any_of(pages, [&](const std::string& page) {
          return has(page, source.words) && has(page, source.page);
        }))
      found.push_back(source.name);
}

Names at_hand(const Made& made, const Printed& printed) {
  Names have;
  look_for(kInBook, printed.book, have);
  look_for(kOnSheets, printed.sheets, have);
  if (!made.job.brackets.empty()) have.push_back("brackets");  // the frame's own
  return have;
}

std::string lower(std::string words) {
  std::ranges::transform(words, words.begin(), [](unsigned char c) { return std::tolower(c); });
  return words;
}

Names parts_of(const std::string& words) {
  Names parts;
  for (std::size_t from = 0; from < words.size();) {
    const std::size_t end = std::min(words.find(", ", from), words.size());
    parts.push_back(lower(words.substr(from, end - from)));
    from = end + 2;
  }
  return parts;
}

/// What is wanting at the bench: "step 3 needs ..." and the like. Empty where the day goes well.
Names wanting(const std::vector<WorkStep>& steps, const Names& tool_list, Names have) {
  Names faults, tools;
  for (const std::string& line : tool_list)
    for (const std::string& tool : parts_of(line)) tools.push_back(tool);
  for (const WorkStep& step : steps) {
    for (const std::string& need : step.needs)
      if (std::ranges::find(have, need) == have.end())
        faults.push_back(need + " for: " + step.what);
    for (const std::string& tool : parts_of(step.tools))
      if (std::ranges::none_of(tools, [&](const std::string& on) { return on.starts_with(tool); }))
        faults.push_back("tool " + tool + " for: " + step.what);
    have.insert(have.end(), step.gives.begin(), step.gives.end());
  }
  return faults;
}

auto step_with(std::vector<WorkStep>& steps, const std::string& words) {
  const auto at = std::ranges::find_if(
      steps, [&](const WorkStep& step) { return step.what.find(words) != std::string::npos; });
  REQUIRE_MESSAGE(at != steps.end(), words);
  return at;
}

Made demo() { return test::made(test::bytes_of(SWATHE_SOURCE "/examples/tin-heron.toml")); }

/// The numbers of a text, in its order.
std::vector<int> numbers_in(const std::string& words) {
  std::vector<int> numbers;
  bool in_number = false;
  for (const char c : words) {
    const bool digit = std::isdigit(static_cast<unsigned char>(c)) != 0;
    if (digit && !in_number) numbers.push_back(0);
    if (digit) numbers.back() = 10 * numbers.back() + (c - '0');
    in_number = digit;
  }
  return numbers;
}

}  // namespace

TEST_CASE("day (1, 2): nothing is wanting at the bench, for every example") {
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    const Made made = test::made(test::bytes_of(path), path.filename().string());
    const Printed printed = printed_for(made);
    const std::vector<WorkStep> steps = steps_of(made);
    CHECK(steps.size() > 10);
    for (const std::string& fault : wanting(steps, tool_lines(made), at_hand(made, printed)))
      FAIL_CHECK(fault);
    for (const WorkStep& step : steps) {
      CHECK(step.what.find_first_of("{}") == std::string::npos);
      CHECK_FALSE(step.gives.empty());
    }
    CHECK(std::ranges::find(steps.back().gives, "finished bumpers") != steps.back().gives.end());
  }
}

TEST_CASE("day: what is made is used, or it is the bumper") {
  // A name that nothing asks for is a slip of the pen in the text.
  std::set<std::string> needed, given;
  for (const auto& path : test::example_jobs())
    for (const WorkStep& step :
         steps_of(test::made(test::bytes_of(path), path.filename().string()))) {
      needed.insert(step.needs.begin(), step.needs.end());
      given.insert(step.gives.begin(), step.gives.end());
    }
  given.erase("finished bumpers");
  for (const std::string& name : given) CHECK_MESSAGE(needed.contains(name), name);
}

TEST_CASE("day: brackets fitted after the padding or the staples are noticed") {
  const Made made = demo();
  const Names have = at_hand(made, printed_for(made));
  const std::vector<WorkStep> steps = steps_of(made);
  REQUIRE(wanting(steps, tool_lines(made), have).empty());
  std::vector<WorkStep> late = steps;
  const auto brackets = step_with(late, "Drill the holes for brackets");
  const auto stapled = step_with(late, "Drive staples");
  REQUIRE(brackets < stapled);
  std::rotate(brackets, brackets + 1, stapled + 1);
  CHECK_FALSE(wanting(late, tool_lines(made), have).empty());
  // Brackets under the cloth that nobody took off are in its way.
  std::vector<WorkStep> left_on = steps;
  std::erase(step_with(left_on, "Drill the holes for brackets")->gives, "loose brackets");
  CHECK_FALSE(wanting(left_on, tool_lines(made), have).empty());
}

TEST_CASE("day: screws left off the list, and a tool left off its own, are noticed") {
  const Made made = demo();
  const Names have = at_hand(made, printed_for(made));
  for (const char* const bought : {"wood screws", "staples", "cloth", "list of brackets"}) {
    CAPTURE(bought);
    REQUIRE(std::ranges::find(have, bought) != have.end());
    Names less = have;
    std::erase(less, bought);
    CHECK_FALSE(wanting(steps_of(made), tool_lines(made), less).empty());
  }
  Names tools = tool_lines(made);
  std::erase_if(tools, [](const std::string& line) { return line.find("rill") != line.npos; });
  CHECK_FALSE(wanting(steps_of(made), tools, have).empty());
}

TEST_CASE("day: joining, trying, padding, covering and folding stand in that order") {
  const Made made = demo();
  std::vector<WorkStep> steps = steps_of(made);
  auto before = step_with(steps, "Print the test page");
  for (const char* const next :
       {"Cut the boards", "Join the boards", "Hang the bare boards", "Drill the holes for brackets",
        "Cut the padding", "Lay out each cover", "cut the cloth", "Wrap the cloth", "Drive staples",
        "fold the pleat", "fold the ears", "Fold the tongue", "back on their bolts",
        "Cut the windows", "Hang the bumpers"}) {
    CAPTURE(next);
    const auto at = step_with(steps, next);
    CHECK(before < at);
    before = at;
  }
}

TEST_CASE("day (3): every staple is driven once, in the order of the numbers") {
  // Its two bumpers are each other's mirror image, so that one range is told for both.
  const Made made = demo();
  REQUIRE(made.patterns[0].staples.size() == made.patterns[1].staples.size());
  int next = 1;
  for (const WorkStep& step : steps_of(made)) {
    if (std::ranges::find(step.needs, "staple numbers") == step.needs.end()) continue;
    const std::vector<int> numbers = numbers_in(step.what);
    REQUIRE_FALSE(numbers.empty());
    CHECK_MESSAGE(numbers.front() == next, step.what);
    next = numbers.back() + 1;
  }
  CHECK(next == static_cast<int>(made.patterns[0].staples.size()) + 1);
}

TEST_CASE("staples' numbers: of each bumper where they differ") {
  using On = Staple::On;
  const auto staple = [](int order, On on, int corners) {
    return Staple{{100.0 + order, 50}, false, order, on, corners};
  };
  Made made = demo();
  made.patterns[0].staples = {staple(1, On::Flap, 0), staple(2, On::Flap, 0),
                              staple(3, On::Flap, 1), staple(4, On::Ear, 0)};
  made.patterns[1].staples = {staple(1, On::Flap, 0), staple(2, On::Flap, 0),
                              staple(3, On::Flap, 1), staple(4, On::Flap, 1)};
  CHECK(staples_of(made, On::Flap, 0) == "1 to 2");
  CHECK(staples_of(made, On::Flap, 1) == "A 3, B 3 to 4");
  CHECK(flap_staples(made) == "A 1 to 3, B 1 to 4");
  CHECK(staples_of(made, On::Ear) == "A 4");
  CHECK(staples_of(made, On::Tongue).empty());
}

}  // namespace swathe
