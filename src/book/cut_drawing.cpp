#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "base/workshop.hpp"
#include "book/cut_diagram.hpp"
#include "book/piece_table.hpp"
#include "book/texts.hpp"
#include "draw/label_placer.hpp"
#include "draw/measures.hpp"
#include "draw/ordinates.hpp"

namespace swathe {
namespace {

using book_texts::say;

constexpr double kStrip = 9.0;    ///< height of a stick's drawing, and the least of a strip's
constexpr double kSheet = 160.0;  ///< height of a sheet's at most
constexpr double kTagHigh = 4.2;  ///< of a cut's number in its frame
constexpr double kTagPad = 0.9;
constexpr double kPad = 0.9;        ///< between a name and its piece's edges
constexpr double kLetters = 1.4;    ///< a line of words, of its capitals' height
constexpr double kFrom = 0.8;       ///< from a cut to its number
constexpr double kLeader = 3.0;     ///< from a rip to its number
constexpr double kFurthest = 30.0;  ///< that the number of a narrow piece's cut may stand away
constexpr const char* kBetween = ",   ";
constexpr double kAlike = 14.0;  ///< room for "x 3"

/// Pieces and the numbers of the cuts between them.
class Cuts {
 public:
  /// All but the pieces shows the stock.
  Cuts(const Font& labels, Units units, SizeWords size, Subject stock)
      : labels_(labels), units_(units), size_(size), stock_(std::move(stock)) {}

  /// A strip between two heights of the page, its stock's start at `left`.
  void strip(const CutStrip& strip, double scale, double left, double low, double high) {
    for (std::size_t k = 0; k < strip.pieces.size(); ++k) {
      const CutPiece& piece = strip.pieces[k];
      const plane::Box box{{left + scale * piece.from, low}, {left + scale * piece.to, high}};
      {
        const Showing shown(onto_, piece.shows);
        onto_.line(LineKind::Outline, rectangle(box.lo, box.hi));
      }
      if (piece.is_waste()) tints_.fill(LineKind::Outline, kPale, {rectangle(box.lo, box.hi)});
      const bool cut = k + 1 < strip.pieces.size() || strip.trimmed;
      Named named{box,
                  piece.is_waste() ? say("cuts.waste") : piece.name,
                  fig(piece.length()),
                  say("cuts.after", {{"number", std::to_string(cuts_)}}),
                  0.0,
                  piece.shows};
      if (cut) {
        named.number = tag(box);
        named.by = std::to_string(cuts_);
      }
      names_.push_back(std::move(named));
    }
  }

  /// The numbers of cuts along the feet of strips, beside their right ends; heights fall.
  void rips(double right, std::vector<double> heights) {
    std::ranges::reverse(heights);
    const std::vector<double> places = spread(heights, 1.1 * kTagHigh, 0.5 * kTagHigh, 1e3);
    for (std::size_t k = heights.size(); k-- > 0;) {
      const std::string number = std::to_string(++cuts_);
      const FlatPoint end{right + kLeader, places[k]};
      onto_.line(LineKind::Thin, {right, heights[k]}, end);
      frame(number, end - FlatPoint{0, 0.5 * kTagHigh});
    }
  }

  void waste(const plane::Box& box, double length, double width) {
    tints_.fill(LineKind::Outline, kPale, {rectangle(box.lo, box.hi)});
    onto_.line(LineKind::Outline, rectangle(box.lo, box.hi));
    names_.push_back({box,
                      say("cuts.waste"),
                      say("cuts.waste-size", {{"length", fig(length)}, {"width", fig(width)}}),
                      "",
                      0.0,
                      {}});
  }

  /// Names last; those too long for their pieces stand below, by the cuts' numbers.
  Picture named(double width, double high) && {
    Picture picture;
    picture.box = {{0, 0}, {width, high}};
    std::string line;
    std::vector<Subject> in_line;
    double y = 0;
    const auto write = [&] {
      y -= kLetters * kTextHeight;
      const Showing shown(onto_, Subjects(std::exchange(in_line, {})));
      onto_.text({0, y}, line, kTextHeight);
    };
    for (const Named& one : names_) {
      if (inside(one)) continue;
      const std::string entry = fmt::format("{}: {} {}", one.by, one.name, one.size);
      const std::string longer =
          line.empty() ? entry : fmt::format("{}{}{}", line, kBetween, entry);
      if (!line.empty() && labels_.text_width_mm(longer, kTextHeight) > width) {
        write();
        line = entry;
      } else {
        line = longer;
      }
      for (const Subject& subject : one.shows)
        if (std::ranges::count(in_line, subject) == 0) in_line.push_back(subject);
    }
    if (!line.empty()) write();
    if (y < 0) picture.box.lo.y = y - 0.3 * kTextHeight;
    LabelPlacer placer(onto_, labels_, picture.box);
    for (const auto& [at, number] : outside_) placer.near(at, number, kTableHeight, kFurthest);
    {
      const Showing stock(picture.drawing, stock_);
      picture.drawing.add(onto_, {});
      picture.drawing.add(tints_, {});
    }
    return picture;
  }

