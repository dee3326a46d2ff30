#include "app/record.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "app/old_files.hpp"

using namespace swathe::app;

namespace {

RecordedFile file(const char* name, const char* kind, char digit) {
  return {name, kind, std::string(64, digit)};
}

const Record kRecord = {file("00-start-here.pdf", "start", 'a'), file("A-tiles.pdf", "tiles", 'b'),
                        file("A-tiles.pdf", "tiles", 'c'), file("report.json", "report", '0')};

std::vector<std::string> names_of(const Record& record) {
  std::vector<std::string> names;
  for (const RecordedFile& one : record) names.push_back(one.name);
  return names;
}

}  // namespace

TEST_CASE("record (1): what is written is read") {
  CHECK(read_record(record_text(kRecord)) == kRecord);
  CHECK(read_record(record_text({})) == Record());
}

TEST_CASE("record: a text that is not one of ours in every line is none") {
  const std::string text = record_text(kRecord);
  CHECK_FALSE(read_record(""));
  CHECK_FALSE(read_record("mine\n"));
  CHECK_FALSE(read_record(text + "mine\n"));
  for (std::size_t length = 0; length < text.size(); ++length)  // broken off
    if (const auto part = read_record(text.substr(0, length))) CHECK(part->size() < kRecord.size());
  const auto with_name = [](const std::string& name) {
    return read_record(record_text({{name, "tiles", std::string(64, 'a')}}));
  };
  CHECK(with_name("B-tiles.pdf"));
  for (const char* name : {"", "../mine", "/etc/mine", ".hidden", "..", "a\nb", "a b", "a\\b"})
    CHECK_FALSE(with_name(name));
  for (const std::string& hash : {std::string(63, 'a'), std::string(65, 'a'), std::string(64, 'A')})
    CHECK_FALSE(read_record(record_text({{"A.pdf", "tiles", hash}})));
}

TEST_CASE("old files: only what is of a kind that is made, and made no more, is to go") {
  const Record before = {file("A-fold.pdf", "tiles", 'a'), file("A-tiles.pdf", "tiles", 'b'),
                         file("book.pdf", "book", 'c'), file("B-TILES.pdf", "tiles", 'd'),
                         file("old.pdf", "a kind of another version", 'e')};
  const Record fresh = {file("A-tiles.pdf", "tiles", 'f'), file("b-tiles.pdf", "tiles", 'd')};
  const OldFiles plan =
      plan_old_files(before, fresh, [](const std::string& kind) { return kind == "tiles"; });
  CHECK(names_of(plan.to_delete) == std::vector<std::string>{"A-fold.pdf"});
  // B-TILES.pdf is b-tiles.pdf where case does not count.
  CHECK(names_of(plan.after) ==
        std::vector<std::string>{"A-tiles.pdf", "b-tiles.pdf", "book.pdf", "old.pdf"});
  for (const Record* part : {&before, &fresh})
    for (const RecordedFile& one : *part) CHECK(std::ranges::count(plan.during, one) == 1);
  CHECK(plan.during.size() == before.size() + fresh.size());
}

TEST_CASE("old files: what is told of them") {
  CHECK(deleted_text({}).empty());
  CHECK(deleted_text({{"A-fold.pdf"}, {}, true}) ==
        "Deleted 1 file of an earlier run that this one does not make: A-fold.pdf.\n");
  const std::string both = deleted_text({{"a", "b", "c", "d", "e", "f"}, {"mine.pdf"}, true});
  CHECK(both.find("6 files") != std::string::npos);
  CHECK(both.find("and 2 more") != std::string::npos);
  CHECK(both.find("Kept 1 file of an earlier run that somebody has changed: mine.pdf.") !=
        std::string::npos);
  CHECK(std::ranges::count(both, '\n') == 1);
}
