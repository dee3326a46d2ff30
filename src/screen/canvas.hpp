#pragma once

#include <deque>
#include <initializer_list>
#include <optional>
#include <string>
#include <vector>

#include "draw/label_placer.hpp"
#include "swathe/screen.hpp"

namespace swathe::screen {

/// Sizes taken to their limits; a window of no size is none.
ScreenOptions within_limits(ScreenOptions options);

/// Room round the model for words, CSS mm.
struct Around {
  double left = 0, right = 0, below = 0, above = 0;
};

/// How a layer looks: its areas and its lines.
struct Look {
  double tint = 0.2, ink = 1;
  bool own_colors = false;
};

/// A picture being drawn: from the model's millimeters to those of the picture, what is too small
/// to be seen or outside the window left out.
class Canvas {
 public:
  /// `model` is all there is to see, with so much room round it, unless a window is asked for.
  /// Requires: options within their limits.
  Canvas(const Font& labels, const ScreenOptions& options, const plane::Box& model,
         const Around& around, bool mirrored = false);
  /// Of a picture whose marks are told on the picture itself.
  Canvas(const Font& labels, const ScreenOptions& options);
  Canvas(const Canvas&) = delete;
  Canvas& operator=(const Canvas&) = delete;

  const Font& labels() const { return labels_; }
  /// Of the picture, CSS mm.
  const plane::Box& box() const { return box_; }
  double width_px() const { return kPxPerMm * box_.width(); }
  double height_px() const { return kPxPerMm * box_.height(); }
  /// Pixels that a millimeter of the model takes.
  double px(double model_mm = 1) const { return kPxPerMm * scale_ * model_mm; }
  /// Height of the words' capitals, CSS mm.
  double text_height() const { return text_height_; }
  double text_width(const std::string& words) const {
    return labels_.text_width_mm(words, text_height_);
  }

  /// A place of the model on the picture.
  FlatPoint on(FlatPoint model) const;
  /// The part of the model that is to be seen.
  const plane::Box& seen() const { return seen_; }

  /// The layer of that name, on top of all others so far where it is new.
  Drawing& layer(const std::string& what, const Look& look = {});

  /// The layer on top, where it has that name; else a new one of it: what comes later covers it.
  Drawing& next_layer(const std::string& what, const Look& look = {});

  // Marks in the model's millimeters.
  void line(Drawing& onto, LineKind kind, const plane::Path& path) const;
  void line(Drawing& onto, LineKind kind, FlatPoint a, FlatPoint b) const {
    line(onto, kind, plane::line(a, b));
  }
  void area(Drawing& onto, const std::vector<plane::Path>& outlines) const;
  /// A path as it lies on the picture: no more points than can be seen.
  plane::Path placed(const plane::Path& path) const;

  // Marks on the picture, CSS mm.
  void line_on(Drawing& onto, LineKind kind, const plane::Path& path) const;
  void area_on(Drawing& onto, Color color, std::vector<plane::Path> outlines) const;

  /// What words are placed with, once all marks are drawn: they keep off every line and every
  /// area's outline, and off the whole boxes of these layers' areas.
  LabelPlacer& words(std::initializer_list<const char*> off_boxes_of = {});
  /// One word or more at a place, on it where it is free, else near it with a leader. `furthest`:
  /// CSS mm. False where there is no room.
  bool note(FlatPoint at, const std::string& text, const Subjects& shows, double furthest = 30,
            bool on_it = false);
  /// Words in the middle of a stretch of the picture, along it; false where there is no room.
  bool along(FlatPoint a, FlatPoint b, const std::string& text, const Subjects& shows);
  /// A dimension between ticks with its words; left out as a whole where there is no room.
  bool dimension(FlatPoint a, FlatPoint b, const std::string& text, const Subjects& shows);

  /// A handle of the model. Left out where it cannot be seen.
  void handle(Handle handle, FlatPoint model, FlatPoint way);

  /// The picture, with what it is called and what it says.
  ScreenPicture drawn(std::string kind, std::string title, std::string words) &&;

 private:
  bool is_seen(const plane::Box& box) const;

  const Font& labels_;
  plane::Box box_;
  double text_px_ = 13, text_height_ = 2.4;
  double scale_ = 1;  ///< picture over model
  FlatPoint move_;
  bool mirrored_ = false, has_map_ = false;
  plane::Box seen_;
  std::deque<Layer> layers_;  ///< in which a layer stays where it is
  Drawing words_;
  std::optional<LabelPlacer> placer_;
  std::vector<Handle> handles_;
};

}  // namespace swathe::screen
