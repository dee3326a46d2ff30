#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>
#include <vector>

#include "draw/ordinates.hpp"
#include "screen/canvas.hpp"
#include "screen/texts.hpp"

namespace swathe {
namespace {

using screen_texts::say;

constexpr double kOff = 0.7;    ///< CSS mm: the cloth is drawn clear of what is below it
constexpr double kFloor = 3.0;  ///< the floor runs past the bumper
constexpr double kLead = 4.0;   ///< from the bumper to the words beside it
constexpr double kGap = 1.2;    ///< from a leader to its words
constexpr double kEdge = 2.0;
constexpr double kMostWords = 0.5;               ///< of the width, for words on the right
constexpr double kTurn = std::numbers::pi / 16;  ///< that one chord of the cloth's arcs spans

/// A height above the board's underside, mm, with what it is.
struct Level {
  double z = 0;
  std::string words;
  Subjects shows;
  bool told = true;  ///< to those who cannot see it, too
};

class CutThrough {
 public:
  CutThrough(const Made& made, const Font& labels, const ScreenOptions& options)
      : made_(made),
        section_(made.section),
        units_(made.job.units),
        row_(1.1 * options.text_px / screen::kPxPerMm),
        levels_(levels()),
        canvas_(labels, options, model(), around(labels, options)) {}

  ScreenPicture drawn() && {
    floor();
    padding();
    board();
    cloth();
    canvas_.words({"staple"});
    heights();
    depth();
    flap();
    names();
    return std::move(canvas_).drawn("cut-through", say("cut-through.title"), description());
  }

 private:
  double top() const { return std::max(section_.height_mm(), section_.padding_top_mm()); }
  double ground() const { return -made_.frame.floor_gap().mm(); }
  double low() const { return std::min({ground(), 0.0, section_.padding_bottom_mm()}); }
  plane::Box model() const { return {{0, low()}, {section_.depth_mm(), top()}}; }
  std::string fig(double length_mm) const { return dimension_with_unit(mm(length_mm), units_); }
  double depth_with_cloth() const {
    return section_.depth_mm() + 0.5 * section_.cloth_thickness_mm();
  }

  screen::Around around(const Font& labels, const ScreenOptions& options) const {
    const double height = options.text_px / screen::kPxPerMm * labels.cap_height();
    double widest = 0;
    for (const Level& level : levels_)
      widest = std::max(widest, labels.text_width_mm(level.words, height));
    const double right = std::min(kFloor + kLead + kGap + widest + 2 * kEdge,
                                  kMostWords * options.width_px / screen::kPxPerMm);
    return {kEdge + 3.2 * row_, right, kEdge, kEdge + 2.0 * row_};
  }

  std::vector<Level> levels() const {
    const double thin = section_.cloth_thickness_mm();
    std::vector<Level> all = {{ground(), say("cut-through.floor"), Subject::frame()}};
    const auto add = [&](double z, const char* id, const Subject& shows) {
      all.push_back(
          {z, say(id, {{"height", dimension_with_unit(mm(z - ground()), units_)}}), shows});
    };
    add(0, "cut-through.board-bottom", Subject::boards());
    add(section_.height_mm(), "cut-through.board-top", Subject::boards());
    if (std::abs(section_.padding_bottom_mm()) > thin) {
      add(section_.padding_bottom_mm(), "cut-through.padding-bottom", Subject::padding());
      add(section_.padding_top_mm(), "cut-through.padding-top", Subject::padding());
    }
    const double front = section_.at(0.5 * section_.front_flat_top()).z;
    all.push_back({front, say("cut-through.cloth"), Subject::cloth(), false});
    std::ranges::stable_sort(all, {}, &Level::z);
    return all;
  }

