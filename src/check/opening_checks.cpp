#include <fmt/format.h>

#include <algorithm>

#include "check/checks.hpp"
#include "check/opening_advice.hpp"

// What an opening leaves beside it, up to the frame's corners.
namespace swathe {

std::optional<OpeningBeside> opening_beside(const CheckedSet& s, int side, double least) {
  const FrameSide& on = s.frame.sides()[static_cast<std::size_t>(side)];
  for (std::size_t k = 0; k < s.job.openings.size(); ++k) {
    const OpeningKeys& keys = s.job.openings[k];
    if (keys.side != on.name) continue;
    const double cloth = kEndLayers * s.section.cloth_thickness_mm();
    const double center = s.frame.along(side, keys.center) - on.own_from;
    const double nearer = std::min(center, on.own_length - center);
    OpeningBeside beside;
    beside.number = k;
    beside.side = side;
    beside.covered = nearer - 0.5 * keys.width.mm() - cloth;
    beside.most_here = 2 * (nearer - cloth - least);
    beside.most_ever = on.own_length - 2 * (cloth + least);
    beside.centered = on.own_length - 2 * nearer < kRounding;
    return beside;
  }
  return std::nullopt;
}

OpeningAdvice narrower(const OpeningBeside& opening, const Findings& findings) {
  const std::string table = fmt::format("opening.{}", opening.number + 1);
  const std::string width = table + ".width", center = table + ".center";
  if (opening.most_ever <= 0) return {"take the [[opening]] out: the side is too short for it", {}};
  const std::string ever = findings.at_most_value(opening.most_ever);
  if (opening.centered || opening.most_here <= 0) {
    std::vector<KeyChange> mend = {{width, ever}};
    if (!opening.centered) mend.push_back({center, "\"50%\""});
    return {fmt::format("set {} to {}{}: the widest that this side allows", width, ever,
                        opening.centered ? "" : fmt::format(" and {} to \"50%\"", center)),
            std::move(mend)};
  }
  const std::string here = findings.at_most_value(opening.most_here);
  return {fmt::format("set {} to {}, or to {} with {} at \"50%\": the widest that this side allows",
                      width, here, ever, center),
          {{width, here}}};
}

void check_openings(const CheckedSet& s, const Season& season, Findings& findings) {
  const auto& rule = season.cover_larger_gap ? season.cover_larger_gap : season.cover_reach;
  if (!rule) return;
  const double least = rule->value.mm();
  const double step = inches(1.0 / 16).mm();
  for (int side = 0; side < static_cast<int>(s.frame.sides().size()); ++side) {
    const auto opening = opening_beside(s, side, least);
    if (!opening) continue;
    const double spare = opening->covered - least;
    if (spare < -kRounding || spare >= step - kRounding) continue;
    // With room for a board that is sawn a little short.
    const auto roomy = opening_beside(s, side, least + step);
    const OpeningAdvice advice = narrower(*roomy, findings);
    const std::string table = fmt::format("opening.{}", opening->number + 1);
    findings.advise(
        {"cover-gap",
         fmt::format("the opening of the {} side",
                     s.frame.sides()[static_cast<std::size_t>(side)].name),
         fmt::format("more than {} of frame covered beside it", findings.exact_text(rule->value)),
         findings.measured_text(opening->covered, {least}),
         Verdict::Warn,
         "it leaves the least that is allowed, and a board sawn a little short would "
         "fail: " +
             advice.words,
         {{Subject::side(s.frame.sides()[static_cast<std::size_t>(side)].name)},
          {table + ".width", table + ".center"},
          advice.mend}});
  }
}

}  // namespace swathe
