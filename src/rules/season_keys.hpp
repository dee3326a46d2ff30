#pragma once

#include "swathe/rules.hpp"

namespace swathe {

/// Calls `visit(table, key, what, value)` for every value a season may have, in the order of a rule
/// file. The one list of keys: reading, naming unknown keys and printing all go through it.
template <class SeasonType, class Visit>
void each_value(SeasonType& s, Visit&& visit) {
  visit("general", "grace", "bumper sizes: the inspector may allow", s.general_grace);
  visit("cover", "whole", "the frame is covered all the way round", s.cover_whole);
  visit("cover", "gap", "gap between bumpers, less than", s.cover_gap);
  visit("cover", "larger_gap", "one wider gap: frame covered beside each corner, at least",
        s.cover_larger_gap);
  visit("cover", "reach", "bumper on each side of each outside corner, at least", s.cover_reach);
  visit("cover", "from_corner", "distance from the corner to where it begins, at most",
        s.cover_from_corner);
  visit("cover", "short_side", "a side is covered from end to end if shorter than",
        s.cover_short_side);
  visit("corner", "fill", "padding at corner joints, at least", s.corner_fill);
  visit("corner", "filled", "corner joints filled with padding", s.corner_filled);
  visit("padding", "depth", "padding: depth, at least", s.padding_depth);
  visit("padding", "height", "padding: height, at least", s.padding_height);
  visit("padding", "noodle_pair", "padding: two round noodles stacked, sold as",
        s.padding_noodle_pair);
  visit("padding", "past_board", "padding past a board's end, at most", s.padding_past_board);
  visit("padding", "hollow", "padding: hollow noodles allowed", s.padding_hollow);
  visit("padding", "even", "padding: no wedges", s.padding_even);
  visit("backing", "height", "backing (boards): height, at least", s.backing_height);
  visit("backing", "nominal_height", "backing (boards): height", s.backing_nominal_height);
  visit("backing", "height_within", "backing (boards): height may be off by, at most",
        s.backing_height_within);
  visit("backing", "nominal_thickness", "backing (boards): thickness, sold as",
        s.backing_nominal_thickness);
  visit("cloth", "faces", "cloth over front, top and bottom of the padding", s.cloth_faces);
  visit("cloth", "over_wood", "cloth over the outside of the boards too", s.cloth_over_wood);
  visit("cloth", "sets", "cloth: colors of the sets", s.cloth_sets);
  visit("cloth", "one_color", "cloth: each cover in one color", s.cloth_one_color);
  visit("cloth", "plain", "cloth: no mark that stands out but the number", s.cloth_plain);
  visit("fastening", "rigid", "fastening: rigid", s.fastening_rigid);
  visit("extension", "most", "bumpers out from the frame, at most", s.extension_most);
  visit("hard_parts", "past_frame", "hard parts out from the frame, at most",
        s.hard_parts_past_frame);
  visit("hard_parts", "under_padding", "padding in front of any hard part, at least",
        s.hard_parts_under_padding);
  visit("zone", "filled", "padding with board behind it fills the heights", s.zone_filled);
  visit("zone", "inside", "the bumper stays within the heights", s.zone_inside);
  visit("weight", "machine", "weight of machine with bumpers, at most", s.weight_machine);
  visit("weight", "set", "weight of a set, at most", s.weight_set);
  visit("numerals", "height", "numerals: height, at least", s.numerals_height);
  visit("numerals", "stroke", "numerals: more than half of the stroke, at least",
        s.numerals_stroke);
  visit("numerals", "white", "numerals: white", s.numerals_white);
  visit("numerals", "white_outline", "numerals: or a white outline, at least",
        s.numerals_white_outline);
  visit("numerals", "corner", "numerals: round no corner sharper than", s.numerals_corner);
  visit("numerals", "places", "numerals: places, at least", s.numerals_places);
  visit("numerals", "places_apart", "numerals: places apart, about", s.numerals_places_apart);
  visit("numerals", "spacing", "numerals: space between digits, at most", s.numerals_spacing);
  visit("numerals", "split", "numerals: may be split across the gap between bumpers",
        s.numerals_split);
  visit("numerals", "read_from", "numerals: can be read from up to about", s.numerals_read_from);
  visit("numerals", "viewpoints", "numerals: can be read from viewpoints", s.numerals_viewpoints);
  visit("support", "end_backed", "frame behind each end of a board, at least",
        s.support_end_backed);
  visit("support", "end_gap", "gap behind a board's end, at most", s.support_end_gap);
  visit("support", "gap_depth", "gap elsewhere behind a board: depth, at most",
        s.support_gap_depth);
  visit("support", "gap_width", "or, if it is deeper: width, at most", s.support_gap_width);
}

}  // namespace swathe
