#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "screen/canvas.hpp"
#include "screen/standing.hpp"
#include "screen/texts.hpp"
#include "sheet/shown_subjects.hpp"
#include "sheet/sight_chart.hpp"

namespace swathe {
namespace {

using screen_texts::say;

constexpr double kMachine = 0.4, kLeastMachine = 0.25;  ///< of the radius, inside the bands
constexpr double kBandRows = 1.6;   ///< rows of words that a band should have room for
constexpr double kWayOff = 1.6;     ///< CSS mm from the chart to the words round it
constexpr double kKeyGap = 6.0;     ///< CSS mm from the words beside the chart to it
constexpr double kEdge = 2.0;       ///< CSS mm
constexpr double kHatch = 1.6;      ///< CSS mm from line to line
constexpr double kEye = 1.5;        ///< CSS mm: half of the eye's dot
constexpr double kSampleGap = 1.6;  ///< CSS mm
constexpr double kSample = 5.0;     ///< CSS mm: of a kind of band beside its words

double rad(double deg) { return degrees(deg).radians(); }

/// The circles at one eye height, the nearest first.
std::vector<SightRing> rings_at(const Made& made, Length eye_height) {
  std::vector<Length> distances = made.job.sight.distance;
  std::ranges::sort(distances);
  distances.erase(std::unique(distances.begin(), distances.end()), distances.end());
  std::optional<Sightlines> lines;  // where the job has no such circle
  std::vector<SightRing> rings;
  for (const Length distance : distances) {
    const auto known = std::ranges::find_if(made.sight->rings, [&](const SightRing& ring) {
      return ring.distance == distance && ring.eye_height == eye_height;
    });
    if (known != made.sight->rings.end()) {
      rings.push_back(*known);
      continue;
    }
    if (!lines) lines.emplace(made.sight->scene, eye_height, made.sight->criterion);
    rings.push_back(ring_at(made.sight->scene, *lines, distance));
  }
  return rings;
}

class RoundChart {
 public:
  RoundChart(const Made& made, const Font& labels, const Observer& from,
             const ScreenOptions& options)
      : made_(made),
        from_(from),
        row_(1.1 * options.text_px / screen::kPxPerMm),
        canvas_(labels, options) {
    if (made.sight) rings_ = rings_at(made, from.eye_height);
    const plane::Box& box = canvas_.box();
    const double across = box.height() - 2 * (kEdge + 1.4 * row_);
    double beside = 0;  // words on the left and on the right
    for (const char* way : {"chart.left", "chart.right"})
      beside = std::max(beside, kWayOff + 0.5 + canvas_.text_width(say(way)));
    radius_ = 0.5 * std::max(10.0, std::min(across, box.width() - 2 * (kEdge + beside)));
    const double key = key_width(), all = key + 2 * beside + 2 * radius_;
    key_ = made.sight && all + 2 * kEdge < box.width();
    center_ = box.middle();
    key_left_ = center_.x - 0.5 * all;
    if (key_) center_.x = key_left_ + key + beside + radius_;
    const auto count = static_cast<double>(std::max<std::size_t>(1, rings_.size()));
    // Bands high enough for words, where that leaves room for the machine.
    inner_ =
        std::clamp(radius_ - count * kBandRows * row_, kLeastMachine * radius_, kMachine * radius_);
    band_ = (radius_ - inner_) / count;
  }

  ScreenPicture drawn() && {
    machine();
    bands();
    const screen::Rings rings = scale_of_rings();
    eye(rings);
    words();
    ScreenPicture picture = std::move(canvas_).drawn("chart", say("chart.title"), description());
    picture.rings = rings;
    return picture;
  }

 private:
  double inner_of(std::size_t ring) const { return inner_ + band_ * static_cast<double>(ring); }
  std::string height_words() const { return exact(from_.eye_height, made_.job.units); }

