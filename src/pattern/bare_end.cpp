#include "pattern/bare_end.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/print.hpp"
#include "pattern/outline.hpp"
#include "rules/practice.hpp"

namespace swathe {

std::optional<BareEnd> bare_end(const Wrap& wrap, const ClothKeys& cloth, bool start) {
  constexpr double kBend = 1e-6;
  const double bare = wrap.run().bare(start), length = wrap.run().length;
  if (bare <= 0.0) return std::nullopt;
  const Section& section = wrap.section();
  BareEnd end;
  end.start = start;
  end.board_end = start ? bare : length - bare;
  end.from = start ? 0.0 : end.board_end;
  end.to = start ? end.board_end : length;
  // A single noodle has no flat at its back: the tongue goes as far round there as on its front.
  const double back = section.bare_half_girth();
  end.fold = std::min(section.bare_back_edge(), back - tongue_half_width(section));
  end.flap = std::min(section.cloth_edge_top(), back);
  end.slit = section.u_at_depth(section.thickness_mm() - cloth.cut_clear.mm(), true)
                 .value_or(section.back_edge_top());
  const double behind = 0.5 * (section.top_tangent() + end.fold);
  end.round = section.bare_at(behind).tilt > section.bare_at(section.top_tangent()).tilt + kBend;
  return end;
}

std::vector<BareEnd> bare_ends(const Wrap& wrap, const ClothKeys& cloth) {
  std::vector<BareEnd> ends;
  for (const bool start : {true, false})
    if (const auto end = bare_end(wrap, cloth, start)) ends.push_back(*end);
  return ends;
}

std::vector<plane::Path> bare_slits(const Wrap& wrap, const ClothKeys& cloth) {
  std::vector<plane::Path> slits;
  for (const BareEnd& end : bare_ends(wrap, cloth))
    for (const double sign : {1.0, -1.0})
      slits.push_back(
          plane::line({end.board_end, sign * end.flap}, {end.board_end, sign * end.slit}));
  return slits;
}

std::vector<NamedLine> bare_lines(const Wrap& wrap, const ClothKeys& cloth) {
  using What = NamedLine::What;
  std::vector<NamedLine> lines;
  for (const BareEnd& end : bare_ends(wrap, cloth)) {
    for (const double sign : {1.0, -1.0})
      lines.push_back({What::PaddingEdge,
                       "padding's edge",
                       {end.from, sign * end.fold},
                       {end.to, sign * end.fold}});
    lines.push_back(
        {What::BoardEnd, "board's end", {end.board_end, -end.slit}, {end.board_end, end.slit}});
  }
  return lines;
}

Refusals bare_faults(const Wrap& wrap, const Job& job) {
  const bool stapled = job.cloth.fixing == Fixing::Staples;
  const double needs = practice::kHoldBeyondStaple.mm();
  for (const BareEnd& end : bare_ends(wrap, job.cloth)) {
    const double short_by = needs - (end.flap - end.fold);
    // Flaps that reach the middle of the padding's back could not be longer.
    if (short_by <= 1e-6 || end.flap >= wrap.section().bare_half_girth() - 1e-6) continue;
    const Length flap = stapled ? job.cloth.flap : job.cloth.hook_and_loop.flap;
    const Length step = job.units == Units::Inches ? inches(1.0 / 16) : mm(1);
    return {{Why::DoesNotFit,
             fmt::format("at the ends of bumper \"{}\", where padding runs past its board, a flap "
                         "of {} does not come round to the padding's back, where the tongue holds "
                         "it, expected at least {}",
                         wrap.run().name, exact(flap, job.units),
                         exact(std::ceil((flap + mm(short_by)) / step - 1e-9) * step, job.units)),
             job.places.of(stapled ? "cloth.flap" : "cloth.hook_and_loop.flap")}};
  }
  return {};
}

}  // namespace swathe
