#include <doctest/doctest.h>
#include <fmt/format.h>

#include <map>
#include <sstream>

#include "job/least_job.hpp"
#include "job/read_tables.hpp"
#include "swathe/job.hpp"

using namespace swathe;
using namespace swathe::test;

namespace {

std::string table_of(const std::string& key) { return key.substr(0, key.rfind('.')); }
std::string name_of(const std::string& key) { return key.substr(key.rfind('.') + 1); }

bool in_list(const std::string& table) {
  return table == "opening" || table == "bumper" || table == "bracket" ||
         table == "numerals.place" || table == "sight.blind";
}

using Keys = std::map<std::string, std::string>;  // "cloth.flap" to its value

/// A job of these keys alone.
std::string job_of(const Keys& keys) {
  std::map<std::string, std::string> tables;
  for (const auto& [key, value] : keys)
    tables[table_of(key)] += fmt::format("{} = {}\n", name_of(key), value);
  std::string text;
  for (const auto& [table, lines] : tables)
    text += (in_list(table) ? "[[" + table + "]]\n" : "[" + table + "]\n") + lines;
  return text;
}

/// What every job needs, and what a table needs to be there at all.
Keys needed_beside(const std::string& table) {
  Keys keys = {{"job.number", "\"20486\""}};
  for (const KeyWords& words : key_words()) {
    const std::string of = table_of(words.key);
    if (words.given == Given::Needed && (of == "frame" || of == "bumper" || of == table))
      keys[words.key] = words.value;
  }
  return keys;
}

/// Keys that have a meaning only beside others.
void add_companions(const std::string& key, Keys& keys) {
  if (key == "frame.corners" || key == "frame.sides") {
    keys.erase("frame.width");
    keys.erase("frame.depth");
    for (const KeyWords& words : key_words())
      if (words.key == "frame.corners" || words.key == "frame.sides") keys[words.key] = words.value;
  }
  if (key == "bracket.holes_from") {  // which another `at` says by itself
    keys["bracket.at"] = "\"50%\"";
    keys["bracket.holes"] = "[[\"1/2 in\", \"1 in\"]]";
  }
  if (key == "paper.width") keys["paper.sheet"] = "\"roll\"";
}

std::string read_without_fault(const std::string& text) {
  const JobReading reading = read_job(text, "job");
  REQUIRE_MESSAGE(reading.faults.empty(), text << all_sentences(reading));
  return job_text(reading.job);
}

/// 20 ft and 240 in differ in the last bit of their millimeters.
bool same_but_for_rounding(const std::string& a, const std::string& b) {
  std::istringstream words_a(a), words_b(b);
  for (std::string x, y; words_a >> x;) {
    if (!(words_b >> y)) return false;
    const auto p = x.find_first_of("0123456789"), q = y.find_first_of("0123456789");
    if (x != y &&
        (p == std::string::npos || q == std::string::npos ||
         std::stod(x.substr(p)) != doctest::Approx(std::stod(y.substr(q))).epsilon(1e-12)))
      return false;
  }
  return !(words_b >> std::ws).good();
}

/// Every line of the new job that shows a key, put in force or not.
std::set<std::string> keys_shown() {
  std::set<std::string> keys;
  std::istringstream lines{std::string(new_job_text())};
  std::string table;
  for (std::string line; std::getline(lines, line);) {
    if (line.starts_with("# ")) line = line.substr(2);
    const auto is = line.find(" = ");
    if (line.starts_with('['))
      table =
          line.substr(line.find_first_not_of('['), line.find(']') - line.find_first_not_of('['));
    else if (is != std::string::npos && line.find_first_of(" :\"") == is)
      keys.insert(table + "." + line.substr(0, is));
  }
  return keys;
}

/// Every key that the readers ask for, and each table, from a job that has all tables.
std::set<std::string> keys_asked_for() {
  Keys all;
  for (const std::string table : {"opening", "bracket", "numerals.place", "sight.blind"})
    for (const auto& [key, value] : needed_beside(table)) all[key] = value;
  const std::string text = job_of(all);
  const toml::table root = toml::parse(text);
  JobFile file(PlaceFinder(text, "job"));
  TableReader top(file, &root, "", "");
  read_tables(top);
  REQUIRE(file.reading.faults.empty());
  return file.keys;
}

std::set<std::string> keys_in_words() {
  std::set<std::string> keys;
  for (const KeyWords& words : key_words()) keys.insert(words.key);
  return keys;
}

}  // namespace

TEST_CASE("new job: every key that is read has words, and only those") {
  const std::set<std::string> asked = keys_asked_for(), words = keys_in_words();
  CHECK(asked.size() > words.size());
  for (const std::string& key : asked) {
    const auto below = asked.lower_bound(key + ".");
    const bool table = below != asked.end() && below->starts_with(key + ".");
    CAPTURE(key);
    CHECK(words.contains(key) == !table);
  }
  for (const std::string& key : words) CHECK_MESSAGE(asked.contains(key), key);
}

TEST_CASE("new job: it shows every key, and none without words; the whys stay out of it") {
  CHECK(keys_shown() == keys_in_words());
  CHECK(new_job_text().find("#:") == std::string_view::npos);
  for (const KeyWords& words : key_words()) {
    CAPTURE(words.key);
    CHECK(!words.value.empty());
    CHECK(!words.meaning.empty());
    CHECK(words.why.ends_with('.'));
  }
}

TEST_CASE("new job: a default is what a job has without the key; others change the job") {
  for (const KeyWords& words : key_words()) {
    if (words.given == Given::Needed) continue;
    CAPTURE(words.key);
    const Keys without = needed_beside(table_of(words.key));
    Keys with = without;
    with[words.key] = words.value;
    add_companions(words.key, with);
    if (words.key == "job.number") with[words.key] = "\"1\"";  // the others need one
    const bool same = same_but_for_rounding(read_without_fault(job_of(with)),
                                            read_without_fault(job_of(without)));
    CHECK(same == (words.given == Given::Default));
  }
}

TEST_CASE("new job: without a key that is needed a job is refused") {
  for (const KeyWords& words : key_words()) {
    if (words.given != Given::Needed) continue;
    CAPTURE(words.key);
    Keys keys = needed_beside(table_of(words.key));
    keys.erase(words.key);
    std::string text = job_of(keys);
    for (const char* table : {"sight.blind", "numerals.place"})  // they need but one key
      if (table_of(words.key) == table) text += fmt::format("[[{}]]\n", table);
    const Refusal fault = only_fault(text);
    CHECK(fault.why == Why::Missing);
    CHECK(fault.sentence.find(name_of(words.key) + " is missing") != std::string::npos);
  }
}
