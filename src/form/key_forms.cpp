#include <algorithm>
#include <array>
#include <variant>

#include "job/keys.hpp"
#include "swathe/form.hpp"

namespace swathe {
namespace {

using Kind = KeyForm::Kind;
using Words = std::vector<std::string_view>;

std::pair<double, double> in_mm(const LengthRange& range) {
  return {range.least.mm(), range.most.mm()};
}
std::pair<int, int> counts(const CountRange& range) { return {range.least, range.most}; }

/// Fills in what a key's description says of its values.
struct Filled {
  KeyForm& form;

  void operator()(const OfLength& of) { length(Kind::Length, of.range); }
  void operator()(const OfLengths& of) {
    length(Kind::Lengths, of.range);
    form.counts = counts(of.count);
  }
  void operator()(const OfLengthOr& of) {
    length(Kind::Length, of.range);
    form.words = of.words;
  }
  void operator()(const OfPoints& of) {
    length(Kind::Points, of.range);
    form.counts = counts(of.count);
  }
  void operator()(const OfAngle& of) {
    form.kind = Kind::Angle;
    form.range = {of.range.least.degrees(), of.range.most.degrees()};
  }
  void operator()(const OfNumber& of) {
    form.kind = Kind::Number;
    form.range = {of.range.least, of.range.most};
    form.unit = of.unit;
  }
  void operator()(const OfCount& of) {
    form.kind = Kind::Count;
    form.range = counts(of.range);
  }
  void operator()(const OfFlag&) {
    form.kind = Kind::Flag;
    form.words = {"true", "false"};
  }
  void operator()(const OfText& of) { characters(Kind::Text, of.most); }
  void operator()(const OfDigits& of) { characters(Kind::Digits, of.most); }
  void operator()(const OfChoice& of) {
    form.kind = Kind::Choice;
    form.words = of.words;
  }
  void operator()(const OfColor&) { form.kind = Kind::Color; }
  void operator()(const OfColors& of) { list(Kind::Colors, of.count); }
  void operator()(const OfAxes& of) {
    list(Kind::Axes, of.count);
    form.range = {of.range.least, of.range.most};
  }
  void operator()(const OfNames& of) {
    characters(Kind::Names, of.most);
    form.counts = counts(of.count);
  }
  void operator()(const OfSide&) { form.kind = Kind::Side; }
  void operator()(const OfSides& of) { list(Kind::Sides, of.count); }
  void operator()(const OfSidesOr& of) {
    list(Kind::Sides, of.count);
    form.words = of.words;
  }
  void operator()(const OfBumper&) { form.kind = Kind::Bumper; }
  void operator()(const OfEnd& of) {
    length(Kind::End, of.range);
    form.words = of.words;
  }
  void operator()(const OfSidePlace& of) { length(Kind::OnSide, of.range); }
  void operator()(const OfPaper& of) { length(Kind::Paper, of.range); }

 private:
  void length(Kind kind, const LengthRange& range) {
    form.kind = kind;
    form.range = in_mm(range);
  }
  void characters(Kind kind, int most) {
    form.kind = kind;
    form.range = {1, most};
  }
  void list(Kind kind, const CountRange& count) {
    form.kind = kind;
    form.counts = counts(count);
  }
};

constexpr std::array<std::string_view, 20> kKindWords = {
    "length", "lengths", "points", "angle", "number",     "count", "flag",
    "text",   "digits",  "choice", "color", "colors",     "axes",  "names",
    "side",   "sides",   "bumper", "end",   "side-place", "paper"};
static_assert(kKindWords.size() == static_cast<std::size_t>(Kind::Paper) + 1);

}  // namespace

std::string_view to_text(KeyForm::Kind kind) { return kKindWords[static_cast<std::size_t>(kind)]; }

std::vector<KeyForm> key_forms() {
  std::vector<KeyForm> all;
  for (const Key& key : job_keys()) {
    KeyForm form;
    form.key = key.path;
    form.label = key.label;
    std::visit(Filled{form}, key.holds);
    all.push_back(std::move(form));
  }
  return all;
}

std::vector<TableForm> table_forms() {
  std::vector<TableForm> all;
  for (const KeyTable& table : job_tables())
    if (table.many) all.push_back({table.path, table.many->least, table.many->most});
  return all;
}

}  // namespace swathe