  void floor() {
    Drawing& onto = canvas_.layer("floor", {0.2, 1});
    const Showing frame(onto, Subject::frame());
    const FlatPoint from = canvas_.on({0, ground()});
    const FlatPoint to = canvas_.on({section_.depth_mm(), ground()});
    canvas_.line_on(onto, LineKind::Outline,
                    plane::line(from - FlatPoint{kFloor, 0}, to + FlatPoint{kFloor, 0}));
  }

  void board() {
    Drawing& onto = canvas_.layer("wood", {0.3, 0.9});
    const Showing wood(onto, Subject::boards());
    const plane::Path outline =
        plane::rectangle({0, 0}, {section_.thickness_mm(), section_.height_mm()});
    canvas_.area(onto, {outline});
    canvas_.line(onto, LineKind::Thin, outline);
  }

  /// Each noodle, or the block: square against the board, rounded in front.
  std::vector<plane::Path> padding_outlines() const {
    const PaddingKeys& keys = made_.job.padding;
    const double t = section_.thickness_mm(), bottom = section_.padding_bottom_mm();
    std::vector<plane::Path> outlines;
    if (keys.form == PaddingForm::Noodles) {
      const double radius = 0.5 * keys.diameter.mm();
      for (int k = 0; k < keys.stack; ++k)
        outlines.push_back(plane::circle({t + radius, bottom + (2 * k + 1) * radius}, radius));
      return outlines;
    }
    const double high = section_.padding_top_mm(), far = t + keys.depth.mm();
    const double radius = std::min({keys.edge_radius.mm(), keys.depth.mm(), 0.5 * (high - bottom)});
    const double quarter = std::numbers::sqrt2 - 1;  // tan(90 deg / 4)
    plane::Path block;
    block.closed = true;
    block.vertices = {{{t, bottom}, 0},
                      {{far - radius, bottom}, quarter},
                      {{far, bottom + radius}, 0},
                      {{far, high - radius}, quarter},
                      {{far - radius, high}, 0},
                      {{t, high}, 0}};
    outlines.push_back(std::move(block));
    return outlines;
  }

  void padding() {
    Drawing& onto = canvas_.layer("padding", {0.1, 0.75});
    const Showing all(onto, Subject::padding());
    for (const plane::Path& outline : padding_outlines()) {
      canvas_.area(onto, {outline});
      canvas_.line(onto, LineKind::Outline, outline);
    }
  }

  FlatPoint on_cloth(double u) const {
    const SectionPoint p = section_.at(u);
    return canvas_.on({p.d, p.z}) + kOff * plane::direction(p.tilt);
  }

  void cloth() {
    Drawing& onto = canvas_.layer("cloth", {0.2, 1});
    const Showing all(onto, Subject::cloth());
    std::vector<FlatPoint> line;
    for (const double u :
         section_.heights(section_.cloth_edge_bottom(), section_.cloth_edge_top(), kTurn))
      line.push_back(on_cloth(u));
    canvas_.line_on(onto, LineKind::Cut, open_path(line));
    if (made_.job.cloth.fixing != Fixing::Staples) return;
    Drawing& staples = canvas_.layer("staple", {1, 1});
    const Showing these(staples, Subject::cloth());
    const double up = made_.job.cloth.staple_line.mm();
    for (const double z : {up, section_.height_mm() - up}) {
      const FlatPoint tip = canvas_.on({0, z}) - FlatPoint{kOff, 0};
      canvas_.area_on(
          staples, {},
          {plane::closed_path({tip, tip + FlatPoint{-1.8, 0.7}, tip + FlatPoint{-1.8, -0.7}})});
    }
  }

  /// How far out the bumper's words begin, and its leaders.
  double right_edge() const { return canvas_.on({section_.depth_mm(), 0}).x + kOff + kFloor; }

