#include <algorithm>
#include <iterator>

#include "base/workshop.hpp"
#include "book/chapters.hpp"
#include "book/neighbors.hpp"
#include "book/texts.hpp"
#include "book/words.hpp"
#include "pattern/joins.hpp"

namespace swathe {
namespace {

using book_texts::say;

constexpr double kHigh = 38.0, kLeastWide = 58.0;  ///< of a label; one of many words is higher
constexpr double kPad = 2.5;
constexpr double kBetweenRows = 3.0;
constexpr double kTop = 18.0;  ///< width kept for "TOP"

struct Label {
  std::string name;
  std::vector<std::string> lines;
};

/// What an end of a piece does: "next to front: stops".
std::string end_line(const EndCut& end, const std::string& neighbor) {
  return say("label.end", {{"end", end_words(end.kind, neighbor)}});
}

class Labels {
 public:
  explicit Labels(const Made& made) : made_(made) {}

  std::vector<Label> all() && {
    const std::vector<ClothColor>& colors = made_.job.cloth.colors;
    for (int set = 0; set < padded_sets(made_.job); ++set) {
      // One set whose covers are changed has no color.
      const bool colored = made_.job.cloth.fixing != Fixing::HookAndLoop && !colors.empty();
      const std::string color = colored ? colors[static_cast<std::size_t>(set)].name : "";
      for (const bumper::Piece& board : made_.boards)
        piece(board, board_words(color), sawn_with_unit(mm(board.length_mm), made_.job.units));
      for (const bumper::Piece& one : made_.padding)
        piece(one, padding_words(one, color), size(one.length_mm));
    }
    for (const ClothColor& color : colors)
      for (std::size_t b = 0; b < made_.patterns.size(); ++b) cover(b, color.name);
    return std::move(labels_);
  }

 private:
  std::string size(double length_mm) const {
    return dimension_with_unit(mm(length_mm), made_.job.units);
  }

  static std::string board_words(const std::string& color) {
    return color.empty() ? say("label.board") : say("label.board-color", {{"color", color}});
  }

  std::string padding_words(const bumper::Piece& one, const std::string& color) const {
    if (one.count == 1)
      return color.empty() ? say("label.padding") : say("label.padding-color", {{"color", color}});
    const std::string pieces = counted_padding(one.count, made_.job);
    return color.empty() ? say("label.paddings", {{"pieces", pieces}})
                         : say("label.paddings-color", {{"color", color}, {"pieces", pieces}});
  }

  const std::string& name_of(const RunSide& leg) const {
    return made_.frame.sides()[static_cast<std::size_t>(leg.side)].name;
  }

  void piece(const bumper::Piece& piece, const std::string& what, const std::string& length) {
    // One that bends has the names of all its sides: the first and the last tell it.
    const std::size_t first = piece.side.find(" + "), last = piece.side.rfind(" + ");
    const std::string side = first == std::string::npos
                                 ? piece.side
                                 : say("label.sides", {{"first", piece.side.substr(0, first)},
                                                       {"last", piece.side.substr(last + 3)}});
    const std::string name = piece.bends.empty() ? piece_name(piece) : piece.bumper + " " + side;
    labels_.push_back({name,
                       {what, say("label.long", {{"length", length}}),
                        end_line(piece.start, next_to(made_, piece, true)),
                        end_line(piece.end, next_to(made_, piece, false))}});
  }

  void cover(std::size_t bumper, const std::string& color) {
    std::vector<std::string> sides;
    for (const RunSide& leg : made_.wraps[bumper].run().sides) sides.push_back(name_of(leg));
    const std::vector<ClothPart> parts = cloth_parts(made_.patterns[bumper], made_.joins[bumper]);
    for (std::size_t k = 0; k < parts.size(); ++k) {
      Label label{say("label.cover", {{"piece", parts[k].name}}),
                  {say("label.pin-inside", {{"color", color}}),
                   say("label.size", {{"length", size(parts[k].box.width())},
                                      {"width", size(parts[k].box.height())}}),
                   say("label.sides-in-order", {{"sides", listed(sides)}})}};
      if (k > 0) label.lines.push_back(say("label.sewn-to", {{"piece", parts[k - 1].name}}));
      if (k + 1 < parts.size())
        label.lines.push_back(say("label.sewn-to", {{"piece", parts[k + 1].name}}));
      labels_.push_back(std::move(label));
    }
  }

