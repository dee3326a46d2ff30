#pragma once

#include <boost/polygon/voronoi_builder.hpp>
#include <cstdint>

#include "plane/touching_circle.hpp"

namespace swathe::plane {

/// Boost's Voronoi builder with a quicker way to the circle that three sites touch.
///
/// Boost computes it in doubles, and in whole numbers of any length where these may be more than 64
/// units in the last place off. That is nearly always so in outlines of digits: the chords of a
/// curve are almost parallel. Two doubles' digits suffice for them at a tenth of the cost; where
/// they do not, Boost's own way is taken.
struct VoronoiPredicates : boost::polygon::detail::voronoi_predicates<
                               boost::polygon::detail::voronoi_ctype_traits<std::int32_t>> {
  using Common = boost::polygon::detail::voronoi_predicates<
      boost::polygon::detail::voronoi_ctype_traits<std::int32_t>>;

  /// Sites are points (p) and segments (s).
  template <typename Site, typename Circle>
  class CircleFormation : public Common::lazy_circle_formation_functor<Site, Circle> {
    using Lazy = Common::lazy_circle_formation_functor<Site, Circle>;

   public:
    void pss(const Site& point, const Site& one, const Site& two, int point_index, Circle& circle) {
      const WholeLine a{place(one.point1()), place(one.point0())};
      const WholeLine b{place(two.point0()), place(two.point1())};
      if (!take(circle_through(place(point.point0()), a, b, point_index == 2), circle))
        Lazy::pss(point, one, two, point_index, circle);
    }
    void sss(const Site& one, const Site& two, const Site& three, Circle& circle) {
      if (!take(circle_touching(line(one), line(two), line(three)), circle))
        Lazy::sss(one, two, three, circle);
    }

   private:
    template <typename Point>
    static FlatPoint place(const Point& p) {
      return {static_cast<double>(p.x()), static_cast<double>(p.y())};
    }
    static WholeLine line(const Site& site) { return {place(site.point0()), place(site.point1())}; }
    static bool take(const std::optional<TouchingCircle>& found, Circle& circle) {
      if (found) circle = Circle(found->center.x, found->center.y, found->right);
      return found.has_value();
    }
  };

  template <typename Site, typename Circle>
  using circle_formation_predicate =
      Common::circle_formation_predicate<Site, Circle, Common::circle_existence_predicate<Site>,
                                         CircleFormation<Site, Circle>>;
};

using VoronoiBuilder = boost::polygon::voronoi_builder<
    std::int32_t, boost::polygon::detail::voronoi_ctype_traits<std::int32_t>, VoronoiPredicates>;

}  // namespace swathe::plane
