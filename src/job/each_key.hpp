#pragma once

#include <concepts>
#include <tuple>
#include <type_traits>

#include "swathe/job.hpp"

// Which member of `Job` each described key is: the one list by which keys are read and written.
namespace swathe {

template <class T, class Keys>
concept KeysOf = std::same_as<std::remove_const_t<T>, Keys>;

/// Calls `visit(name, member)` for each key of a table, in the order of the description. A key of
/// several members comes as a tuple of them, a table below as its member. Not here, as they are
/// other ways of saying what is: frame.width and depth, which make corners, and paper.width, which
/// goes with its sheet.
template <KeysOf<Job> K, class Visit>
void each_key(K& job, Visit&& visit) {
  visit("title", job.title);
  visit("number", job.number);
  visit("season", job.season);
  visit("units", job.units);
}

template <KeysOf<FrameKeys> K, class Visit>
void each_key(K& frame, Visit&& visit) {
  visit("corners", frame.corners);
  visit("sides", frame.sides);
  visit("fit", frame.fit);
  visit("floor_gap", frame.floor_gap);
  visit("backed", frame.backed);
}

template <KeysOf<BoardKeys> K, class Visit>
void each_key(K& boards, Visit&& visit) {
  visit("thickness", boards.thickness);
  visit("height", boards.height);
  visit("joint", boards.joint);
  visit("lapping", boards.lapping);
  visit("stock", boards.stock);
  visit("kerf", boards.kerf);
  visit("hard_depth", boards.hard_depth);
  visit("density", boards.density_kg_m3);
}

template <KeysOf<PaddingKeys> K, class Visit>
void each_key(K& padding, Visit&& visit) {
  visit("form", padding.form);
  visit("diameter", padding.diameter);
  visit("stack", padding.stack);
  visit("core", padding.core);
  visit("depth", padding.depth);
  visit("height", padding.height);
  visit("edge_radius", padding.edge_radius);
  visit("corner", padding.corner);
  visit("filled", padding.filled);
  visit("lapping", padding.lapping);
  visit("stock", padding.stock);
  visit("density", padding.density_kg_m3);
}

template <KeysOf<ClothKeys> K, class Visit>
void each_key(K& cloth, Visit&& visit) {
  visit("thickness", cloth.thickness);
  visit("roll_width", cloth.roll_width);
  visit("buy_step", cloth.buy_step);
  visit("shop_cut", cloth.shop_cut);
  visit("colors", cloth.colors);
  visit("flap", cloth.flap);
  visit("staple_line", cloth.staple_line);
  visit("staple_spacing", cloth.staple_spacing);
  visit("stretch_along", cloth.stretch_along);
  visit("stretch_around", cloth.stretch_around);
  visit("relief", cloth.relief);
  visit("setback", cloth.setback);
  visit("cut_clear", cloth.cut_clear);
  visit("seam", cloth.seam);
  visit("end_reach", cloth.end_reach);
  visit("may_join", cloth.may_join);
  visit("longest_piece", cloth.longest_piece);
  visit("may_lie_across", cloth.may_lie_across);
  visit("one_way", cloth.one_way);
  visit("density", cloth.density_kg_m2);
  visit("staple_mass", cloth.staple_g);
  visit("fixing", cloth.fixing);
  visit("hook_and_loop", cloth.hook_and_loop);
}

template <KeysOf<HookAndLoopKeys> K, class Visit>
void each_key(K& quick, Visit&& visit) {
  visit("flap", quick.flap);
  visit("hem", quick.hem);
  visit("strip", quick.strip);
  visit("stretch", quick.stretch);
  visit("density", quick.density_kg_m2);
}

template <KeysOf<OpeningKeys> K, class Visit>
void each_key(K& opening, Visit&& visit) {
  visit("side", opening.side);
  visit("width", opening.width);
  visit("center", opening.center);
}

template <KeysOf<BumperKeys> K, class Visit>
void each_key(K& bumper, Visit&& visit) {
  visit("name", bumper.name);
  visit("from", bumper.from);
  visit("to", bumper.to);
  visit("end_clearance", bumper.end_clearance);
}

template <KeysOf<BracketKeys> K, class Visit>
void each_key(K& bracket, Visit&& visit) {
  visit("side", bracket.side);
  visit("at", bracket.at);
  visit("bumper", bracket.bumper);
  visit("width", bracket.width);
  visit("height", bracket.height);
  visit("down", bracket.down);
  visit("holes", bracket.holes);
  visit("holes_from", bracket.holes_from);
  visit("cloth", bracket.cloth);
  visit("clearance", bracket.clearance);
  visit("corner_radius", bracket.corner_radius);
  visit("mass", bracket.mass_g);
}

template <KeysOf<NumeralKeys> K, class Visit>
void each_key(K& numerals, Visit&& visit) {
  visit("font", numerals.font);
  visit("axes", numerals.axes);
  visit("height", numerals.height);
  visit("sides", numerals.sides);
  visit("place", numerals.places);
  visit("spacing", numerals.spacing);
  visit("method", numerals.method);
  visit("stencil_for", numerals.stencil_for);
  visit("color", numerals.color);
  visit("outline", numerals.outline);
  visit("make_legal", numerals.make_legal);
  visit("bridge", numerals.bridge);
  visit("spares", numerals.spares);
}

template <KeysOf<NumeralPlaceKeys> K, class Visit>
void each_key(K& place, Visit&& visit) {
  visit("side", place.side);
  visit("center", place.center);
  visit("bumper", place.bumper);
  visit("split", place.split);
}

template <KeysOf<SightKeys> K, class Visit>
void each_key(K& sight, Visit&& visit) {
  visit("distance", sight.distance);
  visit("eye_height", sight.eye_height);
  visit("step", sight.step);
  visit("least_angle", sight.least_angle);
  visit("blind", sight.blind);
}

template <KeysOf<BlindKeys> K, class Visit>
void each_key(K& blind, Visit&& visit) {
  visit("box", std::tie(blind.lo, blind.hi));
}

template <KeysOf<PaperKeys> K, class Visit>
void each_key(K& paper, Visit&& visit) {
  visit("sheet", std::tie(paper.sheet, paper.width, paper.height));
  visit("margin", paper.margin);
  visit("overlap", paper.overlap);
  visit("face", paper.face);
  visit("measured", paper.measured);
}

}  // namespace swathe