 private:
  struct Named {
    plane::Box box;
    std::string name, size;
    std::string by;     ///< the cut that frees it: "4"; of a rest "after 6"
    double number = 0;  ///< width that its cut's number takes
    Subjects shows{};
  };
  std::string fig(double length_mm) const { return size_(mm(length_mm), units_); }

  /// One line, else two, in the middle of what the cut's number leaves.
  bool inside(const Named& one) {
    const Showing shown(onto_, one.shows);
    const double wide = one.box.width() - one.number - 2 * kPad;
    const double high = one.box.height() - 2 * kPad;
    const std::string line = one.name + " " + one.size;
    const FlatPoint middle = one.box.middle() - FlatPoint{0.5 * one.number, 0};
    const auto fits = [&](const std::string& words, double height) {
      return labels_.text_width_mm(words, height) <= wide;
    };
    for (const double height : {kTextHeight, kTableHeight}) {
      if (fits(line, height) && kLetters * height <= high) {
        onto_.text(middle - FlatPoint{0, 0.5 * height}, line, height, draw::Anchor::Middle);
        return true;
      }
      if (fits(one.name, height) && fits(one.size, height) && 2 * kLetters * height <= high) {
        onto_.text(middle + FlatPoint{0, 0.3 * height}, one.name, height, draw::Anchor::Middle);
        onto_.text(middle - FlatPoint{0, 1.1 * height}, one.size, height, draw::Anchor::Middle);
        return true;
      }
    }
    return false;
  }

  double frame_width(const std::string& number) const {
    return labels_.text_width_mm(number, kTableHeight) + 2 * kTagPad;
  }
  void frame(const std::string& number, FlatPoint low) {
    const double wide = frame_width(number);
    onto_.line(LineKind::Thin, rectangle(low, low + FlatPoint{wide, kTagHigh}));
    onto_.text({low.x + 0.5 * wide, low.y + 0.5 * (kTagHigh - kTableHeight)}, number, kTableHeight,
               draw::Anchor::Middle);
  }

  /// At the foot of the piece that the cut frees, in its corner by the cut; the width it takes.
  double tag(const plane::Box& piece) {
    const std::string number = std::to_string(++cuts_);
    const double wide = frame_width(number) + 2 * kFrom;
    if (piece.width() < wide || piece.height() < kTagHigh + 2 * kFrom) {
      outside_.push_back({{piece.hi.x, piece.lo.y + kFrom}, number});
      return 0;
    }
    frame(number, {piece.hi.x + kFrom - wide, piece.lo.y + kFrom});
    return wide;
  }

  const Font& labels_;
  Units units_;
  SizeWords size_;
  Subject stock_;
  Drawing onto_, tints_;
  int cuts_ = 0;
  std::vector<Named> names_;
  std::vector<std::pair<FlatPoint, std::string>> outside_;  ///< numbers too large for their piece
};

}  // namespace

Picture draw_sheet_cuts(const CutSheet& sheet, const Font& labels, Units units, double width_mm) {
  const double scale = std::min((width_mm - kAlike) / sheet.length, kSheet / sheet.width);
  const double down = std::max(scale, std::min(kStrip / sheet.strip, kSheet / sheet.width));
  const double high = down * sheet.width, right = scale * sheet.length;
  Cuts cuts(labels, units, sawn, Subject::boards());
  const auto y_of = [&](double below) { return high - down * below; };
  std::vector<double> rips;
  for (int k = 0; k < sheet.rips(); ++k)
    rips.push_back(y_of(sheet.top_of(static_cast<std::size_t>(k)) + sheet.strip));
  cuts.rips(right, std::move(rips));
  for (std::size_t k = 0; k < sheet.strips.size(); ++k) {
    const double top = sheet.top_of(k);
    cuts.strip(sheet.strips[k], scale, 0, y_of(top + sheet.strip), y_of(top));
  }
  if (sheet.waste > 0) cuts.waste({{0, 0}, {right, down * sheet.waste}}, sheet.length, sheet.waste);
  return std::move(cuts).named(width_mm, high);
}

Picture draw_stick_cuts(const CutStick& stick, const Font& labels, Units units, double width_mm) {
  const double scale = (width_mm - kAlike) / stick.length;
  Cuts cuts(labels, units, dimension, Subject::padding());
  cuts.strip(stick.strip, scale, 0, 0, kStrip);
  Picture picture = std::move(cuts).named(width_mm, kStrip);
  if (stick.alike > 1) {
    const Showing padding(picture.drawing, Subject::padding());
    picture.drawing.text({width_mm, 0.5 * (kStrip - kTextHeight)},
                         say("cuts.times", {{"count", std::to_string(stick.alike)}}), kTextHeight,
                         draw::Anchor::Right);
  }
  return picture;
}

}  // namespace swathe
