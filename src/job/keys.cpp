#include "job/keys.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "job/names.hpp"
#include "swathe/job/papers.hpp"
#include "swathe/rules/season.hpp"

namespace swathe {
namespace {

template <class T>
std::vector<std::string_view> texts() {
  std::vector<std::string_view> all;
  for (const Word<T>& word : kWords<T>) all.push_back(word.text);
  return all;
}

constexpr std::string_view kASideAndDistance =
    "a side and the distance along it, like [\"front\", \"50%\"]";

std::vector<Key> described_keys() {
  // Defaults that are data.
  static const std::string season = fmt::format("\"{}\"", newest_season());
  static const std::string paper = fmt::format("\"{}\"", office_paper(Units::Inches).name);
  return {
      {"job.title", OfText{kMostTitle}, Given::Optional, "\"Tin Heron, spring covers\"", "Title",
       "stands on every sheet", "It tells this set from older ones."},
      {"job.number", OfDigits{kMostNumber}, Given::Optional, "\"20486\"", "Team number",
       "1 to 5 digits; leave it out for covers without numerals",
       "Stencils, sight and many rules are about its digits."},
      {"job.season", OfText{kMostPath}, Given::Default, season, "Season",
       "rule set to check against; \"none\"; or a rule file's path",
       "Rules change: a cover of last year may fail this year."},
      {"job.units", OfChoice{texts<Units>()}, Given::Default, "\"in\"", "Units",
       "bare numbers and printed dimensions: \"in\" or \"mm\"",
       "Sheets are then read off the tape that the shop has."},
      {"frame.width", OfLength{kFrameSide}, Given::Needed, "\"28 in\"", "Width", "left to right",
       "Measure the frame as built: every cover follows it.",
       "the frame's size from left to right, like \"28 in\""},
      {"frame.depth", OfLength{kFrameSide}, Given::Needed, "\"30 in\"", "Depth", "back to front",
       "Measure the frame as built: every cover follows it.",
       "the frame's size from back to front, like \"30 in\""},
      {"frame.corners", OfPoints{kSides, kAnywhere, 2}, Given::Optional,
       "[[26, 30], [2, 30], [0, 0], [28, 0]]", "Corners", "each [x, y], counter-clockwise",
       "For frames of any shape."},
      {"frame.sides", OfNames{kSides, kMostName}, Given::Optional,
       "[\"front\", \"left\", \"back\", \"right\"]", "Names of the sides",
       "a name for each edge, from its corner to the next", "Sheets use the names."},
      {"frame.fit", OfLength{kFit}, Given::Default, "\"1/16 in\"", "Play at the frame",
       "play between frame and boards, each side",
       "Boards without play jam on a painted or bolted frame."},
      {"frame.floor_gap", OfLength{kFloorGap}, Given::Default, "\"2 in\"", "Gap to the floor",
       "floor to the underside of the boards", "Rules bound how high and low a bumper may stand."},
      {"frame.backed", OfFlag{}, Given::Default, "true", "Frame behind the boards",
       "the frame stands behind the boards as the rules ask",
       "A board with nothing behind it breaks."},
      {"boards.thickness", OfLength{kBoardThickness}, Given::Default, "\"23/32 in\"", "Thickness",
       "measure it: \"3/4 inch\" plywood is thinner",
       "So much further out lies every corner of a cover."},
      {"boards.height", OfLength{kBoardHeight}, Given::Default, "\"5 in\"", "Height",
       "of the boards, top to bottom", "Rules ask for it, and the cloth goes all the way round."},
      {"boards.joint", OfChoice{texts<Joint>()}, Given::Default, "\"lapped\"", "Corner joint",
       "at corners: one board covers the other's end; or \"mitred\"",
       "It decides how long each board is sawn."},
      {"boards.lapping", OfSides{}, Given::Default, "[\"front\", \"back\"]", "Sides that run over",
       "sides whose boards cover their neighbors' ends",
       "These are sawn longer; the others fit between."},
      {"boards.stock", OfLengths{{2, 2}, kStockLength}, Given::Default, "[\"48 in\", \"96 in\"]",
       "Sheet as bought", "sheet the boards are sawn from", "How many to buy follows from it."},
      {"boards.kerf", OfLength{kKerf}, Given::Default, "\"1/8 in\"", "Saw cut", "the saw's cut",
       "Each cut turns so much board into dust."},
      {"boards.hard_depth", OfLength{kHardDepth}, Given::Default, "\"0 in\"",
       "Hard parts stand out", "bolt heads and the like, out from the board's front",
       "Rules bound how far anything hard may stand out."},
      {"boards.density", OfNumber{kDensity, "kg/m3"}, Given::Default, "600", "Density",
       "of the boards, kg/m3", "For the weight: weigh a board, divide by its volume."},
      {"padding.form", OfChoice{texts<PaddingForm>()}, Given::Default, "\"noodles\"", "Form",
       "foam noodles, lying along the board; or \"block\"",
       "The cloth goes round the shape that is there."},
      {"padding.diameter", OfLength{kPaddingSize}, Given::Default, "\"2.5 in\"", "Diameter",
       "of a noodle: measure yours", "The cloth goes round it, and noodles of one name differ."},
      {"padding.stack", OfCount{kNoodleStack}, Given::Default, "2", "Noodles above each other",
       "noodles above each other", "It makes the padding's height, for which rules ask."},
      {"padding.core", OfChoice{texts<Core>()}, Given::Default, "\"unstated\"", "Core",
       "of the noodles: \"solid\" or \"hollow\" when you know",
       "In some seasons hollow noodles are not allowed."},
      {"padding.depth", OfLength{kPaddingSize}, Given::Default, "\"2.5 in\"", "Depth",
       "of a block, out from the board", "Rules ask for a least depth, not pressed together."},
      {"padding.height", OfLength{kPaddingSize}, Given::Default, "\"5 in\"", "Height", "of a block",
       "Rules ask for a least height with board behind it."},
      {"padding.edge_radius", OfLength{kEdgeRadius}, Given::Default, "\"1/2 in\"", "Edge radius",
       "of a block's front edges", "Round edges take less cloth than square ones."},
      {"padding.corner", OfChoice{texts<PaddingCorner>()}, Given::Default, "\"butted\"",
       "At corners", "one side's padding stops against the other's; \"mitred\", \"bent\"",
       "It decides how foam is cut, and what fills a corner."},
      {"padding.lapping", OfSides{}, Given::Default, "[\"front\", \"back\"]", "Sides that run over",
       "butted: sides whose padding runs to the corner's outer face",
       "These are cut longer; the others fit between."},
      {"padding.stock", OfLength{kStockLength}, Given::Default, "\"60 in\"", "Length as bought",
       "length as bought", "How many to buy follows from it."},
      {"padding.density", OfNumber{kDensity, "kg/m3"}, Given::Default, "30", "Density",
       "of the foam, kg/m3", "For the weight: weigh a piece, divide by its volume."},
      {"cloth.thickness", OfLength{kClothThickness}, Given::Default, "\"0.5 mm\"", "Thickness",
       "of one layer", "Folded over a bumper's end it takes room in the gap."},
      {"cloth.roll_width", OfLength{kStockLength}, Given::Default, "\"58 in\"", "Width of the roll",
       "usable, inside the selvedges", "The length to buy follows from what lies side by side."},
      {"cloth.buy_step", OfLength{kBuyStep}, Given::Default, "\"1/4 yd\"", "Sold in steps of",
       "the shop cuts whole steps of this", "The length to buy is rounded up to it."},
      {"cloth.colors", OfColors{kColors, kMostName}, Given::Default,
       "{ red = \"#b5121b\", blue = \"#1b3a93\" }", "Colors", "one set of covers in each",
       "Rules name the colors."},
      {"cloth.flap", OfLength{kFlap}, Given::Default, "\"2 in\"", "Flap",
       "reach on to the back of the boards, top and bottom",
       "Staples want cloth to hold; brackets want it out of the way."},
      {"cloth.staple_line", OfLength{kFlap}, Given::Default, "\"1 in\"", "Staples from the edge",
       "from the board's edge", "Close to the edge the board splits."},
      {"cloth.staple_spacing", OfLength{kStapleSpacing}, Given::Default, "\"1 1/2 in\"",
       "Staple to staple", "from each staple to the next", "Far apart they let the cloth pucker."},
      {"cloth.stretch_along", OfNumber{kStretch, ""}, Given::Default, "0.0", "Stretch along",
       "share the cloth is pulled longer, along the bumper",
       "The pattern is drawn so much shorter."},
      {"cloth.stretch_around", OfNumber{kStretch, ""}, Given::Default, "0.0", "Stretch around",
       "share the cloth is pulled longer, round boards and padding",
       "The pattern is drawn so much narrower."},
      {"cloth.relief", OfChoice{texts<Relief>()}, Given::Default, "\"fold\"", "At corners",
       "at corners: pleats; or \"sewn\" darts",
       "Pleats need no sewing machine; darts lie flatter."},
      {"cloth.setback", OfLength{kSmallGap}, Given::Default, "\"1/8 in\"", "Set back at corners",
       "flaps end this far short of an inside corner",
       "Cloth of two flaps in a corner would hold it open."},
      {"cloth.cut_clear", OfLength{kSmallGap}, Given::Default, "\"1/4 in\"",
       "Cuts clear of the padding", "cuts stay this far behind the padding",
       "Rules ask for cloth on every face of the padding."},
      {"cloth.seam", OfLength{kSmallGap}, Given::Default, "\"1/2 in\"", "Seam allowance",
       "allowance of a sewn dart", "A narrow one tears out of a taut cover."},
      {"cloth.end_reach", OfLength{kFlap}, Given::Default, "\"2 in\"", "Reach of end tongues",
       "the end's tongue on to the back of the board",
       "Folded round the end, it is stapled there."},
      {"cloth.may_join", OfFlag{}, Given::Default, "false", "May be pieced",
       "a seam across the cloth is allowed", "A cover longer than the cloth can then be pieced."},
      {"cloth.longest_piece", OfLength{kStockLength}, Given::Optional, "\"60 in\"", "Longest piece",
       "cloth at hand, along a cover; left out: off the roll",
       "Where may_join is set, longer covers are pieced."},
      {"cloth.may_lie_across", OfFlag{}, Given::Default, "false", "May lie across the roll",
       "covers may lie across the roll", "Often less cloth to buy; some cloth gives more across."},
      {"cloth.one_way", OfFlag{}, Given::Default, "false", "Runs one way",
       "pile, print or shine runs one way: all covers lie alike",
       "Turned half round, a cover would look another color."},
      {"cloth.density", OfNumber{kClothDensity, "kg/m2"}, Given::Default, "0.35", "Weight of cloth",
       "of the cloth, kg/m2", "For the weight: weigh a piece, divide by its area."},
      {"cloth.staple_mass", OfNumber{kStapleMass, "g"}, Given::Default, "0.17",
       "Weight of a staple", "of one, g", "For the weight."},
      {"cloth.fixing", OfChoice{texts<Fixing>()}, Given::Default, "\"staples\"", "Fixing",
       "what holds the flaps; or \"hook-and-loop\"", "With hook-and-loop a cover comes off again."},
      {"cloth.hook_and_loop.flap", OfLength{kFlap}, Given::Default, "\"2 1/4 in\"", "Flap",
       "finished reach on to the back of the boards", "The hook-and-loop has to find room on it."},
      {"cloth.hook_and_loop.hem", OfLength{kSmallGap}, Given::Default, "\"1/2 in\"", "Hem",
       "folded under beyond the flap", "A bare edge frays when the cover is pulled on often."},
      {"cloth.hook_and_loop.strip", OfLength{kFlap}, Given::Default, "\"1 in\"",
       "Width of the strip", "width of the hook-and-loop",
       "One half is sewn to the flap, the other fixed to the board."},
      {"cloth.hook_and_loop.stretch", OfNumber{kStretch, ""}, Given::Default, "0.01",
       "Stretch around", "share the pattern is narrower", "So the cover pulls taut."},
      {"cloth.hook_and_loop.density", OfNumber{kClothDensity, "kg/m2"}, Given::Default, "0.7",
       "Weight of the strips", "of hook-and-loop, both halves together, kg/m2", "For the weight."},
      {"bumper.name", OfText{kMostName}, Given::Needed, "\"A\"", "Name",
       "stands on its sheets and in their files' names",
       "Pieces get mixed up on the bench: each bears its name.", "the bumper's name, like \"A\""},
      {"bumper.from", OfEnd{kAlong}, Given::Needed, "[\"front\", \"50%\"]", "From",
       "the side it begins on, and how far along that",
       "Or a length, or \"corner\": to the outer face.", kASideAndDistance},
      {"bumper.to", OfEnd{kAlong}, Given::Needed, "[\"back\", \"50%\"]", "To",
       "the side it ends on, and how far along that", "The gap to the next is held to the rules.",
       kASideAndDistance},
      {"bumper.end_clearance", OfLength{kSmallGap}, Given::Default, "\"1/4 in\"",
       "Clearance at its ends", "taken off at each end",
       "The cloth on two ends wants room between them."},
      {"bracket.bumper", OfBumper{}, Given::Needed, "\"A\"", "Bumper", "whose board it is on",
       "That bumper's cover is made to suit it.", "the name of the bumper it is on, like \"A\""},
      {"bracket.side", OfSide{}, Given::Needed, "\"left\"", "Side", "which of the bumper's boards",
       "A bumper may have a board on each of several sides.", "the side it is on, like \"left\""},
      {"bracket.at", OfBoardPlace{texts<FromEnd>(), kAlong}, Given::Needed, "[\"left\", \"11 in\"]",
       "Place", "from the board's left or right end, seen from outside",
       "To its nearer edge, along the inside."},
      {"bracket.next_to", OfSide{}, Given::Optional, "\"right\"", "Next to",
       "the side that its board lies next to",
       "For a bracket that fits on two boards of one side."},
      {"bracket.width", OfLength{kBracketSize}, Given::Needed, "\"2 in\"", "Width",
       "along the board", "Staples keep clear of all of it.", "its width, like \"2 in\""},
      {"bracket.height", OfLength{kBracketSize}, Given::Needed, "\"2 in\"", "Height",
       "down the board", "Half on cloth and half on wood it would sit askew.",
       "its height, like \"3 in\""},
      {"bracket.down", OfLength{kAlong}, Given::Default, "\"0 in\"", "Down from the top",
       "from the board's top edge", "It decides how much of it lies on the flap."},
      {"bracket.holes", OfPoints{kHoles, kAlong, 2}, Given::Optional, "[[\"1 in\", \"1 in\"]]",
       "Holes", "centers: right and down from its top left, seen from outside",
       "The cloth is punched there."},
      {"bracket.cloth", OfChoice{texts<BracketCloth>()}, Given::Default, "\"under\"", "Cloth",
       "cloth passes beneath it; or \"window\": cut out round it",
       "A window lets the bracket sit on bare wood."},
      {"bracket.clearance", OfLength{kSmallGap}, Given::Default, "\"1/4 in\"", "Clearance",
       "of a window, and of staples", "Room for a bracket that sits a little off its place."},
      {"bracket.corner_radius", OfLength{kSmallGap}, Given::Default, "\"1/4 in\"", "Corner radius",
       "of a window", "Cloth tears from a sharp corner."},
      {"bracket.mass", OfNumber{kBracketMass, "g"}, Given::Optional, "250", "Weight",
       "with its screws and bolts, g; left out: not weighed",
       "For the weight: brackets are a good part of it."},
      {"numerals.font", OfText{kMostPath}, Given::Default, "\"Anton\"", "Font",
       "a font that \"swathe fonts\" lists, or a font file's path",
       "Its strokes decide whether the rules are met."},
      {"numerals.axes", OfAxes{kAxes, kAxis}, Given::Default, "{}", "Axes",
       "of a variable font: { wght = 900, wdth = 60 }",
       "They make such a font bolder or narrower."},
      {"numerals.height", OfLengthOr{{"season"}, kNumeralHeight}, Given::Default, "\"season\"",
       "Height", "of the shortest digit: least allowed plus 1/8 in; or a length",
       "Higher is read from further, and takes more room."},
      {"numerals.sides", OfSidesOr{"auto"}, Given::Default, "\"auto\"", "Sides",
       "that bear the number: \"auto\" chooses; or [\"front\", \"left\"]",
       "Rules want several, well apart; for none, leave out job.number."},
      {"numerals.spacing", OfLengthOr{{"font", "tabular"}, kDigitSpacing}, Given::Default,
       "\"font\"", "Spacing", "between digits: the font's own, \"tabular\", or an extra length",
       "Too close, digits run together when seen from afar."},
      {"numerals.method", OfChoice{texts<NumeralMethod>()}, Given::Default, "\"stencil\"", "Method",
       "\"stencil\", \"iron-on\", \"sew-on\", \"paint-mask\"",
       "Sheets are mirrored, bridged or widened to suit it."},
      {"numerals.color", OfColor{}, Given::Default, "\"#ffffff\"", "Color", "of the digits",
       "Rules may name it; its contrast with the cloth is told."},
      {"numerals.outline", OfLength{kSmallGap}, Given::Default, "\"0 in\"", "White outline",
       "white line outside the digits", "In some seasons it makes up for digits not white."},
      {"numerals.make_legal", OfFlag{}, Given::Default, "false", "Thicken thin strokes",
       "thicken strokes that are too thin for the rules",
       "A font you like may then pass, looking bolder."},
      {"numerals.bridge", OfLength{kBridge}, Given::Default, "\"1/4 in\"", "Width of bridges",
       "width of what holds the middle of a stencil's 0, 4, 6, 8, 9",
       "Thin ones tear when the stencil is lifted."},
      {"numerals.spares", OfCount{kSpares}, Given::Default, "0", "Spare digits",
       "digits more than needed, of each", "One is soon scorched or cut wrong."},
      {"numerals.place.bumper", OfBumper{}, Given::Needed, "\"A\"", "Bumper",
       "whose cover bears the number", "For places that \"auto\" would not choose.",
       "the name of a bumper, like \"A\""},
      {"numerals.place.side", OfSide{}, Given::Needed, "\"left\"", "Side",
       "which side of that bumper", "For places that \"auto\" would not choose.",
       "a side of that bumper, like \"front\""},
      {"numerals.place.center", OfLength{kAlong}, Given::Optional, "\"15 in\"", "Center",
       "from the board's left end, seen from outside", "Left out: the middle of the free stretch."},
      {"numerals.place.split", OfCount{kSplit}, Given::Optional, "2", "Digits before the gap",
       "so many digits at this bumper's end, the rest on the next",
       "For a gap in mid-side; some seasons forbid it."},
      {"sight.distance", OfLengths{kObservers, kSightDistance}, Given::Default,
       "[\"20 ft\", \"40 ft\", \"60 ft\"]", "Distances", "how far off people stand",
       "It must be read across the field."},
      {"sight.eye_height", OfLengths{kObservers, kEyeHeight}, Given::Default,
       "[\"4 ft\", \"5 ft 3 in\"]", "Eye heights", "of people, above the floor",
       "From higher up, digits look lower."},
      {"sight.step", OfAngle{kSightStep}, Given::Default, "\"1 deg\"", "Step",
       "narrower stretches round the machine are not told of",
       "Nobody stands still in so narrow a stretch."},
      {"sight.least_angle", OfAngle{kLeastAngle}, Given::Default, "\"15 arcmin\"",
       "Least height as seen", "a digit's height, as the eye sees it",
       "Smaller than that, a digit is hard to make out."},
      {"sight.blind.box", OfPoints{{2, 2}, kAnywhere, 3}, Given::Needed, "[[0, 0, 0], [4, 6, 10]]",
       "Box", "two far corners: frame x, y, and z from the floor",
       "What is behind it cannot be read."},
      {"paper.sheet", OfPaper{kPaperSize}, Given::Default, paper, "Sheet",
       "letter, legal, tabloid, arch-c to arch-e, a4 to a0, roll or [w, h]",
       "Larger sheets leave fewer joins to glue."},
      {"paper.width", OfLength{kPaperSize}, Given::Optional, "\"36 in\"", "Width of a roll",
       "of a roll; its pages are as long as they need to be",
       "Needed with sheet = \"roll\", and only then."},
      {"paper.margin", OfLength{kSmallGap}, Given::Default, "\"1/2 in\"", "Margin",
       "what the printer leaves white", "Set too small, the printer cuts lines off."},
      {"paper.overlap", OfLength{kSmallGap}, Given::Default, "\"1/2 in\"", "Overlap",
       "of neighboring sheets", "It is what the glue or tape holds."},
      {"paper.face", OfChoice{texts<PaperFace>()}, Given::Default, "\"inside\"", "Seen from",
       "patterns as seen from the cloth's \"inside\" or \"outside\"",
       "Chalk goes on the inside, where it will not show."},
      {"paper.measured", OfLengths{{2, 2}, kScaleMeasured}, Given::Optional,
       "[\"99.2 mm\", \"100.4 mm\"]", "Scales came out as",
       "what the printed 100 mm scales came out as, across and down",
       "The next print makes up for it."},
  };
}

constexpr KeyTable kTables[] = {
    {"job", true, {}},          {"frame", true, {}},
    {"boards", false, {}},      {"padding", false, {}},
    {"cloth", false, {}},       {"cloth.hook_and_loop", false, {}},
    {"bumper", true, kBumpers}, {"bracket", false, kBrackets},
    {"numerals", false, {}},    {"numerals.place", false, kNumeralPlaces},
    {"sight", false, {}},       {"sight.blind", false, kBlinds},
    {"paper", false, {}}};

/// As it is spelled in America.
std::string american(std::string_view name) {
  constexpr std::pair<std::string_view, std::string_view> kWords[] = {{"colour", "color"},
                                                                      {"centre", "center"}};
  std::string out(name);
  for (const auto& [british, word] : kWords)
    if (const auto at = out.find(british); at != std::string::npos)
      out.replace(at, british.size(), word);
  return out;
}

}  // namespace

std::span<const Key> job_keys() {
  static const std::vector<Key> keys = described_keys();
  return keys;
}

const Key* find_key(std::string_view path) {
  const auto keys = job_keys();
  const auto found = std::ranges::find(keys, path, &Key::path);
  return found == keys.end() ? nullptr : &*found;
}

std::span<const KeyTable> job_tables() { return kTables; }

std::optional<CountRange> times_allowed(std::string_view path) {
  const auto found = std::ranges::find(kTables, path, &KeyTable::path);
  return found == std::end(kTables) ? std::nullopt : found->many;
}

bool is_list_of_tables(std::string_view path) { return times_allowed(path).has_value(); }

bool is_always_text(const Holds& holds) {
  return std::holds_alternative<OfText>(holds) || std::holds_alternative<OfDigits>(holds) ||
         std::holds_alternative<OfChoice>(holds) || std::holds_alternative<OfColor>(holds) ||
         std::holds_alternative<OfSide>(holds) || std::holds_alternative<OfBumper>(holds);
}

bool same_name(std::string_view a, std::string_view b) {
  return a == b || american(a) == american(b);
}

}  // namespace swathe
