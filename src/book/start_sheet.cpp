#include "book/start_sheet.hpp"

#include <algorithm>
#include <cmath>

#include "book/card_words.hpp"
#include "book/chapters.hpp"
#include "book/steps.hpp"
#include "book/texts.hpp"
#include "book/words.hpp"
#include "draw/marks.hpp"
#include "sheet/plan_picture.hpp"
#include "swathe/check.hpp"

namespace swathe {
namespace {

using book_texts::say;

constexpr double kPlan = 74.0;         ///< width, and most height
constexpr double kGutter = 7.0;        ///< beside it
constexpr double kLeastBeside = 80.0;  ///< width for words beside the plan, else they go below it
constexpr double kPad = 3.5;           ///< from a banner's frame to its words
constexpr double kFrame = 0.5;         ///< its line
constexpr double kHeavy = 1.4;         ///< its line where a rule is not met
constexpr double kBetween = 1.8;       ///< sentences
constexpr std::size_t kMostTold = 2;   ///< rules that are not met, in words
constexpr double kStepGap = 6.0;       ///< between columns of steps

/// Words one below the other.
class Column {
 public:
  Column(const Font& labels, double width) : labels_(labels), width_(width) {}

  void write(const std::string& words, double height = kTextHeight) {
    if (y_ < 0) y_ -= kBetween;
    y_ = draw_text_block(drawing_, labels_, {0, y_}, width_, words, height).lo.y;
  }
  void skip(double gap) { y_ -= gap; }
  /// Another column's words in a frame as wide as this one.
  void framed(const Column& words, double line) {
    const double bottom = y_ + words.y_ - 2 * kPad;
    const auto frame = [&](double in) {
      return plane::closed_path(
          {{in, bottom + in}, {width_ - in, bottom + in}, {width_ - in, y_ - in}, {in, y_ - in}});
    };
    plane::Path inside = frame(line);
    std::ranges::reverse(inside.vertices);
    drawing_.fill(LineKind::Outline, kBlack, {frame(0), inside});
    drawing_.add(words.drawing_, {false, 0, {kPad, y_ - kPad}});
    y_ = bottom;
  }

  Picture picture() && { return {std::move(drawing_), {{0, y_}, {width_, 0}}}; }