  /// Heights above the floor, in a column on the right.
  void heights() {
    LabelPlacer& placer = canvas_.words();
    std::vector<double> targets;
    for (const Level& level : levels_) targets.push_back(canvas_.on({0, level.z}).y);
    const std::vector<double> places =
        spread(targets, 1.3 * row_, canvas_.box().lo.y + row_, canvas_.box().hi.y - row_);
    Drawing& onto = canvas_.layer("measures", {0.2, 0.6});
    const double from = right_edge(), to = from + kLead;
    for (std::size_t k = 0; k < levels_.size(); ++k) {
      if (std::abs(places[k] - targets[k]) > 6 * row_) continue;  // zoomed: it is not to be seen
      const TextMark words{{to + kGap, places[k] - 0.5 * canvas_.text_height()},
                           levels_[k].words,
                           canvas_.text_height()};
      const bool is_floor = levels_[k].z == ground();
      const FlatPoint start{is_floor ? from : canvas_.on({section_.depth_mm(), 0}).x + 2 * kOff,
                            targets[k]},
          bend{from, targets[k]}, end{to, places[k]};
      if (placer.is_crossed(start, bend) || placer.is_crossed(bend, end)) continue;
      const Showing said(placer.drawing(), levels_[k].shows);
      if (!placer.try_at(words)) continue;
      const Showing it(onto, levels_[k].shows);
      const plane::Path leader = plane::open_path({start, bend, end});
      canvas_.line_on(onto, LineKind::Thin, leader);
      placer.keep_off(leader);
    }
  }

  void depth() {
    const FlatPoint a = canvas_.on({0, top()});
    const FlatPoint b = canvas_.on({depth_with_cloth(), top()});
    const FlatPoint up{0, kOff + 0.9 * row_};
    const std::string words = say("cut-through.depth", {{"depth", fig(depth_with_cloth())}});
    canvas_.dimension(a + up, b + up, words, Subject::bumpers()) ||
        canvas_.dimension(a + up, b + up, fig(depth_with_cloth()), Subject::bumpers()) ||
        canvas_.note(0.5 * (a + b) + up, words, Subject::bumpers(), 20);
  }

  void flap() {
    const ClothKeys& cloth = made_.job.cloth;
    const bool stapled = cloth.fixing == Fixing::Staples;
    const double reach = (stapled ? cloth.flap : cloth.hook_and_loop.flap).mm();
    const double high = section_.height_mm();
    const FlatPoint out{-(kOff + 2.6 + 0.4 * row_), 0};
    canvas_.dimension(canvas_.on({0, high - reach}) + out, canvas_.on({0, high}) + out,
                      say("cut-through.flap", {{"length", fig(reach)}}), Subject::cloth());
    canvas_.dimension(canvas_.on({0, 0}) + out, canvas_.on({0, reach}) + out,
                      say("cut-through.flap", {{"length", fig(reach)}}), Subject::cloth());
  }

  void names() {
    const double t = section_.thickness_mm();
    const std::vector<plane::Path> outlines = padding_outlines();
    const FlatPoint middle = bounds(outlines.front()).middle();
    canvas_.note(canvas_.on(middle), say("cut-through.padding"), Subject::padding(), 30, true);
    canvas_.note(canvas_.on({0.5 * t, 0.35 * section_.height_mm()}),
                 say("cut-through.board", {{"thickness", exact(mm(t), units_)}}), Subject::boards(),
                 40);
  }

  std::string description() const {
    std::string words = say("cut-through.words", {{"depth", fig(depth_with_cloth())},
                                                  {"around", fig(section_.closed_girth_mm())}});
    for (const Level& level : levels_)
      if (level.told) words += " " + level.words + ".";
    return words;
  }

  const Made& made_;
  const Section& section_;
  Units units_;
  double row_;  ///< from line to line of words, CSS mm
  std::vector<Level> levels_;
  screen::Canvas canvas_;
};

}  // namespace

ScreenPicture screen_cut_through(const Made& made, const Font& labels,
                                 const ScreenOptions& options) {
  return CutThrough(made, labels, screen::within_limits(options)).drawn();
}

}  // namespace swathe
