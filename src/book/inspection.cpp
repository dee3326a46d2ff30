#include "book/inspection.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <string_view>

#include "base/embedded.hpp"
#include "book/card_words.hpp"
#include "book/chapters.hpp"
#include "book/texts.hpp"

namespace swathe {
namespace {

using book_texts::say;

constexpr double kRule = 15.0, kWith = 20.0, kBox = 19.0;  ///< widths of the columns
constexpr double kSharesOfWhat[] = {0.38, 0.32, 0.44};     ///< of what these leave
constexpr double kAboveCard = 20.0;                        ///< height of what stands above it
constexpr double kBesideWords = 3.0;
constexpr double kLine = 60.0;  ///< to write a name on

/// A line of the card's text.
struct Look {
  std::string check, what,
      with;  ///< a check's id, what the card calls it, what it is measured with
};

/// In the order in which a bumper is gone over.
std::vector<Look> looks() {
  std::vector<Look> list;
  std::string_view text = embedded(fmt::format("book/{}/inspection.txt", kLanguage));
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view line = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (line.empty() || line.front() == '#') continue;
    const std::size_t first = line.find(": "), last = line.rfind(": ");
    assert(first < last && "a check, what it is called, what it is measured with");
    list.push_back({std::string(line.substr(0, first)),
                    std::string(line.substr(first + 2, last - first - 2)),
                    std::string(line.substr(last + 2))});
  }
  return list;
}

/// "2026 R412" less the season, which the card's head names.
std::string rule_words(const Finding& finding, const Season& season) {
  std::string rule = finding.rule;
  if (rule.starts_with(season.name + " ")) rule.erase(0, season.name.size() + 1);
  if (finding.attested == Attested::Official) return rule;
  return say("card.unsure", {{"rule", rule}, {"attested", to_text(finding.attested)}});
}

/// Width of the longest of these words: none is broken.
double longest_word(const Font& labels, std::string_view words) {
  double longest = 0;
  for (std::size_t from = 0; from <= words.size();) {
    const std::size_t end = std::min(words.find(' ', from), words.size());
    const std::string word(words.substr(from, end - from));
    longest = std::max(longest, labels.text_width_mm(word, kTableHeight));
    from = end + 1;
  }
  return longest;
}

Table card(const std::vector<InspectionRow>& rows, const Job& job, const Font& labels, double width,
           double share_of_what) {
  double rule = kRule;
  for (const InspectionRow& row : rows)
    rule = std::max(rule, longest_word(labels, row.rule) + kBesideWords);
  const double left = width - rule - kWith - kBox;
  const double what = share_of_what * left, words = 0.5 * (left - what);
  Table table;
  table.close = true;
  table.columns = {{say("card.column-rule"), draw::Anchor::Left, rule},
                   {say("card.column-what"), draw::Anchor::Left, what},
                   {say("card.column-with"), draw::Anchor::Left, kWith},
                   {say("card.column-asks"), draw::Anchor::Left, words},
                   {say("card.column-expects"), draw::Anchor::Left, words},
                   {say("card.column-measured"), draw::Anchor::Left, kBox, true}};
  for (const InspectionRow& row : rows) {
    if (!row.met) table.marked.push_back(table.rows.size());
    const std::string has = card_words(row.expects, job);
    table.rows.push_back({row.rule, card_words(row.what, job), row.with, card_words(row.asks, job),
                          row.met ? has : say("card.not-met", {{"found", has}}), ""});
  }
  return table;
}

/// "8 places" for a subject that names so many.
std::string subject_words(const std::string& subject) {
  const auto commas = std::ranges::count(subject, ',');
  return commas > 2 ? say("card.each-of", {{"number", std::to_string(commas + 1)}}) : subject;
}

/// Lines for who measured, and when.
Picture signatures(const Made& made, const Font& labels, double width) {
  Picture picture;
  picture.box = {{0, 0}, {width, 2.2 * kTextHeight}};
  double x = 0;
  const auto text = [&](const std::string& words) {
    picture.drawing.text({x, kTextHeight}, words);
    x += labels.text_width_mm(words, kTextHeight) + 2;
  };
  if (!made.job.number.empty()) {
    text(say("card.team", {{"number", made.job.number}}));
    x += 6;
  }
  for (const char* const id : {"card.looked-at-by", "card.on"}) {
    text(say(id));
    const double end = std::min(x + kLine, width);
    picture.drawing.line(LineKind::Thin, {x, kTextHeight - 1.5}, {end, kTextHeight - 1.5});
    x = end + 4;
  }
  return picture;
}

}  // namespace

std::vector<InspectionRow> inspection_rows(const Made& made) {
  std::vector<InspectionRow> rows;
  if (!made.season) return rows;
  for (const auto& [check, what, with] : looks())
    for (const Finding& finding : made.findings)
      if (finding.id == check && !finding.rule.empty())
        rows.push_back({rule_words(finding, *made.season),
                        what + ": " + subject_words(finding.subject), with, finding.required,
                        finding.measured,
                        finding.verdict == Verdict::Pass || finding.verdict == Verdict::Unknown,
                        finding.verdict});
  return rows;
}

void add_inspectors_card(const Made& made, Flow& flow) {
  const std::vector<InspectionRow> rows = inspection_rows(made);
  if (rows.empty()) return;
  flow.chapter(say("chapter.card"));
  flow.words(say("card.rules", {{"season", made.season->name}}));
  flow.picture(signatures(made, flow.labels(), flow.width()));
  Table table;
  for (const double share : kSharesOfWhat) {
    table = card(rows, made.job, flow.labels(), flow.width(), share);
    Drawing trial;
    const double room = flow.height() - kAboveCard;
    if (draw_table(trial, flow.labels(), {0, 0}, table, room, 0, kTableHeight).next == rows.size())
      break;
  }
  flow.table(table, kTableHeight);
}

}  // namespace swathe
