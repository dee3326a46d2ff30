#include "book/inspection.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>
#include <utility>

#include "book/chapters.hpp"
#include "swathe/base/embedded.hpp"

namespace swathe {
namespace {

constexpr double kRule = 15.0, kWith = 20.0, kBox = 19.0;  ///< widths of the columns
constexpr double kSharesOfWhat[] = {0.38, 0.32, 0.44};     ///< of what these leave
constexpr double kAboveCard = 20.0;                        ///< height of what stands above it
constexpr double kLine = 60.0;                             ///< to write a name on

/// Check ids with what each is measured with, in order.
std::vector<std::pair<std::string, std::string>> tools() {
  std::vector<std::pair<std::string, std::string>> list;
  std::string_view text = embedded("book/inspection.txt");
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view line = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (const std::size_t colon = line.find(": "); colon != std::string_view::npos)
      list.emplace_back(line.substr(0, colon), line.substr(colon + 2));
  }
  return list;
}

/// "2026 R412" less the season, which the card's head names.
std::string rule_words(const Finding& finding, const Season& season) {
  std::string rule = finding.rule;
  if (rule.starts_with(season.name + " ")) rule.erase(0, season.name.size() + 1);
  if (finding.attested == Attested::Official) return rule;
  return fmt::format("{} ({})", rule, to_text(finding.attested));
}

Table card(const std::vector<InspectionRow>& rows, double width, double share_of_what) {
  const double left = width - kRule - kWith - kBox;
  const double what = share_of_what * left, words = 0.5 * (left - what);
  Table table;
  table.close = true;
  table.columns = {{"rule", Anchor::Left, kRule},
                   {"what", Anchor::Left, what},
                   {"with", Anchor::Left, kWith},
                   {"the rule asks", Anchor::Left, words},
                   {"the model expects", Anchor::Left, words},
                   {"measured", Anchor::Left, kBox, true}};
  for (const InspectionRow& row : rows)
    table.rows.push_back({row.rule, row.what, row.with, row.asks, row.expects, ""});
  return table;
}

/// "8 places" for a subject that names so many.
std::string subject_words(const std::string& subject) {
  const auto commas = std::ranges::count(subject, ',');
  return commas > 2 ? fmt::format("each of {} places", commas + 1) : subject;
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
    text("team " + made.job.number);
    x += 6;
  }
  for (const char* const words : {"looked at by", "on"}) {
    text(words);
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
  for (const auto& [id, with] : tools()) {
    std::string name = id;
    std::ranges::replace(name, '-', ' ');
    for (const Finding& finding : made.findings)
      if (finding.id == id && !finding.rule.empty())
        rows.push_back({rule_words(finding, *made.season),
                        name + ": " + subject_words(finding.subject), with, finding.required,
                        finding.measured});
  }
  return rows;
}

void add_inspectors_card(const Made& made, Flow& flow) {
  const std::vector<InspectionRow> rows = inspection_rows(made);
  if (rows.empty()) return;
  flow.chapter("build book: inspector's card");
  flow.words(
      fmt::format("Rules of {}. The manual and its updates go first, and the inspector decides.",
                  made.season->name));
  flow.picture(signatures(made, flow.labels(), flow.width()));
  Table table;
  for (const double share : kSharesOfWhat) {
    table = card(rows, flow.width(), share);
    Drawing trial;
    const double room = flow.height() - kAboveCard;
    if (draw_table(trial, flow.labels(), {0, 0}, table, room, 0, kTableHeight).next == rows.size())
      break;
  }
  flow.table(table, kTableHeight);
}

}  // namespace swathe