 private:
  const Font& labels_;
  double width_, y_ = 0;
  Drawing drawing_;
};

/// Of the inspector's card.
std::vector<CardRow> rows_with(const Made& made, Verdict verdict) {
  std::vector<CardRow> rows = card_rows(made.findings, *made.season);
  std::erase_if(rows, [&](const CardRow& row) { return row.finding.verdict != verdict; });
  return rows;
}

void write_not_met(const Made& made, const std::vector<CardRow>& rows, Column& words) {
  words.write(rows.size() == 1 ? say("start.not-met-one")
                               : say("start.not-met", {{"count", std::to_string(rows.size())}}),
              kTitleHeight);
  for (std::size_t k = 0; k < std::min(rows.size(), kMostTold); ++k)
    words.write(
        say("start.not-met-line", {{"rule", rows[k].rule},
                                   {"what", card_words(rows[k].what, made.job)},
                                   {"asks", card_words(rows[k].finding.required, made.job)},
                                   {"found", card_words(rows[k].finding.measured, made.job)}}));
  std::string rest;
  if (rows.size() > kMostTold)
    rest = say("start.more", {{"count", std::to_string(rows.size() - kMostTold)}}) + " ";
  words.write(rest + say("start.not-met-do"));
}

/// Whether the rules are met, in a frame that is heavy where one is not.
void add_banner(const Made& made, const Font& labels, double width, Column& onto) {
  Column words(labels, width - 2 * kPad);
  if (!made.season) {
    words.write(say("start.no-season"), kTitleHeight);
    words.write(say("start.no-season-why"));
    return onto.framed(words, kFrame);
  }
  if (const auto failed = rows_with(made, Verdict::Fail); !failed.empty()) {
    write_not_met(made, failed, words);
    return onto.framed(words, kHeavy);
  }
  words.write(say("start.met", {{"season", made.season->name}}), kTitleHeight);
  words.write(say("start.met-so-far"));
  if (const auto warned = rows_with(made, Verdict::Warn); !warned.empty())
    words.write(say("start.warned", {{"count", std::to_string(warned.size())}}));
  onto.framed(words, kFrame);
}

Picture verdict_and_first(const Made& made, const PrintWays& ways, const Font& labels,
                          double width) {
  Column column(labels, width);
  add_banner(made, labels, width, column);
  if (!ways.first.empty()) {
    column.skip(kPad);
    column.write(say("start.first"), kTitleHeight);
    column.write(say("start.first-how", {{"file", names_words(ways.first)}}));
  }
  return std::move(column).picture();
}

/// One picture beside the other, their tops level.
Picture beside(Picture left, const Picture& right, double at) {
  left.drawing.add(right.drawing,
                   {false, 0, {at - right.box.lo.x, left.box.hi.y - right.box.hi.y}});
  left.box.cover(FlatPoint{at + right.box.width(), left.box.hi.y - right.box.height()});
  return left;
}

Table ways_table(const Made& made, const PrintWays& ways) {
  Table table;
  table.columns = {
      {say("start.column-way")}, {say("start.column-sheets")}, {say("start.column-files")}};
  for (const PrintWay& way : ways.ways) {
    const WayWords words = words_of(way, made);
    table.rows.push_back({words.way, words.sheets, words.files});
  }
  return table;
}

/// The last two columns share what the first leaves; where a word is longer than its share, the
/// page finds their widths. Lettered as small as tables may be: the page has much to tell.
void add_ways(const Made& made, const PrintWays& ways, Flow& flow) {
  Table table = ways_table(made, ways);
  const Font& labels = flow.labels();
  const double left = flow.width() - natural_width(table, 0, labels, kTableHeight);
  const double paper = std::min(natural_width(table, 1, labels, kTableHeight), 0.45 * left);
  if (least_width(table, 1, labels, kTableHeight) <= paper &&
      least_width(table, 2, labels, kTableHeight) <= left - paper) {
    table.columns[1].width_mm = paper;
    table.columns[2].width_mm = left - paper;
  }
  flow.table(table, kTableHeight);
}

Picture steps_picture(const Made& made, const Font& labels, double width) {
  const std::vector<StepName> steps = step_names(made);
  std::vector<std::string> numbers;
  double number = 0, name = 0;
  for (const StepName& step : steps) {
    numbers.push_back(step.first == step.last
                          ? std::to_string(step.first)
                          : say("start.range", {{"first", std::to_string(step.first)},
                                                {"last", std::to_string(step.last)}}));
    number = std::max(number, labels.text_width_mm(numbers.back(), kTextHeight));
    name = std::max(name, labels.text_width_mm(step.name, kTextHeight));
  }
  number += kBetween;
  const double pitch = number + name + kStepGap;
  const auto columns =
      static_cast<std::size_t>(std::max(1.0, std::floor((width + kStepGap) / pitch)));
  const std::size_t rows = (steps.size() + columns - 1) / columns;
  Picture picture;
  for (std::size_t k = 0; k < steps.size(); ++k) {
    const double x = static_cast<double>(k / rows) * pitch;
    const double y = -kTextHeight - static_cast<double>(k % rows) * kLineStep * kTextHeight;
    picture.drawing.text({x + number - kBetween, y}, numbers[k], kTextHeight, draw::Anchor::Right);
    picture.drawing.text({x + number, y}, steps[k].name, kTextHeight);
  }
  picture.box = {{0, -static_cast<double>(rows) * kLineStep * kTextHeight}, {width, 0}};
  return picture;
}

}  // namespace

void add_start(const Made& made, const PrintWays& ways, Flow& flow) {
  const Font& labels = flow.labels();
  const double room = flow.width() - kPlan - kGutter;
  Picture plan =
      plan_picture(made, labels, std::min(kPlan, flow.width()), kPlan, PlanDetail::Named);
  if (room >= kLeastBeside) {
    flow.picture(
        beside(std::move(plan), verdict_and_first(made, ways, labels, room), kPlan + kGutter));
  } else {
    flow.picture(verdict_and_first(made, ways, labels, flow.width()));
    flow.picture(std::move(plan));
  }
  flow.heading(say("start.print"));
  add_ways(made, ways, flow);
  std::string words;
  for (const std::string& note : notes_of(ways, made)) words += note + " ";
  if (!words.empty()) flow.words(words);
  words.clear();
  if (!ways.numerals.empty())
    words += say("start.then", {{"files", names_words(ways.numerals)},
                                {"sheets", sheets_words(ways.numerals, made.job.units)}}) +
             " ";
  if (!ways.to_look_at.empty())
    words += say("start.look", {{"files", names_words(ways.to_look_at)}}) + " ";
  flow.words(words + say("start.book"));
  flow.heading(say("start.order"));
  flow.picture(steps_picture(made, labels, flow.width()));
}

PageHead start_head(const Made& made, const std::string& subject) {
  const bool inches = made.job.units == Units::Inches;
  PageHead head;
  head.title = {made.job.title, subject, "", {}};
  head.how = {
      say(inches ? "head.inches" : "head.millimeters") + " " +
          say(made.job.cloth.fixing == Fixing::HookAndLoop ? "head.one-set" : "head.set-a-color"),
      say("head.colors", {{"colors", color_words(made)}}),
      say(inches ? "head.nearest-inches" : "head.nearest-millimeters")};
  return head;
}

SheetName start_name(const PaperKeys& paper) {
  return {"00-start-here", say("start.title"), SheetKind::Start, paper.sheet};
}

Sheet start_sheet(const Made& made, const PrintWays& ways, const PaperKeys& paper,
                  const Font& labels) {
  Flow flow(paper, labels, start_head(made, say("start.title")));
  add_start(made, ways, flow);
  return {start_name(paper), flow.pages()};
}

}  // namespace swathe
