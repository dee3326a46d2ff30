#include "sheet/section_picture.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/workshop.hpp"
#include "draw/marks.hpp"
#include "draw/measures.hpp"
#include "draw/ordinates.hpp"
#include "sheet/texts.hpp"

namespace swathe {
namespace {

using sheet_texts::say;

constexpr double kAbove = 32.0;                  ///< room for the depths
constexpr double kBeside = 60.0;                 ///< room for the heights, and for what stands left
constexpr double kOff = 0.8;                     ///< the cloth is drawn clear of what is below it
constexpr double kFloor = 10.0;                  ///< the floor runs past the bumper
constexpr double kTurn = std::numbers::pi / 12;  ///< that one chord of the cloth's arcs spans
constexpr double kPad = 3.0;

class SectionDrawing {
 public:
  SectionDrawing(const Made& made, const Font& labels, double width, double most_height)
      : made_(made), section_(made.section), labels_(labels), units_(made.job.units) {
    low_ = std::min(0.0, section_.padding_bottom_mm()) - made.frame.floor_gap().mm();
    low_ = std::min(low_, -made.frame.floor_gap().mm());
    const double high = std::max(section_.height_mm(), section_.padding_top_mm());
    const double above = std::max(kAbove, room_for(depth_figures()) + 2 * kOff);
    const double right = std::max(kBeside, room_for(height_figures()) + kFloor);
    scale_ = std::min((most_height - above - kPad) / (high - low_),
                      (width - kBeside - right) / section_.depth_mm());
    const double height = scale_ * (high - low_) + above + kPad;
    picture_.box = {{0, 0}, {width, height}};
    origin_ = {kBeside + 0.5 * (width - kBeside - right - scale_ * section_.depth_mm()),
               kPad - scale_ * low_};
  }

  Picture drawn() && {
    board_and_padding();
    cloth();
    const FlatPoint floor = on(0, -made_.frame.floor_gap().mm());
    const double end = on(section_.depth_mm(), 0).x + kFloor;
    picture_.drawing.line(LineKind::Outline, {floor.x - kFloor, floor.y}, {end, floor.y});
    heights();
    depths();
    flaps();
    draw_measures(picture_.drawing, labels_, picture_.box, measures_, notes_);
    return std::move(picture_);
  }

 private:
  FlatPoint on(double d, double z) const { return origin_ + scale_ * FlatPoint{d, z}; }
  std::string fig(double length_mm) const { return marked(mm(length_mm), units_); }

  void board_and_padding() {
    Drawing& onto = picture_.drawing;
    const double t = section_.thickness_mm(), height = section_.height_mm();
    const plane::Path board = rectangle(on(0, 0), on(t, height));
    {
      const Showing wood(onto, Subject::boards());
      onto.fill(LineKind::Outline, kWood, {board});
      onto.line(LineKind::Thin, board);
    }
    const Showing padding(onto, Subject::padding());
    const PaddingKeys& keys = made_.job.padding;
    const double bottom = section_.padding_bottom_mm();
    if (keys.form == PaddingForm::Noodles) {
      const double radius = 0.5 * keys.diameter.mm();
      for (int k = 0; k < keys.stack; ++k)
        onto.line(LineKind::Thin,
                  circle(on(t + radius, bottom + (2 * k + 1) * radius), scale_ * radius));
    } else {
      // Square against the board, rounded in front.
      const plane::Path round =
          rounded_rectangle(on(t, bottom), on(t + keys.depth.mm(), section_.padding_top_mm()),
                            scale_ * keys.edge_radius.mm());
      plane::Path block = round;
      if (block.vertices.size() == 8)
        block.vertices = {{on(t, bottom), 0}, round.vertices[1],
                          round.vertices[2],  round.vertices[3],
                          round.vertices[4],  {on(t, section_.padding_top_mm()), 0}};
      onto.line(LineKind::Thin, std::move(block));
    }
    const double middle = keys.form == PaddingForm::Noodles
                              ? bottom + 0.5 * keys.diameter.mm()
                              : 0.5 * (bottom + section_.padding_top_mm());
    const FlatPoint at = on(t + 0.5 * section_.padding_depth_mm(), middle);
    const std::string words = say("cut-through.padding");
    if (labels_.text_width_mm(words, kTextHeight) + kPad < scale_ * section_.padding_depth_mm())
      onto.text(at - FlatPoint{0, 0.5 * kTextHeight}, words, kTextHeight, draw::Anchor::Middle);
    else
      notes_.push_back({at, words, kTextHeight, Subject::padding()});
  }

