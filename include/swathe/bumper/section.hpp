#pragma once

#include <optional>
#include <string>
#include <vector>

#include "swathe/base/length.hpp"
#include "swathe/base/outcome.hpp"
#include "swathe/job/job.hpp"
#include "swathe/plane/hull.hpp"

namespace swathe {

/// Where the cloth lies in the section: d outward from the board's back, z up from its underside,
/// mm.
struct SectionPoint {
  double d = 0, z = 0;
  double tilt = 0;  ///< radians the cloth leans from upright: 0 on the front flat, pi/2 on a flat
                    ///< top, negative below
};

/// A named place on the girth.
struct Station {
  std::string name;
  double u_mm = 0, d_mm = 0, z_mm = 0;
};

/// The shape the cloth is pulled over, square to a side, and the taut cloth's middle surface round
/// it.
///
/// The girth coordinate u runs along the cloth from the middle of the front flat, upwards.
/// Holds (section_test.cpp): (1) at(u) moves at unit speed in u; (2) the girth equals the belt
/// round the same discs; (3) cloth of thickness tau adds pi tau to the closed girth. Source: hull
/// of discs; Steiner's formula for the thickness.
class Section {
 public:
  /// Refuses: DoesNotFit (flaps that meet on the back, no room to cut behind the padding, a staple
  /// line off the flap), OutOfRange, each at its key.
  static Outcome<Section> make(const BoardKeys& boards, const PaddingKeys& padding,
                               const ClothKeys& cloth, const Places& places,
                               Units units = Units::Inches);

  double thickness_mm() const { return thickness_; }  ///< of the board
  double height_mm() const { return height_; }        ///< of the board
  double padding_depth_mm() const { return padding_depth_; }
  double padding_top_mm() const { return padding_top_; }  ///< z
  double padding_bottom_mm() const { return padding_bottom_; }
  double cloth_thickness_mm() const { return tau_; }
  double depth_mm() const { return depth_; }  ///< d of the front line
  double closed_girth_mm() const { return closed_girth_; }

  double front_flat_top() const {
    return front_top_;
  }  ///< u; zero where a single noodle has no flat
  double front_flat_bottom() const { return -front_top_; }
  double top_tangent() const { return top_tangent_; }  ///< u
  double bottom_tangent() const { return bottom_tangent_; }
  double back_edge_top() const {
    return back_top_;
  }  ///< u_b: the end of the small arc at the board's edge
  double back_edge_bottom() const { return back_bottom_; }
  double cloth_edge_top() const { return back_top_ + flap_; }
  double cloth_edge_bottom() const { return back_bottom_ - flap_; }
  double flap_mm() const { return flap_; }

  /// Requires: u between the cloth edges.
  SectionPoint at(double u) const;
  /// u where the cloth is `d` deep, above (or below) the front line. Nothing where it never is.
  std::optional<double> u_at_depth(double d, bool above) const;
  /// Nearest u for a point of the section, and how far off the cloth it is.
  struct Foot {
    double u = 0, off_mm = 0;
  };
  Foot nearest(double d, double z) const;

  /// u of both ends of every arc of the section.
  std::vector<double> bends() const;
  /// Rising heights from one to the other with chords between them that follow the cloth: no chord
  /// spans the end of an arc, nor more of an arc than turns by `most_turn` radians.
  /// Requires: from < to, on the cloth.
  std::vector<double> heights(double from, double to, double most_turn) const;
  /// By how much the cloth between the back edges lies short of a depth, summed over u; mm2.
  double short_of_depth(double d) const;

  const std::vector<Station>& stations() const { return stations_; }
  /// Cloth that a butting side needs more at the top, and at the bottom, to go round its
  /// neighbor's square padding end.
  double square_end_allowance_mm() const { return square_end_; }
  /// The closed outline the cloth's middle surface follows.
  const std::vector<HullPiece>& hull() const { return hull_; }

 private:
  double thickness_ = 0, height_ = 0, padding_depth_ = 0, padding_top_ = 0, padding_bottom_ = 0;
  double tau_ = 0, depth_ = 0, closed_girth_ = 0, flap_ = 0;
  double front_top_ = 0, top_tangent_ = 0, bottom_tangent_ = 0, back_top_ = 0, back_bottom_ = 0;
  double square_end_ = 0;
  std::vector<Station> stations_;
  std::vector<HullPiece> hull_;
  struct Stretch {  ///< a hull piece and the u it starts at
    HullPiece piece;
    double u_from = 0;
  };
  void name_stations(const std::vector<HullPiece>& chain);
  std::vector<Stretch> chain_;  ///< from the bottom back edge to the top one, by u
};

}  // namespace swathe
