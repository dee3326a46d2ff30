#include <algorithm>
#include <string_view>

#include "book/card_words.hpp"
#include "book/chapters.hpp"
#include "book/texts.hpp"
#include "swathe/check.hpp"

namespace swathe {
namespace {

using book_texts::say;

constexpr double kRule = 15.0, kWith = 20.0, kBox = 19.0;  ///< widths of the columns
constexpr double kSharesOfWhat[] = {0.38, 0.32, 0.44};     ///< of what these leave
constexpr double kAboveCard = 20.0;                        ///< height of what stands above it
constexpr double kBesideWords = 3.0;
constexpr double kLine = 60.0;  ///< to write a name on

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

Table card(const std::vector<CardRow>& rows, const Job& job, const Font& labels, double width,
           double share_of_what) {
  double rule = kRule;
  for (const CardRow& row : rows)
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
  for (const CardRow& row : rows) {
    if (!row.met()) table.marked.push_back(table.rows.size());
    const std::string has = card_words(row.finding.measured, job);
    table.rows.push_back({row.rule, card_words(row.what, job), row.with,
                          card_words(row.finding.required, job),
                          row.met() ? has : say("card.not-met", {{"found", has}}), ""});
  }
  return table;
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

void add_inspectors_card(const Made& made, Flow& flow) {
  if (!made.season) return;
  const std::vector<CardRow> rows = card_rows(made.findings, *made.season);
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