  const Made& made_;
  std::vector<Label> labels_;
};

/// Lettering of a label's name, and of its lines.
struct Lettering {
  double name, lines;
};
/// The largest first.
constexpr Lettering kLetterings[] = {
    {kTitleHeight, kTextHeight}, {kTextHeight, kTableHeight}, {kTableHeight, kTableHeight}};

/// A label's words, its upper left corner at the origin, as high as they come to.
struct LabelWords {
  Picture picture;
  bool too_wide = false;  ///< a word of it is wider than the label
};
LabelWords label_words(const Font& labels, double wide, const Label& label,
                       const Lettering& lettering) {
  const double width = wide - 2 * kPad;
  const FlatPoint corner{kPad, -kPad};
  LabelWords words;
  Drawing& onto = words.picture.drawing;
  const plane::Box name =
      draw_text_block(onto, labels, corner, width - kTop, label.name, lettering.name);
  double y = name.lo.y - 0.6 * lettering.lines, widest = name.width() + kTop;
  for (const std::string& line : label.lines) {
    const plane::Box set =
        draw_text_block(onto, labels, {corner.x, y}, width, line, lettering.lines);
    widest = std::max(widest, set.width());
    y = set.lo.y - 0.4 * lettering.lines;
  }
  words.picture.box = {{0, y - 1.0}, {wide, 0}};
  words.too_wide = widest > width + 1e-6;
  onto.text({wide - kPad, corner.y - kTextHeight}, say("label.top"), kTextHeight,
            draw::Anchor::Right);
  return words;
}

/// The largest that no label has a word too wide for: all are lettered alike.
Lettering lettering_for(const Font& labels, double wide, const std::vector<Label>& all) {
  for (const Lettering& lettering : kLetterings)
    if (std::ranges::none_of(all, [&](const Label& label) {
          return label_words(labels, wide, label, lettering).too_wide;
        }))
      return lettering;
  return std::end(kLetterings)[-1];
}

}  // namespace

void add_labels(const Made& made, Flow& flow) {
  const std::vector<Label> all = Labels(made).all();
  flow.chapter(say("chapter.labels"));
  flow.words(say("labels.how"));
  const auto across =
      static_cast<std::size_t>(std::max(1.0, std::floor(flow.width() / kLeastWide)));
  const double wide = flow.width() / static_cast<double>(across);
  const Lettering lettering = lettering_for(flow.labels(), wide, all);
  std::vector<Picture> rows;
  for (std::size_t first = 0; first < all.size(); first += across) {
    const std::size_t count = std::min(across, all.size() - first);
    Picture row;
    double high = kHigh;
    for (std::size_t k = 0; k < count; ++k) {
      const double x = wide * static_cast<double>(k);
      const Picture words = label_words(flow.labels(), wide, all[first + k], lettering).picture;
      row.drawing.add(words.drawing, {false, 0, {x, 0}});
      high = std::max(high, words.box.height());
    }
    row.box = {{0, -high}, {wide * static_cast<double>(count), 0}};
    row.drawing.line(LineKind::Cut, rectangle(row.box.lo, row.box.hi));
    for (std::size_t k = 1; k < count; ++k) {
      const double x = wide * static_cast<double>(k);
      row.drawing.line(LineKind::Cut, {x, -high}, {x, 0});
    }
    rows.push_back(std::move(row));
  }
  // A label or two would look lost on a page: they keep the row above with them.
  if (rows.size() > 1 && all.size() % across > 0) {
    const Picture last = std::move(rows.back());
    rows.pop_back();
    Picture& above = rows.back();
    above.drawing.add(last.drawing, {false, 0, {0, above.box.lo.y - kBetweenRows}});
    above.box.lo.y -= kBetweenRows + last.box.height();
  }
  for (Picture& row : rows) flow.picture(std::move(row));
}

}  // namespace swathe