  void cloth() {
    const Showing all(picture_.drawing, Subject::cloth());
    std::vector<FlatPoint> line;
    for (const double u :
         section_.heights(section_.cloth_edge_bottom(), section_.cloth_edge_top(), kTurn)) {
      const SectionPoint p = section_.at(u);
      line.push_back(on(p.d, p.z) + kOff * plane::direction(p.tilt));
    }
    picture_.drawing.line(LineKind::Outline, open_path(line));
    const SectionPoint front = section_.at(section_.front_flat_top());
    notes_.push_back({on(front.d, front.z) + FlatPoint{kOff, 0}, say("cut-through.cloth"),
                      kTextHeight, Subject::cloth()});
  }

  /// What a row of figures takes beside what it tells.
  double room_for(const std::vector<Ordinate>& figures) const {
    double most = 0;
    for (const Ordinate& one : figures)
      most = std::max(most, ordinate_reach(labels_, one.figure, kTextHeight));
    return most + kPad;
  }

  /// Heights from the floor, each at its height above the board's underside, mm.
  std::vector<Ordinate> height_figures() const {
    const double floor = made_.frame.floor_gap().mm();
    std::vector<Ordinate> ordinates;
    const auto add = [&](double z, const char* what) {
      ordinates.push_back({z, say(what, {{"height", fig(z + floor)}})});
    };
    const double front = 0.5 * section_.cloth_thickness_mm();
    ordinates.push_back({-floor, say("cut-through.floor")});
    add(0, "cut-through.board-bottom");
    add(section_.height_mm(), "cut-through.board-top");
    if (std::abs(section_.padding_bottom_mm()) > front) {
      add(section_.padding_bottom_mm(), "cut-through.padding-bottom");
      add(section_.padding_top_mm(), "cut-through.padding-top");
    }
    return ordinates;
  }

  void heights() {
    std::vector<Ordinate> ordinates = height_figures();
    for (Ordinate& one : ordinates) one.at = on(0, one.at).y;
    const double right = on(section_.depth_mm(), 0).x + kFloor;
    draw_ordinates(picture_.drawing, labels_, std::move(ordinates), OrdinateEdge::Right, right,
                   0.5 * kTextHeight, picture_.box.hi.y, kTextHeight);
  }

  double depth_with_cloth() const {
    return section_.depth_mm() + 0.5 * section_.cloth_thickness_mm();
  }

  /// Depths from the board's back, each at its own, mm.
  std::vector<Ordinate> depth_figures() const {
    const double t = section_.thickness_mm();
    return {{0, "0"}, {t, fig(t)}, {t + section_.padding_depth_mm(), fig(depth_with_cloth())}};
  }

  void depths() {
    std::vector<Ordinate> ordinates = depth_figures();
    for (Ordinate& one : ordinates) one.at = on(one.at, 0).x;
    const double top = std::max(section_.height_mm(), section_.padding_top_mm());
    draw_ordinates(picture_.drawing, labels_, std::move(ordinates), OrdinateEdge::Above,
                   on(0, top).y + 2 * kOff, on(0, 0).x - kFloor,
                   on(depth_with_cloth(), 0).x + kFloor, kTextHeight);
  }

  void flaps() {
    const ClothKeys& cloth = made_.job.cloth;
    const bool stapled = cloth.fixing == Fixing::Staples;
    const double reach = (stapled ? cloth.flap : cloth.hook_and_loop.flap).mm();
    const double top = section_.height_mm();
    const double x = on(0, 0).x - 5.0;
    const Showing all(picture_.drawing, Subject::cloth());
    const auto flap = [&](double from, double to) {
      measures_.push_back({{x, on(0, from).y},
                           {x, on(0, to).y},
                           say("cut-through.flap", {{"length", fig(reach)}}),
                           kTextHeight,
                           Subject::cloth()});
    };
    flap(top - reach, top);
    flap(0, reach);
    if (stapled) {
      const double line = cloth.staple_line.mm();
      for (const double z : {line, top - line}) {
        const FlatPoint back = on(0, z) - FlatPoint{kOff, 0};
        picture_.drawing.fill(LineKind::Staple, kBlack, {closed_path(arrow_head(back, {1, 0}))});
      }
      notes_.push_back({on(0, line) - FlatPoint{kOff + 3.5, 0},
                        say("cut-through.staples", {{"length", fig(line)}}), kTextHeight,
                        Subject::cloth()});
    }
  }

  const Made& made_;
  const Section& section_;
  const Font& labels_;
  Units units_;
  double low_ = 0, scale_ = 1;
  FlatPoint origin_;
  Picture picture_;
  std::vector<Dimension> measures_;
  std::vector<Note> notes_;
};

}  // namespace

Picture section_picture(const Made& made, const Font& labels, double width_mm,
                        double most_height_mm) {
  return SectionDrawing(made, labels, width_mm, most_height_mm).drawn();
}

}  // namespace swathe
