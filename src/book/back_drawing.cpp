#include <algorithm>

#include "book/neighbors.hpp"
#include "draw/label_placer.hpp"
#include "draw/marks.hpp"
#include "draw/measures.hpp"
#include "rules/practice.hpp"
#include "sheet/back_plan.hpp"

namespace swathe {
namespace {

constexpr double kInBox = 0.3;   ///< from a number to the lines round it
constexpr double kBoard = 21.0;  ///< height of a board's drawing, where its length allows it
constexpr int kLeastPercent = 80, kPercentStep = 2;  ///< of that height
constexpr double kMargin = 7.0;      ///< left, for numbers that stand beside their board
constexpr double kBetween = 5.0;     ///< boards
constexpr double kHeading = 6.5;     ///< room for a row's words above it
constexpr double kCrownHalf = 0.28;  ///< half a crown's thickness on paper
constexpr double kFurthest = 14.0;   ///< that a staple's number stands from it, with a leader
constexpr double kAside = 1.3;       ///< that it may move along the line for room
constexpr int kAlways = 5;           ///< every so many staples bear a number wherever it stands

class Backs {
 public:
  Backs(const Made& made, std::size_t bumper, const Font& labels, double width)
      : made_(made),
        bumper_(bumper),
        name_(made.patterns[bumper].bumper),
        labels_(labels),
        width_(width),
        backs_(backs_of(made, bumper)) {
    // From behind, a bumper's last side is on the left.
    std::ranges::reverse(backs_);
    const auto longest = std::ranges::max_element(backs_, {}, &Backs::length);
    height_ = made.section.height_mm();
    // A little smaller where that saves a row.
    const double most = std::min((width - kMargin) / length(*longest), kBoard / height_);
    scale_ = most;
    lay_out();
    const int rows = rows_;
    for (int percent = 100; percent >= kLeastPercent && rows_ == rows; percent -= kPercentStep) {
      scale_ = percent / 100.0 * most;
      lay_out();
    }
    if (rows_ < rows) return;
    scale_ = most;
    lay_out();
  }

  Picture drawn() && {
    Picture picture;
    picture.box = {{0, 0}, {width_, rows_ * row()}};
    for (std::size_t k = 0; k < backs_.size(); ++k) draw(picture.drawing, backs_[k], places_[k]);
    for (std::size_t k = 0; k < backs_.size(); ++k) name(picture.drawing, backs_[k], places_[k]);
    LabelPlacer placer(picture.drawing, labels_, picture.box);
    number(placer);
    return picture;
  }

 private:
  static double length(const BoardBack& back) { return back.to_x - back.from_x; }
  std::string words(const BoardBack& back) const { return board_name(made_, bumper_, back.leg); }
  double row() const { return scale_ * height_ + kHeading; }
  FlatPoint on(const BoardBack& back, FlatPoint corner, FlatPoint p) const {
    return corner + scale_ * FlatPoint{back.to_x - p.x, p.y};
  }
  plane::Box on(const BoardBack& back, FlatPoint corner, const plane::Box& box) const {
    plane::Box placed;
    placed.cover(on(back, corner, box.lo));
    placed.cover(on(back, corner, box.hi));
    return placed;
  }

  /// As many boards side by side as fit.
  void lay_out() {
    places_.clear();
    rows_ = 0;
    double x = kMargin;
    std::vector<int> rows;
    for (const BoardBack& back : backs_) {
      const double wide =
          std::max(scale_ * length(back), labels_.text_width_mm(words(back), kTableHeight));
      if (x > kMargin && x + wide > width_ + 1e-6) {
        ++rows_;
        x = kMargin;
      }
      places_.push_back({x, 0});
      rows.push_back(rows_);
      x += wide + kBetween;
    }
    ++rows_;
    for (std::size_t k = 0; k < rows.size(); ++k) places_[k].y = (rows_ - 1 - rows[k]) * row();
  }