  /// The bumpers from above, and a bar before each number.
  void machine() {
    const sight::Scene bare =
        made_.sight ? sight::Scene{} : make_scene(made_.wraps, {}, made_.job.sight.blind);
    const sight::Scene& scene = made_.sight ? made_.sight->scene : bare;
    double reach = 1;
    const auto plan_of = [](const sight::Solid& solid) {
      return solid.plan_at(0.5 * (solid.bottom() + solid.top()));
    };
    for (const sight::Solid& solid : scene.solids)
      for (const FlatPoint p : plan_of(solid)) reach = std::max(reach, apart(p, scene.center));
    const double scale = 0.86 * inner_ / reach;
    const auto on = [&](FlatPoint p) { return center_ + scale * (p - scene.center); };
    Drawing& bumpers = canvas_.layer("bumper", {0.2, 0.8});
    Drawing& blinds = canvas_.layer("blind", {0.6, 0.8});
    for (const sight::Solid& solid : scene.solids) {
      Drawing& onto = solid.name.starts_with("blind") ? blinds : bumpers;
      const Showing one(onto, subject_of(solid));
      plane::Polygon outline;
      for (const FlatPoint p : plan_of(solid)) outline.push_back(on(p));
      const plane::Path path = closed_path(thinned(outline, 0.15 / screen::kPxPerMm));
      canvas_.area_on(onto, {}, {path});
      canvas_.line_on(onto, LineKind::Thin, path);
    }
    Drawing& numbers = canvas_.layer("numeral", {1, 1});
    for (std::size_t n = 0; n < scene.numbers.size(); ++n)
      for (const DigitInSpace& digit : scene.numbers[n].digits) {
        const Showing one(numbers, showing_subject(made_, n));
        const FlatPoint out = unit(FlatPoint{digit.normal.x, digit.normal.y});
        const auto corner = [&](const SpacePoint& p, double off) {
          const FlatPoint front{p.x, p.y};
          const double behind = dot(FlatPoint{digit.middle.x, digit.middle.y} - front, out);
          return on(front + behind * out) + off * out;
        };
        canvas_.area_on(
            numbers, {},
            {plane::closed_path({corner(digit.corners[0], 0.3), corner(digit.corners[0], 1.0),
                                 corner(digit.corners[1], 1.0), corner(digit.corners[1], 0.3)})});
      }
    Drawing& ahead = canvas_.layer("ahead", {1, 0.8});
    const Showing frame(ahead, Subject::frame());
    const FlatPoint tip = center_ + FlatPoint{0, 0.3 * inner_};
    canvas_.line_on(ahead, LineKind::Outline,
                    plane::line(center_ - FlatPoint{0, 0.2 * inner_}, tip));
    canvas_.line_on(
        ahead, LineKind::Outline,
        plane::open_path({tip + FlatPoint{-1.3, -1.8}, tip, tip + FlatPoint{1.3, -1.8}}));
  }

  /// What an arc is of: the number that is read, or that looks like another.
  Subjects shown_by_arc(const SightArc& arc) const {
    if (arc.number < 0) return Subject::numerals();
    return showing_subject(made_, static_cast<std::size_t>(arc.number));
  }

  void bands() {
    Drawing& reads = canvas_.layer("reads", {0.03, 0.8});
    Drawing& another = canvas_.layer("another", {0.12, 0.8});
    Drawing& nothing = canvas_.layer("nothing", {0.55, 0.8});
    Drawing& edges = canvas_.layer("edges", {0.2, 0.8});
    for (std::size_t k = 0; k < rings_.size(); ++k) {
      const double inner = inner_of(k) + 0.25, outer = inner_of(k + 1) - 0.25;
      for (const SightArc& arc : rings_[k].arcs) {
        Drawing& onto = arc.reads == Reads::Number    ? reads
                        : arc.reads == Reads::Another ? another
                                                      : nothing;
        const Showing one(onto, shown_by_arc(arc));
        canvas_.area_on(onto, {},
                        {band_part(center_, inner, outer, rad(arc.from_deg), rad(arc.to_deg))});
        if (arc.reads == Reads::Another) hatch(onto, inner, outer, arc);
      }
      const Showing all(edges, Subject::numerals());
      for (const double radius : {inner, outer})
        canvas_.line_on(edges, LineKind::Thin, circle(center_, radius));
      if (rings_[k].arcs.size() < 2) continue;
      for (const SightArc& arc : rings_[k].arcs) {
        const FlatPoint way = towards(rad(arc.from_deg));
        canvas_.line_on(edges, LineKind::Thin,
                        plane::line(center_ + inner * way, center_ + outer * way));
      }
    }
  }

