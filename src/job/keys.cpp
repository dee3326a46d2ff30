#include "job/keys.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "job/names.hpp"
#include "swathe/job.hpp"
#include "swathe/rules.hpp"

namespace swathe {
namespace {

template <class T>
std::vector<std::string_view> texts() {
  std::vector<std::string_view> all;
  for (const Word<T>& word : kWords<T>) all.push_back(word.text);
  return all;
}

constexpr std::string_view kASideAndPlace =
    "a side and a place along it, like [\"front\", \"50%\"] or [\"front\", \"9 in\", \"left\"]";

/// What may stand for a place along the side at a bumper's end.
const std::vector<std::string_view> kEndWords = {"corner", "opening"};

std::vector<Key> described_keys() {
  // Defaults that are data.
  static const std::string season = fmt::format("\"{}\"", newest_season());
  static const std::string paper = fmt::format("\"{}\"", office_paper(Units::Inches).name);
  return {
      {"job.title", OfText{kMostTitle}, Given::Optional, "\"Tin Heron, spring covers\"", "Title",
       "is printed on every sheet", "It keeps older sets apart."},
      {"job.number", OfDigits{kMostNumber}, Given::Optional, "\"20486\"", "Team number",
       "1 to 5 digits; none: covers with no number",
       "Stencils and many of the rules are about its digits."},
      {"job.season", OfText{kMostPath, true}, Given::Default, season, "Season",
       "the rules to check against; \"none\"; or a rule file's path",
       "Rules change: last year's cover may fail this year."},
      {"job.units", OfChoice{texts<Units>()}, Given::Default, "\"in\"", "Units",
       "\"in\" or \"mm\": for numbers with no unit, and on all sheets",
       "Choose what your tape measure shows."},
      {"frame.width", OfLength{kFrameSide}, Given::Needed, "\"28 in\"", "Width",
       "of the frame, left to right", "Measure the frame as it is built: every cover follows it.",
       "the frame's size from left to right, like \"28 in\""},
      {"frame.depth", OfLength{kFrameSide}, Given::Needed, "\"30 in\"", "Depth",
       "of the frame, back to front", "Measure the frame as it is built: every cover follows it.",
       "the frame's size from back to front, like \"30 in\""},
      {"frame.corners", OfPoints{kSides, kAnywhere, 2}, Given::Optional,
       "[[26, 30], [2, 30], [0, 0], [28, 0]]", "Corners",
       "each [x, y], counter-clockwise from above", "For any frame."},
      {"frame.sides", OfNames{kSides, kMostName}, Given::Optional,
       "[\"front\", \"left\", \"back\", \"right\"]", "Names of the sides",
       "a name for each side, from its corner to the next", "Sheets use these names."},
      {"frame.fit", OfLength{kFit}, Given::Default, "\"1/16 in\"", "Play at the frame",
       "room between frame and boards, on each side",
       "Boards with no play jam. With hook-and-loop it is 3/16 in."},
      {"frame.floor_gap", OfLength{kFloorGap}, Given::Default, "\"2 in\"", "Gap to the floor",
       "from the floor to the bottom of the boards",
       "Rules say how high and how low a bumper may be."},
      {"frame.backed", OfFlag{}, Given::Default, "true", "Frame behind the boards",
       "whether the frame is behind the boards as the rules ask",
       "A board with nothing behind it breaks."},
      {"boards.thickness", OfLength{kBoardThickness}, Given::Default, "\"23/32 in\"", "Thickness",
       "measure it: \"3/4 inch\" plywood is thinner",
       "Every corner of a cover lies further out by this much."},
      {"boards.height", OfLength{kBoardHeight}, Given::Default, "\"5 in\"", "Height",
       "of the boards, top to bottom",
       "Rules ask for a height, and the cloth goes all the way round."},
      {"boards.joint", OfChoice{texts<Joint>()}, Given::Default, "\"lapped\"", "Corner joint",
       "\"lapped\": one board covers the other's end; or \"mitred\"",
       "How long each board is sawn depends on it."},
      {"boards.lapping", OfSides{}, Given::Default, "[\"front\", \"back\"]", "Sides that run past",
       "sides whose boards run past their neighbor",
       "Their boards are longer; the others fit between them."},
      {"boards.stock", OfLengths{{2, 2}, kStockLength}, Given::Default, "[\"48 in\", \"96 in\"]",
       "Sheet as bought", "the plywood sheet that you buy: width and length",
       "It decides how many sheets to buy."},
      {"boards.kerf", OfLength{kKerf}, Given::Default, "\"1/8 in\"", "Saw cut",
       "how wide the cut of your saw is", "Each cut turns this much of the board into dust."},
      {"boards.hard_depth", OfLength{kHardDepth}, Given::Default, "\"0 in\"",
       "Bolt heads stand out by", "bolt heads and the like, measured from the board's front",
       "Rules say how far anything hard may stand out."},
      {"boards.density", OfNumber{kDensity, "kg/m3"}, Given::Default, "600", "Density",
       "of the boards, kg/m3", "For the weight: weigh a board and divide by its volume."},
      {"padding.form", OfChoice{texts<PaddingForm>()}, Given::Default, "\"noodles\"", "Form",
       "\"noodles\": round foam along the board; or \"block\"", "The cloth goes round this shape."},
      {"padding.diameter", OfLength{kPaddingSize}, Given::Default, "\"2.5 in\"", "Diameter",
       "of a noodle: measure yours",
       "The cloth goes round it, and noodles differ from shop to shop."},
      {"padding.stack", OfCount{kNoodleStack}, Given::Default, "2", "Noodles above each other",
       "how many noodles lie above each other",
       "It makes the height of the padding, and rules ask for one."},
      {"padding.core", OfChoice{texts<Core>()}, Given::Default, "\"unstated\"", "Solid or hollow",
       "\"solid\", \"hollow\" (a hole in the noodle), or \"unstated\"",
       "In some seasons hollow noodles are not allowed."},
      {"padding.depth", OfLength{kPaddingSize}, Given::Default, "\"2.5 in\"", "Depth",
       "of a block, out from the board",
       "Rules ask for a least depth, measured where nothing presses."},
      {"padding.height", OfLength{kPaddingSize}, Given::Default, "\"5 in\"", "Height", "of a block",
       "Rules ask for a least height that has board behind it."},
      {"padding.edge_radius", OfLength{kEdgeRadius}, Given::Default, "\"1/2 in\"", "Edge radius",
       "of a block's front edges", "Cloth round a round edge is shorter than round a square one."},
      {"padding.corner", OfChoice{texts<PaddingCorner>()}, Given::Default, "\"butted\"",
       "At corners", "\"butted\": one side stops at the other; \"mitred\"; \"bent\"",
       "How foam is cut, and what fills a corner, depends on it."},
      {"padding.filled", OfFlag{}, Given::Default, "true", "Hollows filled",
       "whether foam strips fill the hollows of butted noodles",
       "The cloth round a filled corner is longer."},
      {"padding.lapping", OfSides{}, Given::Default, "[\"front\", \"back\"]", "Sides that run past",
       "if butted: sides whose padding runs past its neighbor",
       "Their padding is longer; the others fit between."},
      {"padding.stock", OfLength{kStockLength}, Given::Default, "\"60 in\"", "Length as bought",
       "how long a noodle or block is that you buy", "It decides how many to buy."},
      {"padding.density", OfNumber{kDensity, "kg/m3"}, Given::Default, "30", "Density",
       "of the foam, kg/m3", "For the weight: weigh a piece and divide by its volume."},
      {"cloth.thickness", OfLength{kClothThickness}, Given::Default, "\"0.5 mm\"", "Thickness",
       "of one layer", "Folded round a bumper's end, it takes room in the gap."},
      {"cloth.roll_width", OfLength{kStockLength}, Given::Default, "\"58 in\"", "Width of the roll",
       "between the selvedges (the cloth's woven edges)",
       "How many covers lie side by side decides how much to buy."},
      {"cloth.buy_step", OfLength{kBuyStep}, Given::Default, "\"1/4 yd\"", "Sold in steps of",
       "the shop cuts whole steps of this", "The length to buy is rounded up to a whole step."},
      {"cloth.shop_cut", OfLength{kSmallGap}, Given::Default, "\"2 in\"", "For a crooked cut",
       "bought besides, for the shop's crooked cut", "Cloth is seldom cut square to its edge."},
      {"cloth.colors", OfColors{kColors, kMostName}, Given::Default,
       "{ red = \"#b5121b\", blue = \"#1b3a93\" }", "Colors", "one set of covers for each color",
       "Rules say which colors."},
      {"cloth.flap", OfLength{kFlap}, Given::Default, "\"2 in\"", "Flap",
       "cloth on to the back of the boards, top and bottom",
       "Staples need cloth to hold; brackets need it out of the way."},
      {"cloth.staple_line", OfLength{kFlap}, Given::Default, "\"1 in\"", "Staples from the edge",
       "from the board's edge", "Too close to its edge the board splits."},
      {"cloth.staple_spacing", OfLength{kStapleSpacing}, Given::Default, "\"1 1/2 in\"",
       "Staple to staple", "from each staple to the next", "Too far apart, and the cloth puckers."},
      {"cloth.stretch_along", OfNumber{kStretch, ""}, Given::Default, "0.0", "Stretch along",
       "how much longer you pull it, along the bumper: 0.01 is 1 %",
       "The pattern is made shorter by that much."},
      {"cloth.stretch_around", OfNumber{kStretch, ""}, Given::Default, "0.0", "Stretch around",
       "how much longer you pull it, round padding: 0.01 is 1 %",
       "The pattern is made narrower by that much."},
      {"cloth.relief", OfChoice{texts<Relief>()}, Given::Default, "\"fold\"", "At corners",
       "\"fold\": pleats, no sewing; or \"sewn\": darts",
       "Pleats need no sewing machine; darts lie flatter."},
      {"cloth.setback", OfLength{kSmallGap}, Given::Default, "\"1/8 in\"", "Set back at corners",
       "flaps stop this far before an inside corner",
       "Two flaps in one corner would keep the boards apart."},
      {"cloth.cut_clear", OfLength{kSmallGap}, Given::Default, "\"1/4 in\"",
       "Cuts clear of the padding", "cuts stay this far behind the padding",
       "Rules ask for cloth all over the padding."},
      {"cloth.seam", OfLength{kSmallGap}, Given::Default, "\"1/2 in\"", "Seam allowance",
       "seam allowance: cloth beside a seam",
       "A narrow one tears out when the cover is pulled tight."},
      {"cloth.end_reach", OfLength{kFlap}, Given::Default, "\"2 in\"", "Reach of end tongues",
       "how far the tongue at an end reaches on to the board's back",
       "The tongue is folded round the end and stapled there."},
      {"cloth.may_join", OfFlag{}, Given::Default, "false", "May be pieced",
       "whether a seam across the cloth is allowed",
       "A cover longer than your cloth is then sewn from pieces."},
      {"cloth.longest_piece", OfLength{kStockLength}, Given::Optional, "\"60 in\"", "Longest piece",
       "the longest cloth you have; none: you buy off a roll",
       "With may_join, a longer cover is sewn from pieces."},
      {"cloth.may_lie_across", OfFlag{}, Given::Default, "false", "May lie across the roll",
       "whether covers may lie across the roll",
       "It often saves cloth; some cloth stretches more that way."},
      {"cloth.one_way", OfFlag{}, Given::Default, "false", "Runs one way",
       "whether the cloth has an up and a down: all lie alike",
       "Pile or shine turned half round looks like another color."},
      {"cloth.density", OfNumber{kClothDensity, "kg/m2"}, Given::Default, "0.35", "Weight of cloth",
       "of the cloth, kg/m2", "For the weight: weigh a piece and divide by its area."},
      {"cloth.staple_mass", OfNumber{kStapleMass, "g"}, Given::Default, "0.17",
       "Weight of a staple", "of one staple, g", "For the weight."},
      {"cloth.fixing", OfChoice{texts<Fixing>()}, Given::Default, "\"staples\"", "Fixing",
       "what holds the flaps: \"staples\" or \"hook-and-loop\"",
       "A hook-and-loop cover comes off again by hand."},
      {"cloth.hook_and_loop.flap", OfLength{kFlap}, Given::Default, "\"2 1/4 in\"", "Flap",
       "hemmed cloth on to the back of the boards", "The hook-and-loop needs room on it."},
      {"cloth.hook_and_loop.hem", OfLength{kSmallGap}, Given::Default, "\"1/2 in\"", "Hem",
       "cloth folded under at the flap's edge",
       "An edge with no hem frays when the cover is put on often."},
      {"cloth.hook_and_loop.strip", OfLength{kFlap}, Given::Default, "\"1 in\"",
       "Width of the strip", "how wide the hook-and-loop is",
       "One half is sewn to the flap, the other fixed to the board."},
      {"cloth.hook_and_loop.stretch", OfNumber{kStretch, ""}, Given::Default, "0.01",
       "Stretch around", "how much narrower the pattern is: 0.01 is 1 %",
       "Then the cover pulls tight."},
      {"cloth.hook_and_loop.density", OfNumber{kClothDensity, "kg/m2"}, Given::Default, "0.7",
       "Weight of the strips", "of hook-and-loop, both halves together, kg/m2", "For the weight."},
      {"opening.side", OfSide{}, Given::Needed, "\"front\"", "Side", "the side that it is in",
       "No bumper covers it: a mechanism reaches out there.", "the side it is in, like \"front\""},
      {"opening.width", OfLength{kOpeningWidth}, Given::Needed, "\"14 in\"", "Width",
       "finished, from cover to cover", "Cloth and gaps at the bumpers' ends are counted in.",
       "how wide it is from cover to cover, like \"14 in\""},
      {"opening.center", OfSidePlace{kAlong}, Given::Default, "\"50%\"", "Center",
       "its middle: a share of the side, or [\"12 in\", \"left\"]",
       "That is 12 in from the frame's corner with left."},
      {"bumper.name", OfText{kMostName}, Given::Needed, "\"A\"", "Name",
       "is printed on its sheets and stands in their file names",
       "Pieces get mixed up on the bench, so each has its name on it.",
       "the bumper's name, like \"A\""},
      {"bumper.from", OfEnd{kEndWords, kAlong}, Given::Needed, "[\"front\", \"50%\"]", "From",
       "the side it begins on, and where on that side",
       "Or [\"front\", \"9 in\", \"left\"]: from that corner.", kASideAndPlace},
      {"bumper.to", OfEnd{kEndWords, kAlong}, Given::Needed, "[\"back\", \"50%\"]", "To",
       "the side it ends on, and where on that side",
       "Or \"corner\", as padding reaches, or \"opening\".", kASideAndPlace},
      {"bumper.end_clearance", OfLength{kSmallGap}, Given::Default, "\"1/4 in\"", "Gap at its ends",
       "how much is taken off each end, for the gap",
       "The cloth on two neighboring ends needs room."},
      {"bracket.side", OfSide{}, Given::Needed, "\"left\"", "Side",
       "the side of the frame whose board it is on",
       "A bumper may have a board on each of several sides.", "the side it is on, like \"left\""},
      {"bracket.at", OfSidePlace{kAlong}, Given::Needed, "[\"11 in\", \"front\"]", "Place",
       "its nearer edge, from the frame's corner with front",
       "Or \"50%\": its center, halfway along.",
       "its place along the side, like [\"11 in\", \"front\"], or \"50%\""},
      {"bracket.bumper", OfBumper{}, Given::Optional, "\"A\"", "Bumper",
       "the bumper it is on; you may leave it out", "It follows from side and place."},
      {"bracket.width", OfLength{kBracketSize}, Given::Needed, "\"2 in\"", "Width",
       "along the board", "Staples keep away from all of it.", "its width, like \"2 in\""},
      {"bracket.height", OfLength{kBracketSize}, Given::Needed, "\"2 in\"", "Height",
       "down the board", "Half on cloth and half on wood, it would sit crooked.",
       "its height, like \"3 in\""},
      {"bracket.down", OfLength{kAlong}, Given::Default, "\"0 in\"", "Down from the top",
       "from the board's top edge", "It decides how much of the bracket lies on the flap."},
      {"bracket.holes", OfPoints{kHoles, kAlong, 2}, Given::Optional, "[[\"1 in\", \"1 in\"]]",
       "Holes", "centers: along from its edge by that corner, down from its top",
       "The cloth gets a hole there."},
      {"bracket.holes_from", OfSide{}, Given::Optional, "\"front\"", "Holes counted from",
       "for a place like \"50%\": from the corner with this side",
       "Needed where the holes are not alike from both edges."},
      {"bracket.cloth", OfChoice{texts<BracketCloth>()}, Given::Default, "\"under\"", "Cloth",
       "\"under\": cloth goes below it; \"window\": cut out round it",
       "In a window the bracket sits on bare wood."},
      {"bracket.clearance", OfLength{kSmallGap}, Given::Default, "\"1/4 in\"", "Room round it",
       "from it to a window's edge and to staples",
       "Room for a bracket that sits a little off its place."},
      {"bracket.corner_radius", OfLength{kSmallGap}, Given::Default, "\"1/4 in\"", "Corner radius",
       "of a window's corners", "Cloth tears from a sharp corner."},
      {"bracket.mass", OfNumber{kBracketMass, "g"}, Given::Optional, "250", "Weight",
       "with its screws and bolts, g; none: not counted",
       "For the weight: brackets are a large part of it."},
      {"numerals.font", OfText{kMostPath}, Given::Default, "\"Anton\"", "Font",
       "a bundled font's name, or a font file of your own", "Rules ask how wide its strokes are."},
      {"numerals.axes", OfAxes{kAxes, kAxis}, Given::Default, "{}", "Axes",
       "of a variable font: { wght = 900, wdth = 60 }",
       "They make such a font bolder or narrower."},
      {"numerals.height", OfLengthOr{{"season"}, kNumeralHeight}, Given::Default, "\"season\"",
       "Height", "of the shortest digit: a length, or least allowed + 1/8 in",
       "Higher digits can be read from further, and take more room."},
      {"numerals.sides", OfSidesOr{{"auto", "all"}}, Given::Default, "\"auto\"", "Sides",
       "\"auto\" chooses; \"all\"; or a list: [\"front\", \"left\"]",
       "Rules want several, well apart; for none, leave out job.number."},
      {"numerals.spacing", OfLengthOr{{"font", "tabular"}, kDigitSpacing}, Given::Default,
       "\"font\"", "Spacing", "\"font\", \"tabular\" (all digits equally wide), or extra length",
       "Digits that are too close run together when seen from afar."},
      {"numerals.method", OfChoice{texts<NumeralMethod>()}, Given::Default, "\"stencil\"", "Method",
       "\"stencil\", \"iron-on\", \"sew-on\", \"paint-mask\"",
       "The sheets are made for it: mirrored, with bridges, or wider."},
      {"numerals.stencil_for", OfChoice{texts<StencilFor>()}, Given::Default, "\"digit\"",
       "A stencil for", "each \"digit\" by itself, or the whole \"number\"",
       "A digit's stencil may cover wet paint beside it."},
      {"numerals.color", OfColor{}, Given::Default, "\"#ffffff\"", "Color", "of the digits",
       "Rules may ask for one. It has to stand out from the cloth."},
      {"numerals.outline", OfLength{kSmallGap}, Given::Default, "\"0 in\"", "White outline",
       "width of a white line round the digits",
       "In some seasons it allows digits that are not white."},
      {"numerals.make_legal", OfFlag{}, Given::Default, "false", "Thicken thin strokes",
       "whether strokes too thin for the rules are made thicker",
       "A font you like may then pass, and looks bolder."},
      {"numerals.bridge", OfLength{kBridge}, Given::Default, "\"1/4 in\"", "Width of bridges",
       "width of what holds the middle of a stencil's 0, 4, 6, 8, 9",
       "Thin bridges tear when the stencil is lifted."},
      {"numerals.spares", OfCount{kSpares}, Given::Default, "0", "Spare digits",
       "how many more of each digit than needed", "One is soon scorched or cut wrong."},
      {"numerals.place.side", OfSide{}, Given::Needed, "\"left\"", "Side",
       "the side that gets the number", "For a place that \"auto\" would not choose.",
       "a side of the frame, like \"front\""},
      {"numerals.place.center", OfSidePlace{kAlong}, Given::Optional, "[\"15 in\", \"front\"]",
       "Center", "its middle: from a corner, or a share like \"50%\"",
       "Left out: in the middle of the free cloth."},
      {"numerals.place.bumper", OfBumper{}, Given::Optional, "\"A\"", "Bumper",
       "which one, where two bumpers are on that side", "Else it follows from side and center."},
      {"numerals.place.split", OfCount{kSplit}, Given::Optional, "2", "Digits before the gap",
       "digits on this bumper; the others go on the next one",
       "For a gap in the middle of a side; some seasons forbid it."},
      {"sight.distance", OfLengths{kObservers, kSightDistance}, Given::Default,
       "[\"20 ft\", \"40 ft\", \"60 ft\"]", "Distances", "how far away people stand",
       "They have to read it across the field."},
      {"sight.eye_height", OfLengths{kObservers, kEyeHeight}, Given::Default,
       "[\"4 ft\", \"5 ft 3 in\"]", "Eye heights", "of people, above the floor",
       "Digits look lower from higher up."},
      {"sight.step", OfAngle{kSightStep}, Given::Default, "\"1 deg\"", "Narrowest stretch",
       "stretches round the machine narrower than this are left out",
       "Nobody stands still in a stretch so narrow."},
      {"sight.least_angle", OfAngle{kLeastAngle}, Given::Default, "\"15 arcmin\"",
       "Least height as seen", "a digit's height, as the eye sees it",
       "A digit that looks smaller is hard to make out."},
      {"sight.blind.box", OfPoints{{2, 2}, kAnywhere, 3}, Given::Needed, "[[0, 0, 0], [4, 6, 10]]",
       "Box", "two opposite corners: x, y of the frame, z from the floor",
       "What is behind it cannot be read."},
      {"paper.sheet", OfPaper{kPaperSize}, Given::Default, paper, "Sheet",
       "letter, legal, tabloid, arch-c to arch-e, a4 to a0, roll or [w, h]",
       "Larger sheets need fewer joins to glue."},
      {"paper.width", OfLength{kPaperSize}, Given::Optional, "\"36 in\"", "Width of a roll",
       "of a roll; its pages are as long as they need to be",
       "Give it with sheet = \"roll\", and only then."},
      {"paper.margin", OfLength{kSmallGap}, Given::Default, "\"1/2 in\"", "Margin",
       "paper edge that the printer leaves white",
       "If it is too small, the printer cuts lines off."},
      {"paper.overlap", OfLength{kSmallGap}, Given::Default, "\"1/2 in\"", "Overlap",
       "of neighboring sheets", "Glue or sticky tape goes there."},
      {"paper.face", OfChoice{texts<PaperFace>()}, Given::Default, "\"inside\"", "Seen from",
       "patterns drawn as seen from the cloth's \"inside\" or \"outside\"",
       "Draw with chalk on the inside, where it does not show."},
      {"paper.measured", OfLengths{{2, 2}, kScaleMeasured}, Given::Optional,
       "[\"99.2 mm\", \"100.4 mm\"]", "Scales came out as",
       "what the printed 100 mm scales measure, across and down",
       "The next print corrects for it."},
  };
}

constexpr KeyTable kTables[] = {{"job", true, {}},
                                {"frame", true, {}},
                                {"boards", false, {}},
                                {"padding", false, {}},
                                {"cloth", false, {}},
                                {"cloth.hook_and_loop", false, {}},
                                {"opening", false, kOpenings},
                                {"bumper", true, kBumpers},
                                {"bracket", false, kBrackets},
                                {"numerals", false, {}},
                                {"numerals.place", false, kNumeralPlaces},
                                {"sight", false, {}},
                                {"sight.blind", false, kBlinds},
                                {"paper", false, {}}};

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

std::span<const std::string_view> lists_of_tables() {
  static const std::vector<std::string_view> lists = [] {
    std::vector<std::string_view> paths;
    for (const KeyTable& table : kTables)
      if (table.many) paths.push_back(table.path);
    return paths;
  }();
  return lists;
}

bool is_list_of_tables(std::string_view path) { return times_allowed(path).has_value(); }

bool is_always_text(const Holds& holds) {
  return std::holds_alternative<OfText>(holds) || std::holds_alternative<OfDigits>(holds) ||
         std::holds_alternative<OfChoice>(holds) || std::holds_alternative<OfColor>(holds) ||
         std::holds_alternative<OfSide>(holds) || std::holds_alternative<OfBumper>(holds);
}

}  // namespace swathe
