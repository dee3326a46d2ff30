#include <cmath>
#include <nlohmann/json.hpp>

#include "book/hook_and_loop.hpp"
#include "book/words.hpp"
#include "swathe/bumper.hpp"
#include "swathe/write.hpp"

namespace swathe {
namespace {

using Json = nlohmann::ordered_json;

/// Libraries differ in the last digits of a sine: what is printed lies on a fixed grid.
double grid(double value) {
  const double rounded = std::round(value * 1e4) / 1e4;
  return rounded == 0.0 ? 0.0 : rounded;
}

Json pair(double a, double b) { return Json::array({grid(a), grid(b)}); }

Json points(const plane::Polygon& polygon) {
  Json list = Json::array();
  for (const FlatPoint p : polygon) list.push_back(pair(p.x, p.y));
  return list;
}

const char* word(Units units) { return units == Units::Inches ? "in" : "mm"; }
const char* word(Staple::On on) {
  switch (on) {
    case Staple::On::Flap:
      break;
    case Staple::On::Ear:
      return "ear";
    case Staple::On::Tongue:
      return "tongue";
  }
  return "flap";
}

const char* word(BracketCloth cloth) { return cloth == BracketCloth::Under ? "under" : "window"; }
const char* word(Relief relief) { return relief == Relief::Fold ? "fold" : "sewn"; }
const char* word(EndCut::Kind kind) {
  switch (kind) {
    case EndCut::Kind::Free:
      return "free";
    case EndCut::Kind::Laps:
      return "laps";
    case EndCut::Kind::Butts:
      return "butts";
    case EndCut::Kind::Mitred:
      return "mitred";
    case EndCut::Kind::Bent:
      break;
  }
  return "bent";
}

Json job_part(const Job& job) {
  return {{"title", job.title},
          {"number", job.number},
          {"season", job.season},
          {"units", word(job.units)},
          {"source", job.source}};
}

/// Every place along a cover is told on its pattern; depths and heights are the bumper's own.
Json section_part(const Section& section, const ClothMap& map) {
  const auto u_of = [&](double u) { return map.to_pattern({0, u}).y; };
  Json stations = Json::array();
  for (const bumper::Station& station : section.stations())
    stations.push_back({{"name", station.name},
                        {"u_mm", grid(u_of(station.u_mm))},
                        {"d_mm", grid(station.d_mm)},
                        {"z_mm", grid(station.z_mm)}});
  return {
      {"depth_mm", grid(section.depth_mm())},
      {"closed_girth_mm", grid(section.closed_girth_mm())},
      {"front_flat_mm", grid(u_of(section.front_flat_top()) - u_of(section.front_flat_bottom()))},
      {"cloth_girth_mm", grid(u_of(section.cloth_edge_top()) - u_of(section.cloth_edge_bottom()))},
      {"stations", std::move(stations)}};
}

Json corner_part(const PatternCorner& corner, Relief relief) {
  Json dart = Json::array();
  for (const DartPoint& p : corner.dart)
    dart.push_back({{"u_mm", grid(p.u)}, {"half_width_mm", grid(p.half_width)}});
  return {{"sides", Json::array({corner.side_before, corner.side_after})},
          {"s_mm", grid(corner.s)},
          {"turn_deg", grid(corner.turn_deg)},
          {"front_past_corner_mm", grid(corner.past)},
          {"relief", word(relief)},
          {"fold_towards", corner.fold_towards_before ? corner.side_before : corner.side_after},
          {"dart", std::move(dart)},
          {"notch", points(corner.notch_top)},
          {"notch_bottom", points(corner.notch_bottom)},
          {"square_end_allowance_mm", grid(corner.square_end_allowance)},
          {"filled", corner.filled}};
}

Json bracket_part(const BracketOnPattern& bracket) {
  Json holes = Json::array();
  for (const Punch& punch : bracket.holes) holes.push_back(pair(punch.at.x, punch.at.y));
  return {{"side", bracket.side},
          {"s_mm", grid(bracket.s)},
          {"u_mm", grid(bracket.u)},
          {"width_mm", grid(bracket.width)},
          {"height_mm", grid(bracket.height)},
          {"cloth", word(bracket.cloth)},
          {"open_to_edge", bracket.open_to_edge},
          {"holes", std::move(holes)},
          {"subject", to_text(Subject::bracket(bracket.keys + 1))}};
}

Json numeral_part(const PlacedNumeral& numeral) {
  return {{"text", numeral.text},
          {"side", numeral.side},
          {"center_s_mm", grid(numeral.center_s)},
          {"center_u_mm", grid(numeral.center_u)},
          {"width_mm", grid(numeral.width)},
          {"height_mm", grid(numeral.height)},
          {"seen_height_mm", grid(numeral.seen_height)},
          {"tilt_deg", grid(numeral.tilt_deg)},
          {"showing", numeral.showing},
          {"from", numeral.from},
          {"whole", numeral.whole},
          {"space_across_mm", grid(numeral.space_across)},
          {"subject", to_text(Subject::numeral(numeral.place))}};
}

Json bumper_part(const Made& made, std::size_t k) {
  const Pattern& pattern = made.patterns[k];
  const ClothMap map = made.cloth_map();
  Json bumper;
  bumper["name"] = pattern.bumper;
  Json sides = Json::array();
  for (const RunSide& leg : made.wraps[k].run().sides)
    sides.push_back(made.frame.sides()[static_cast<std::size_t>(leg.side)].name);
  bumper["sides"] = std::move(sides);
  bumper["points_mm"] = points(pattern.outline);
  bumper["holes_mm"] = Json::array();
  for (const plane::Polygon& hole : pattern.holes) bumper["holes_mm"].push_back(points(hole));
  bumper["length_mm"] = grid(pattern.length);
  bumper["cloth_length_mm"] = grid(pattern.cloth_length);
  bumper["cloth_width_mm"] = grid(pattern.cloth_width);
  bumper["cloth_area_mm2"] = grid(pattern.cloth_area);
  bumper["surface_area_mm2"] = grid(pattern.surface_area);
  bumper["corners"] = Json::array();
  for (const PatternCorner& corner : pattern.corners)
    bumper["corners"].push_back(corner_part(corner, made.job.cloth.relief));
  bumper["ends"] = Json::array();
  for (const EndOnPattern& end : pattern.ends)
    bumper["ends"].push_back({{"end", end.start ? "start" : "end"},
                              {"layers", end.layers},
                              {"tongue_mm", grid(end.tongue)},
                              {"ears_mm", grid(end.ears)},
                              {"flaps_begin_mm", grid(end.flaps)},
                              {"past_board_mm", grid(end.past_board)}});
  bumper["bare_gap_mm"] = grid(made.bare_gaps[k]);
  bumper["covered_gap_mm"] = grid(made.covered_gaps[k]);
  bumper["clear"] = Json::array();
  for (const ClearStretch& clear : made.clear[k])
    bumper["clear"].push_back({{"side", clear.side},
                               {"from_s_mm", grid(map.to_pattern({clear.from_s, 0}).x)},
                               {"to_s_mm", grid(map.to_pattern({clear.to_s, 0}).x)}});
  bumper["brackets"] = Json::array();
  for (const BracketOnPattern& bracket : pattern.brackets)
    bumper["brackets"].push_back(bracket_part(bracket));
  bumper["joins"] = Json::array();
  for (const ClothJoin& join : made.joins[k])
    bumper["joins"].push_back({{"s_mm", grid(join.s)},
                               {"under_pleat", join.under_pleat},
                               {"allowance_mm", grid(join.allowance)}});
  bumper["staples"] = Json::array();
  for (const Staple& staple : pattern.staples)
    bumper["staples"].push_back({{"s_mm", grid(staple.at.x)},
                                 {"u_mm", grid(staple.at.y)},
                                 {"order", staple.order},
                                 {"on", word(staple.on)}});
  bumper["strips"] = Json::array();
  for (const plane::Path& strip : pattern.strips)
    bumper["strips"].push_back(points(flatten(strip, 0.01)));
  bumper["match_marks"] = Json::array();
  for (std::size_t m = 0; m < pattern.marks.size(); ++m) {
    const MatchMark& mark = pattern.marks[m];
    bumper["match_marks"].push_back({{"name", made.mark_names[k][m]},
                                     {"s_mm", grid(mark.at.x)},
                                     {"u_mm", grid(mark.at.y)},
                                     {"side", mark.side},
                                     {"from_left_mm", grid(mark.from_left_mm)}});
  }
  bumper["numerals"] = Json::array();
  for (const PlacedNumeral& numeral : made.numerals_on_patterns())
    if (numeral.bumper == static_cast<int>(k)) bumper["numerals"].push_back(numeral_part(numeral));
  if (k < made.same.size() && made.same[k]) {
    const Sameness& same = *made.same[k];
    const std::string& other = made.patterns[static_cast<std::size_t>(same.other)].bumper;
    if (!same.but_for.empty())
      bumper["same_but_for"] = {{"bumper", other}, {"differs", same.but_for}};
    else
      bumper[same.how == Sameness::How::Mirrored ? "mirror_of" : "same_as"] = other;
  }
  return bumper;
}

Json board_part(const bumper::Piece& board) {
  return {
      {"bumper", board.bumper},
      {"side", board.side},
      {"length_mm", grid(board.length_mm)},
      {"ends",
       Json::array({{{"cut", word(board.start.kind)}, {"angle_deg", grid(board.start.angle_deg)}},
                    {{"cut", word(board.end.kind)}, {"angle_deg", grid(board.end.angle_deg)}}})},
      {"count", board.count},
      {"subject", to_text(Subject::board(board.bumper, board.side))}};
}

Json padding_part(const bumper::Piece& piece) {
  return {{"bumper", piece.bumper},
          {"side", piece.side},
          {"length_mm", grid(piece.length_mm)},
          {"count", piece.count}};
}

Json overhang_part(const Overhang& over) {
  return {{"bumper", over.bumper},
          {"side", over.side},
          {"left_mm", grid(over.at_start)},
          {"right_mm", grid(over.at_end)}};
}

Json void_part(const CornerVoid& hollow) {
  return {{"bumper", hollow.bumper},
          {"sides", Json::array({hollow.side_before, hollow.side_after})},
          {"strips", hollow.strips},
          {"length_mm", grid(hollow.length)},
          {"section_mm2", grid(hollow.section_area)},
          {"leg_mm", grid(hollow.leg)}};
}

/// The loop is on every cover, its hook on the boards, which the covers share.
Json strips_part(const Made& made) {
  std::size_t strips = 0;
  for (const Pattern& pattern : made.patterns) strips += pattern.strips.size();
  const double along = strip_length(made);
  return {{"strips", strips},
          {"loop_mm", grid(along * cover_sets(made))},
          {"hook_mm", grid(along * padded_sets(made.job))}};
}

Json plan_part(const StockPlan& plan) {
  Json sticks = Json::array();
  for (const StockStick& stick : plan.sticks) {
    Json cuts = Json::array();
    for (const StockCut& cut : stick.cuts)
      cuts.push_back({{"piece", cut.label}, {"length_mm", grid(cut.length)}});
    sticks.push_back({{"length_mm", grid(stick.length)}, {"cuts", std::move(cuts)}});
  }
  Json too_long = Json::array();
  for (const StockCut& cut : plan.too_long)
    too_long.push_back({{"piece", cut.label}, {"length_mm", grid(cut.length)}});
  Json splices = Json::array();
  for (const Splice& splice : plan.splices) {
    Json joints = Json::array();
    for (const double joint : splice.joints) joints.push_back(grid(joint));
    splices.push_back({{"piece", splice.label},
                       {"length_mm", grid(splice.length)},
                       {"joints_mm", std::move(joints)}});
  }
  return {{"pieces", std::move(sticks)},
          {"used_fraction", grid(plan.used_fraction)},
          {"too_long", std::move(too_long)},
          {"splices", std::move(splices)}};
}

Json ripped_part(const std::vector<RippedSheet>& sheets) {
  Json part = Json::array();
  for (const RippedSheet& sheet : sheets)
    part.push_back({{"strip_length_mm", grid(sheet.strip_length)}, {"strips", sheet.strips}});
  return part;
}

Json screws_part(const Screws& screws) {
  return {{"count", screws.count},
          {"a_joint", screws.a_joint},
          {"number", screws.number},
          {"across_mm", grid(screws.across.mm())},
          {"length_mm", grid(screws.length.mm())}};
}

Json lay_part(const ClothLay& lay) {
  Json placements = Json::array();
  for (const ClothPlacement& placement : lay.placements)
    placements.push_back({{"bumper", placement.bumper},
                          {"piece", placement.piece},
                          {"x_mm", grid(placement.x)},
                          {"y_mm", grid(placement.y)},
                          {"across", placement.across},
                          {"turned", placement.turned}});
  return {{"color", lay.color},
          {"shop_cut_mm", grid(lay.shop_cut)},
          {"length_to_buy_mm", grid(lay.length_to_buy)},
          {"roll_width_mm", grid(lay.roll_width)},
          {"used_fraction", grid(lay.used_fraction)},
          {"placements", std::move(placements)},
          {"does_not_fit", lay.does_not_fit}};
}

Json digit_part(const Digit& digit, double legal_stroke) {
  Json bridges = Json::array();
  for (const Bridge& bridge : digit.bridges)
    bridges.push_back({{"length_mm", grid(bridge.length)}, {"width_mm", grid(bridge.width)}});
  Json part = {{"digit", std::string(1, digit.digit)},
               {"count", digit.count},
               {"height_mm", grid(digit.height)},
               {"width_mm", grid(digit.width)},
               {"stroke_median_mm", grid(digit.stroke.median())},
               {"stroke_min_mm", grid(digit.stroke.least())}};
  if (legal_stroke > 0.0) {
    part["share_at_least"] = grid(digit.stroke.share_at_least(legal_stroke));
    part["share_at_least_after_bridges"] =
        grid(digit.stroke_after_bridges.share_at_least(legal_stroke));
  }
  part["counters"] = digit.counters;
  part["bridges"] = std::move(bridges);
  return part;
}

Json numerals_part(const Numerals& numerals, double legal_stroke) {
  Json digits = Json::array(), misfits = Json::array();
  for (const Digit& digit : numerals.digits) digits.push_back(digit_part(digit, legal_stroke));
  for (const NumeralMisfit& misfit : numerals.misfits)
    misfits.push_back({{"side", misfit.side},
                       {"needs_mm", grid(misfit.needs)},
                       {"has_mm", grid(misfit.has)},
                       {"advice", misfit.advice}});
  Json axes = Json::object();
  for (const auto& [axis, value] : numerals.axes) axes[axis] = grid(value);
  return {{"font", numerals.font},
          {"axes", std::move(axes)},
          {"size_mm", grid(numerals.size)},
          {"height_mm", grid(numerals.height)},
          {"width_mm", grid(numerals.width)},
          {"digits", std::move(digits)},
          {"misfits", std::move(misfits)}};
}

Json arcs_part(const SightRing& ring, Reads reads) {
  Json list = Json::array();
  for (const SightArc& arc : ring.arcs)
    if (arc.reads == reads) list.push_back(pair(arc.from_deg, arc.to_deg));
  return list;
}

Json face_part(const NumberServes& serves, const NumberInSpace& number) {
  // The widest of its arcs; they are all listed beside it.
  std::pair<double, double> widest{0, 0};
  Json arcs = Json::array();
  for (const auto& arc : serves.arcs_deg) {
    arcs.push_back(pair(arc.first, arc.second));
    if (arc.second - arc.first > widest.second - widest.first) widest = arc;
  }
  const bool read = !serves.arcs_deg.empty();
  double cloth = 1e300, seen = 1e300;
  for (const DigitInSpace& digit : number.digits) {
    cloth = std::min(cloth, digit.height);
    seen = std::min(seen, digit.seen_height);
  }
  return {{"side", serves.side},
          {"from_deg", read ? Json(grid(widest.first)) : Json()},
          {"to_deg", read ? Json(grid(widest.second)) : Json()},
          {"farthest_read_mm", grid(serves.farthest.mm())},
          {"arcs", std::move(arcs)},
          {"square_on_arcmin", grid(serves.square_arcmin)},
          {"worst_arcmin", grid(serves.worst_arcmin)},
          {"worst_off_deg", grid(serves.worst_off_deg)},
          {"digit_height_mm", grid(cloth)},
          {"digit_seen_height_mm", grid(seen)}};
}

Json ring_part(const SightRing& ring, const sight::Scene& scene) {
  Json faces = Json::array();
  for (std::size_t n = 0; n < ring.numbers.size(); ++n)
    faces.push_back(face_part(ring.numbers[n], scene.numbers[n]));
  Json reads_as = Json::array();
  for (const SightArc& arc : ring.arcs)
    if (arc.reads == Reads::Another) reads_as.push_back(arc.text);
  return {{"distance_mm", grid(ring.distance.mm())},
          {"eye_height_mm", grid(ring.eye_height.mm())},
          {"read_fraction", grid(ring.fraction(Reads::Number))},
          {"unread", arcs_part(ring, Reads::Nothing)},
          {"ambiguous", arcs_part(ring, Reads::Another)},
          {"ambiguous_as", std::move(reads_as)},
          {"faces", std::move(faces)}};
}

Json subjects_part(const std::vector<Subject>& subjects) {
  Json list = Json::array();
  for (const Subject& subject : subjects) list.push_back(to_text(subject));
  return list;
}

Json mend_part(const std::vector<KeyChange>& mend) {
  Json list = Json::array();
  for (const KeyChange& change : mend)
    list.push_back({{"key", change.key}, {"value", change.value}});
  return list;
}

Json finding_part(const Finding& finding) {
  return {{"id", finding.id},
          {"rule", finding.rule},
          {"subject", finding.subject},
          {"required", finding.required},
          {"measured", finding.measured},
          {"verdict", to_text(finding.verdict)},
          {"attested", to_text(finding.attested)},
          {"advice", finding.advice},
          {"subjects", subjects_part(finding.subjects)},
          {"keys", finding.keys},
          {"mend", mend_part(finding.mend)}};
}

Json weight_part(const Stock& stock) {
  Json bumpers = Json::array();
  for (const BumperWeight& weight : stock.weights)
    bumpers.push_back({{"bumper", weight.bumper},
                       {"boards_g", grid(weight.boards_g)},
                       {"padding_g", grid(weight.padding_g)},
                       {"cloth_g", grid(weight.cloth_g)},
                       {"fasteners_g", grid(weight.fasteners_g)},
                       {"unknown_brackets", weight.unknown_brackets}});
  return {{"bumpers", std::move(bumpers)},
          {"set_g", grid(stock.set.together_g())},
          {"unknown_brackets", stock.set.unknown_brackets}};
}

}  // namespace

std::string report_json(const Made& made, const std::vector<ToldSheet>& sheets) {
  Json report;
  report["schema"] = 1;
  report["job"] = job_part(made.job);
  report["section"] = section_part(made.section, made.cloth_map());
  report["bumpers"] = Json::array();
  for (std::size_t k = 0; k < made.patterns.size(); ++k)
    report["bumpers"].push_back(bumper_part(made, k));
  report["boards"] = Json::array();
  for (const bumper::Piece& board : made.boards) report["boards"].push_back(board_part(board));
  report["padding"] = Json::array();
  for (const bumper::Piece& piece : made.padding) report["padding"].push_back(padding_part(piece));
  report["overhangs"] = Json::array();
  for (const Overhang& over : overhangs(made.boards, made.padding))
    report["overhangs"].push_back(overhang_part(over));
  report["voids"] = Json::array();
  for (const Wrap& wrap : made.wraps)
    for (const CornerVoid& hollow :
         corner_voids(made.frame, made.section, wrap.run(), made.job.padding))
      report["voids"].push_back(void_part(hollow));
  report["stock"] = {{"board_sheets", made.stock.sheets},
                     {"strips_per_sheet", made.stock.strips_per_sheet},
                     {"ripped", ripped_part(made.stock.ripped)},
                     {"sheets_used_fraction", grid(made.stock.sheets_used)},
                     {"boards", plan_part(made.stock.boards)},
                     {"screws", screws_part(made.stock.screws)},
                     {"padding", plan_part(made.stock.padding)}};
  if (made.job.cloth.fixing == Fixing::HookAndLoop) report["hook_and_loop"] = strips_part(made);
  report["cloth"] = Json::array();
  for (const ClothLay& lay : made.stock.cloth) report["cloth"].push_back(lay_part(lay));
  if (made.numerals) {
    const bool ruled = made.season && made.season->numerals_stroke;
    report["numerals"] =
        numerals_part(*made.numerals, ruled ? made.season->numerals_stroke->value.mm() : 0.0);
  }
  if (made.sight) {
    report["sight"] = Json::array();
    for (const SightRing& ring : made.sight->rings)
      report["sight"].push_back(ring_part(ring, made.sight->scene));
  }
  report["checks"] = Json::array();
  for (const Finding& finding : made.findings) report["checks"].push_back(finding_part(finding));
  report["sheets"] = Json::array();
  for (const ToldSheet& sheet : sheets)
    report["sheets"].push_back({{"file", sheet.stem + ".pdf"},
                                {"pages", sheet.pages},
                                {"paper", sheet.paper},
                                {"kind", to_text(sheet.kind)}});
  report["weight"] = weight_part(made.stock);
  return report.dump(2) + "\n";
}

}  // namespace swathe