  void hatch(Drawing& onto, double inner, double outer, const SightArc& arc) const {
    const double step = kHatch / outer;  // radians
    for (double at = rad(arc.from_deg) + 0.5 * step; at < rad(arc.to_deg); at += step)
      canvas_.line_on(onto, LineKind::Thin,
                      plane::line(center_ + inner * towards(at), center_ + outer * towards(at)));
  }

  screen::Rings scale_of_rings() const {
    screen::Rings rings;
    const auto px = [](double css_mm) { return screen::kPxPerMm * css_mm; };
    rings.center_px = {px(center_.x), px(canvas_.box().hi.y - center_.y)};
    const Length near = nearest_eye(made_);
    if (rings_.empty()) {
      rings.radii = {{px(inner_), near}, {px(radius_), std::max(10 * near, near)}};
      return rings;
    }
    rings.radii.emplace_back(px(inner_), std::min(near, 0.5 * rings_.front().distance));
    for (std::size_t k = 0; k < rings_.size(); ++k)
      rings.radii.emplace_back(px(inner_of(k) + 0.5 * band_), rings_[k].distance);
    const Length last = rings_.back().distance, before = rings.radii[rings_.size() - 1].second;
    rings.radii.emplace_back(px(radius_), last + 0.5 * (last - before));
    return rings;
  }

  /// Where the observer stands, and the way to the machine.
  void eye(const screen::Rings& rings) {
    const FlatPoint way = towards(from_.bearing.radians());
    const double out = rings.radius_px(from_.distance) / screen::kPxPerMm;
    Drawing& onto = canvas_.layer("eye", {1, 1});
    eye_ = center_ + out * way;
    canvas_.line_on(onto, LineKind::Outline,
                    plane::line(eye_ - kEye * way, center_ + 0.98 * inner_ * way));
    canvas_.area_on(onto, {}, {circle(eye_, kEye)});
  }

  // Words, the more important ones first.

  void words() {
    canvas_.words({"eye"});
    ways();
    for (std::size_t k = 0; k < rings_.size(); ++k) name_band(k);
    if (key_) key();
  }

  void ways() {
    struct Way {
      const char* id;
      double deg;
      draw::Anchor anchor;
    };
    LabelPlacer& placer = canvas_.words();
    const Showing frame(placer.drawing(), Subject::frame());
    const double height = canvas_.text_height();
    for (const Way& way :
         {Way{"chart.front", 0, draw::Anchor::Middle}, Way{"chart.left", 90, draw::Anchor::Right},
          Way{"chart.back", 180, draw::Anchor::Middle},
          Way{"chart.right", 270, draw::Anchor::Left}}) {
      const FlatPoint out = towards(rad(way.deg));
      const FlatPoint at =
          center_ + (radius_ + kWayOff) * out + FlatPoint{0, (0.6 * out.y - 0.5) * height};
      placer.try_at({at, say(way.id), height, way.anchor});
    }
  }

  /// A band's distance, where the band can be read from if there is room.
  void name_band(std::size_t ring) {
    LabelPlacer& placer = canvas_.words();
    const Showing numbers(placer.drawing(), Subject::numerals());
    const double radius = inner_of(ring) + 0.5 * band_;
    const std::string text = walked(rings_[ring].distance, made_.job.units);
    const auto reads_at = [&](double deg) {
      return std::ranges::any_of(rings_[ring].arcs, [&](const SightArc& arc) {
        return arc.reads == Reads::Number &&
               ((deg >= arc.from_deg && deg <= arc.to_deg) || deg + 360 <= arc.to_deg);
      });
    };
    for (const bool reads : {true, false})
      for (int k = 0; k < 24; ++k) {
        const double deg = 15.0 * ((k + 18) % 24);
        if (reads_at(deg) != reads) continue;
        const FlatPoint at = center_ + radius * towards(rad(deg));
        if (placer.try_at({at - FlatPoint{0, 0.5 * canvas_.text_height()}, text,
                           canvas_.text_height(), draw::Anchor::Middle}))
          return;
      }
  }

