#include "screen/canvas.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <iterator>
#include <utility>

#include "draw/path_clip.hpp"

namespace swathe::screen {
namespace {

constexpr double kLeastPx = 160, kMostPx = 4096;
constexpr double kLeastText = 8, kMostText = 48;
constexpr double kFlat = 0.15 / kPxPerMm;     ///< that a drawn line may stray: less than is seen
constexpr double kSmallest = 0.5 / kPxPerMm;  ///< no mark is smaller both ways
constexpr double kClear = 0.5;                ///< CSS mm between words and anything else
constexpr double kLeaderStart = 0.02;         ///< CSS mm: no leader runs through words
constexpr double kTick = 1.0;                 ///< half of a dimension's
constexpr double kOff = 0.3;                  ///< more than the placer's own clearance from a line
constexpr double kLeastScale = 1e-4;

double within(double value, double least, double most) {
  return value >= least ? std::min(value, most) : least;  // what is no number is the least
}

bool has_size(const std::optional<plane::Box>& window) {
  return window && std::isfinite(window->lo.x) && std::isfinite(window->lo.y) &&
         std::isfinite(window->hi.x) && std::isfinite(window->hi.y) && window->width() > 1e-3 &&
         window->height() > 1e-3;
}

}  // namespace

ScreenOptions within_limits(ScreenOptions options) {
  options.width_px = within(options.width_px, kLeastPx, kMostPx);
  options.height_px = within(options.height_px, kLeastPx, kMostPx);
  options.text_px = within(options.text_px, kLeastText, kMostText);
  if (!has_size(options.window)) options.window.reset();
  return options;
}

Canvas::Canvas(const Font& labels, const ScreenOptions& options)
    : labels_(labels),
      box_{{0, 0}, {options.width_px / kPxPerMm, options.height_px / kPxPerMm}},
      text_px_(options.text_px),
      text_height_(options.text_px / kPxPerMm * labels.cap_height()),
      seen_(box_) {}

Canvas::Canvas(const Font& labels, const ScreenOptions& options, const plane::Box& model,
               const Around& around, bool mirrored)
    : Canvas(labels, options) {
  mirrored_ = mirrored;
  has_map_ = true;
  const bool whole = !options.window;
  const plane::Box shown = whole ? model : *options.window;
  const Around room = whole ? around : Around{};
  const plane::Box free = {box_.lo + FlatPoint{room.left, room.below},
                           box_.hi - FlatPoint{room.right, room.above}};
  scale_ = std::max(kLeastScale, std::min(std::max(1.0, free.width()) / shown.width(),
                                          std::max(1.0, free.height()) / shown.height()));
  const FlatPoint middle = shown.middle();
  move_ = free.middle() - scale_ * FlatPoint{mirrored ? -middle.x : middle.x, middle.y};
  const auto back = [&](FlatPoint p) {
    const FlatPoint model_at = (1 / scale_) * (p - move_);
    return FlatPoint{mirrored ? -model_at.x : model_at.x, model_at.y};
  };
  seen_ = {};
  seen_.cover(back(box_.lo));
  seen_.cover(back(box_.hi));
}

FlatPoint Canvas::on(FlatPoint model) const {
  return scale_ * FlatPoint{mirrored_ ? -model.x : model.x, model.y} + move_;
}

Drawing& Canvas::layer(const std::string& what, const Look& look) {
  const auto there = std::ranges::find(layers_, what, &Layer::what);
  if (there != layers_.end()) return there->drawing;
  return layers_.emplace_back(Layer{what, look.tint, look.ink, look.own_colors, {}}).drawing;
}

Drawing& Canvas::next_layer(const std::string& what, const Look& look) {
  if (!layers_.empty() && layers_.back().what == what) return layers_.back().drawing;
  return layers_.emplace_back(Layer{what, look.tint, look.ink, look.own_colors, {}}).drawing;
}

bool Canvas::is_seen(const plane::Box& box) const {
  return !box.empty() && box.meets(box_) && std::max(box.width(), box.height()) >= kSmallest;
}

plane::Path Canvas::placed(const plane::Path& path) const {
  std::vector<FlatPoint> points = flatten(path, kFlat / scale_);
  for (FlatPoint& p : points) p = on(p);
  if (!path.closed) return open_path(points);
  return closed_path(thinned(points, kFlat));
}

void Canvas::line(Drawing& onto, LineKind kind, const plane::Path& path) const {
  line_on(onto, kind, placed(path));
}

void Canvas::area(Drawing& onto, const std::vector<plane::Path>& outlines) const {
  std::vector<plane::Path> on_picture;
  for (const plane::Path& outline : outlines) on_picture.push_back(placed(outline));
  area_on(onto, {}, std::move(on_picture));
}

void Canvas::line_on(Drawing& onto, LineKind kind, const plane::Path& path) const {
  if (!is_seen(bounds(path))) return;
  for (plane::Path& part : clipped(path, box_.grown(1.0), kFlat)) onto.line(kind, std::move(part));
}

void Canvas::area_on(Drawing& onto, Color color, std::vector<plane::Path> outlines) const {
  std::erase_if(outlines, [&](const plane::Path& outline) { return !is_seen(bounds(outline)); });
  if (!outlines.empty()) onto.fill(LineKind::Outline, color, std::move(outlines));
}

LabelPlacer& Canvas::words(std::initializer_list<const char*> off_boxes_of) {
  if (placer_) return *placer_;
  placer_.emplace(words_, labels_, box_, LabelPlacer::Clear{kClear, kLeaderStart});
  for (const Layer& layer : layers_) {
    const bool off_boxes =
        std::ranges::any_of(off_boxes_of, [&](const char* what) { return layer.what == what; });
    for (const draw::Mark& mark : layer.drawing.marks()) {
      if (const auto* one = std::get_if<LineMark>(&mark)) placer_->keep_off(one->path);
      const auto* fill = std::get_if<FillMark>(&mark);
      if (!fill) continue;
      for (const plane::Path& outline : fill->outlines)
        off_boxes ? placer_->keep_off(bounds(outline)) : placer_->keep_off(outline);
    }
  }
  return *placer_;
}

bool Canvas::note(FlatPoint at, const std::string& text, const Subjects& shows, double furthest,
                  bool on_it) {
  if (!box_.holds(at)) return false;
  LabelPlacer& placer = words();
  const Showing part(placer.drawing(), shows);
  if (on_it && placer.try_at({at - FlatPoint{0, 0.5 * text_height_}, text, text_height_,
                              draw::Anchor::Middle}))
    return true;
  return placer.near(at, text, text_height_, furthest);
}

bool Canvas::along(FlatPoint a, FlatPoint b, const std::string& text, const Subjects& shows) {
  LabelPlacer& placer = words();
  const Showing part(placer.drawing(), shows);
  const double in_middle = 0.5 * (apart(a, b) - text_width(text));
  return in_middle > 0 && placer.beside(a, b, text, text_height_, in_middle, kOff);
}

bool Canvas::dimension(FlatPoint a, FlatPoint b, const std::string& text, const Subjects& shows) {
  const std::vector<plane::Path> parts = clipped(plane::line(a, b), box_.grown(-kTick));
  if (parts.empty() || apart(a, b) < 2 * kTick) return false;
  const FlatPoint from = parts.front().vertices.front().at, to = parts.back().vertices.back().at;
  LabelPlacer& placer = words();
  Drawing marks;
  const FlatPoint tick = kTick * left_of(unit(b - a));
  marks.line(LineKind::Thin, plane::line(from, to));
  for (const FlatPoint p : {a, b})
    if (box_.holds(p)) marks.line(LineKind::Thin, p - tick, p + tick);
  for (const draw::Mark& mark : marks.marks()) {
    const auto& ends = std::get<LineMark>(mark).path.vertices;
    if (placer.is_crossed(ends.front().at, ends.back().at)) return false;
  }
  for (const draw::Mark& mark : marks.marks()) placer.keep_off(std::get<LineMark>(mark).path);
  if (!along(from, to, text, shows)) return false;
  Drawing& onto = layer("measures", {0.2, 0.6});
  const Showing part(onto, shows);
  onto.add(marks, {});
  return true;
}

void Canvas::handle(Handle handle, FlatPoint model, FlatPoint way) {
  const FlatPoint at = on(model);
  if (!box_.holds(at)) return;
  handle.at_px = {kPxPerMm * at.x, kPxPerMm * (box_.hi.y - at.y)};
  handle.way = {mirrored_ ? -way.x : way.x, -way.y};
  handles_.push_back(std::move(handle));
}

ScreenPicture Canvas::drawn(std::string kind, std::string title, std::string words) && {
  ScreenPicture picture;
  picture.kind = std::move(kind);
  picture.title = std::move(title);
  picture.words = std::move(words);
  picture.width_px = width_px();
  picture.height_px = height_px();
  picture.text_px = text_px_;
  if (has_map_) {
    const FlatPoint origin = on({0, 0});
    picture.map = Map{1 / (kPxPerMm * scale_),
                      {kPxPerMm * origin.x, kPxPerMm * (box_.hi.y - origin.y)},
                      mirrored_};
  }
  // A leader is a line among the words: it lies with the measures.
  Layer leaders{"leaders", 0.2, 0.6, false, {}}, text{"words", 1, 1, false, {}};
  for (const draw::Mark& mark : words_.marks()) {
    if (const auto* one = std::get_if<LineMark>(&mark)) {
      const Showing part(leaders.drawing, one->shows);
      leaders.drawing.line(one->kind, one->path);
    } else if (const auto* said = std::get_if<TextMark>(&mark)) {
      text.drawing.text(*said);
    }
  }
  layers_.push_back(std::move(leaders));
  layers_.push_back(std::move(text));
  std::erase_if(layers_, [](const Layer& layer) { return layer.drawing.marks().empty(); });
  picture.layers.assign(std::make_move_iterator(layers_.begin()),
                        std::make_move_iterator(layers_.end()));
  picture.handles = std::move(handles_);
  return picture;
}

}  // namespace swathe::screen