  void draw(Drawing& onto, const BoardBack& back, FlatPoint corner) const {
    const Showing board(onto, Subject::board(name_, back.side));
    const FlatPoint size = scale_ * FlatPoint{length(back), height_};
    onto.line(LineKind::Outline, rectangle(corner, corner + size));
    for (const BracketOnBoard& bracket : back.brackets) {
      const Showing one(onto, Subject::bracket(bracket.number));
      const plane::Box box = on(back, corner, bracket.box);
      onto.fill(LineKind::Outline, kWood, {rectangle(box.lo, box.hi)});
      onto.line(LineKind::Thin, rectangle(box.lo, box.hi));
    }
    for (const plane::Box& strip : back.strips) {
      const plane::Box box = on(back, corner, strip);
      onto.fill(LineKind::Stitch, kPale, {rectangle(box.lo, box.hi)});
      onto.line(LineKind::Thin, rectangle(box.lo, box.hi));
    }
    std::vector<plane::Path> crowns;
    for (const StapleOnBoard& staple : back.staples) {
      const FlatPoint at = on(back, corner, FlatPoint{staple.x, staple.z});
      const double half = 0.5 * scale_ * practice::kStapleCrown.mm();
      const FlatPoint reach =
          staple.upright ? FlatPoint{kCrownHalf, half} : FlatPoint{half, kCrownHalf};
      crowns.push_back(rectangle(at - reach, at + reach));
    }
    if (!crowns.empty()) onto.fill(LineKind::Staple, kBlack, std::move(crowns));
  }

  /// The number on the board's inner side of its staple, where it finds room; further off with a
  /// leader for every so many that find none.
  void number(LabelPlacer& placer) const {
    struct Left {
      FlatPoint at;
      std::string words;
    };
    std::vector<Left> left;
    for (std::size_t k = 0; k < backs_.size(); ++k)
      for (const StapleOnBoard& staple : backs_[k].staples) {
        const FlatPoint at = on(backs_[k], places_[k], FlatPoint{staple.x, staple.z});
        const std::string words = std::to_string(staple.order);
        TextMark text{at, words, kTableHeight, draw::Anchor::Middle};
        text.at.y += staple.z > 0.5 * height_ ? -kCrownHalf - 1.2 - 1.08 * kTableHeight
                                              : kCrownHalf + 1.2 + 0.3 * kTableHeight;
        TextMark before = text, after = text;
        before.at.x -= kAside;
        after.at.x += kAside;
        if (!staple.upright && placer.first_free({text, before, after})) continue;
        if (staple.order % kAlways == 0 || staple.order == 1) left.push_back({at, words});
      }
    for (const Left& one : left) placer.near(one.at, one.words, kTableHeight, kFurthest);
  }

  /// The side above its board, a bracket's number in its place, or beside a small one.
  void name(Drawing& onto, const BoardBack& back, FlatPoint corner) const {
    const Showing board(onto, Subject::board(name_, back.side));
    const double wide = scale_ * length(back);
    const double height =
        labels_.text_width_mm(words(back), kTextHeight) <= wide ? kTextHeight : kTableHeight;
    onto.text({corner.x, corner.y + scale_ * height_ + 1.8}, words(back), height);
    for (const BracketOnBoard& bracket : back.brackets) {
      const Showing one(onto, Subject::bracket(bracket.number));
      const plane::Box box = on(back, corner, bracket.box);
      const std::string number = std::to_string(bracket.number);
      const double needs = labels_.text_width_mm(number, kTableHeight) + 2 * kInBox;
      const FlatPoint base = box.middle() - FlatPoint{0, 0.5 * kTableHeight};
      if (box.width() >= needs && box.height() >= 1.4 * kTableHeight + 2 * kInBox)
        onto.text(base, number, kTableHeight, draw::Anchor::Middle);
      else if (box.lo.x - corner.x >= needs)
        onto.text({box.lo.x - 1.0, base.y}, number, kTableHeight, draw::Anchor::Right);
      else  // past the board's end where there is no room on it
        onto.text({(box.hi.x + needs < corner.x + wide ? box.hi.x : corner.x + wide) + 1.0, base.y},
                  number, kTableHeight, draw::Anchor::Left);
    }
  }

  const Made& made_;
  std::size_t bumper_;
  const std::string& name_;
  const Font& labels_;
  double width_, height_ = 0, scale_ = 1;
  std::vector<BoardBack> backs_;
  std::vector<FlatPoint> places_;  ///< lower left corners
  int rows_ = 0;
};

}  // namespace

Picture draw_backs(const Made& made, std::size_t bumper, const Font& labels, double width_mm) {
  return Backs(made, bumper, labels, width_mm).drawn();
}

}  // namespace swathe