  struct Kind {
    const char* layer;
    std::string words;
  };
  std::array<Kind, 3> kinds() const {
    return {{{"reads", say("chart.reads", {{"number", made_.job.number}})},
             {"another", say("chart.another")},
             {"nothing", say("chart.nothing")}}};
  }
  std::string eye_words() const { return say("chart.eyes", {{"height", height_words()}}); }
  double key_width() const {
    double widest = canvas_.text_width(eye_words());
    for (const Kind& kind : kinds()) widest = std::max(widest, canvas_.text_width(kind.words));
    return kSample + kSampleGap + widest + kKeyGap;
  }

  /// The kinds of band beside their words, on the left.
  void key() {
    LabelPlacer& placer = canvas_.words();
    const Showing all(placer.drawing(), Subject::numerals());
    FlatPoint at{key_left_, center_.y + radius_ - row_};
    for (const Kind& kind : kinds()) {
      const plane::Box box{at, at + FlatPoint{kSample, 0.8 * row_}};
      const TextMark text{{box.hi.x + kSampleGap, box.middle().y - 0.5 * canvas_.text_height()},
                          kind.words,
                          canvas_.text_height()};
      at.y -= 1.5 * row_;
      if (!placer.try_at(text)) continue;
      Drawing& onto = canvas_.layer(kind.layer);
      const Showing sample(onto, Subject::numerals());
      canvas_.area_on(onto, {}, {plane::rectangle(box.lo, box.hi)});
      canvas_.line_on(onto, LineKind::Thin, plane::rectangle(box.lo, box.hi));
      if (std::string_view(kind.layer) != "another") continue;
      for (double x = box.lo.x + 0.5 * kHatch; x < box.hi.x; x += kHatch)
        canvas_.line_on(onto, LineKind::Thin, plane::line({x, box.lo.y}, {x, box.hi.y}));
    }
    placer.try_at({{key_left_ + kSample + kSampleGap, at.y + 0.2 * row_},
                   eye_words(),
                   canvas_.text_height()});
  }

  std::string description() const {
    if (rings_.empty()) return say("chart.words-no-number");
    std::string words = say("chart.words", {{"height", height_words()}});
    for (const SightRing& ring : rings_)
      words += " " + say("chart.words-ring",
                         {{"distance", walked(ring.distance, made_.job.units)},
                          {"share", plain_number(100 * ring.fraction(Reads::Number), 0)}});
    return words;
  }

  const Made& made_;
  const Observer& from_;
  std::vector<SightRing> rings_;
  bool key_ = false;
  double row_;  ///< from line to line of words, CSS mm
  screen::Canvas canvas_;
  FlatPoint center_, eye_;
  double key_left_ = 0;
  double radius_ = 1, inner_ = 1, band_ = 1;  ///< CSS mm
};

}  // namespace

double screen::Rings::radius_px(Length distance) const {
  if (radii.empty()) return 0;
  if (distance <= radii.front().second) return radii.front().first;
  for (std::size_t k = 1; k < radii.size(); ++k) {
    const auto& [near, from] = radii[k - 1];
    const auto& [far, to] = radii[k];
    if (distance <= to) return near + (far - near) * ((distance - from) / (to - from));
  }
  return radii.back().first;
}

ScreenPicture screen_chart(const Made& made, const Font& labels, const Observer& observer,
                           const ScreenOptions& options) {
  const Observer from = kept(made, observer);
  return RoundChart(made, labels, from, screen::within_limits(options)).drawn();
}

}  // namespace swathe
