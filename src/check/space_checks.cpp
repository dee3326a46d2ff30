#include <fmt/format.h>

#include <algorithm>

#include "check/checks.hpp"

// How far out and how high the bumpers stand: measured square to a side, from the true frame.
namespace swathe {
namespace {

/// The boards' front face, out from the true frame.
double board_front(const CheckedSet& s) { return s.frame.fit().mm() + s.section.thickness_mm(); }

std::string from_to(const Book& book, double from, double to) {
  return fmt::format("{} to {}", book.about(from), book.about(to));
}

/// Mounted higher or lower by what is wanting, where the other end has that much to spare: there
/// it is less than zero.
About at_height(const CheckedSet& s, const Book& book, double higher, double lower) {
  About about{{Subject::bumpers(), Subject::frame()}, {"frame.floor_gap", "boards.height"}};
  const double gap = s.frame.floor_gap().mm(), step = inches(1.0 / 16).mm();
  if (higher + lower > -step) return about;
  if (higher > kNoTape) about.mend = {{"frame.floor_gap", book.at_least_value(gap + higher)}};
  if (lower > kNoTape && gap - lower >= step)
    about.mend = {{"frame.floor_gap", book.at_most_value(gap - lower)}};
  return about;
}

void judge_zone_filled(const CheckedSet& s, const Season& season, Book& book) {
  const Zone zone = season.zone_filled->value;
  const double floor = s.frame.floor_gap().mm();
  // Only padding with board behind it counts.
  const double bottom = floor + std::max(0.0, s.section.padding_bottom_mm());
  const double top = floor + std::min(s.section.height_mm(), s.section.padding_top_mm());
  const double too_high = bottom - zone.from.mm(), too_low = zone.to.mm() - top;
  const Verdict verdict = book.verdict(std::max(too_high, too_low), Grace::Inspection);
  std::string advice;
  if (too_high > kNoTape && too_low > kNoTape) {
    advice = "take higher boards and padding";
  } else if (too_high > kNoTape) {
    advice = fmt::format("mount the bumpers {} lower", book.on_tape(too_high));
  } else if (too_low > kNoTape) {
    advice = fmt::format("mount the bumpers {} higher", book.on_tape(too_low));
  }
  book.add(*season.zone_filled,
           {"zone", "padding backed by board, above the floor",
            fmt::format("fills {} to {}", book.exactly(zone.from), book.exactly(zone.to)),
            from_to(book, bottom, top), verdict, book.graced(verdict, advice),
            at_height(s, book, too_low, too_high)});
}

void judge_zone_inside(const CheckedSet& s, const Season& season, Book& book) {
  const Zone zone = season.zone_inside->value;
  const double floor = s.frame.floor_gap().mm(), cloth = s.section.cloth_thickness_mm();
  const double bottom = floor + std::min(0.0, s.section.padding_bottom_mm()) - cloth;
  const double top = floor + std::max(s.section.height_mm(), s.section.padding_top_mm()) + cloth;
  const double under = zone.from.mm() - bottom, over = top - zone.to.mm();
  const Verdict verdict = book.verdict(std::max(under, over), Grace::Inspection);
  const std::string advice =
      over > kNoTape
          ? fmt::format("mount the bumpers {} lower", book.on_tape(over))
          : fmt::format("mount the bumpers {} higher", book.on_tape(std::max(0.0, under)));
  book.add(*season.zone_inside,
           {"zone", "bumpers, above the floor",
            fmt::format("within {} to {}", book.exactly(zone.from), book.exactly(zone.to)),
            from_to(book, bottom, top), verdict, book.graced(verdict, advice),
            at_height(s, book, under, over)});
}

/// With no bolt heads declared there is no telling that there are none.
void ask_for_hardware(const CheckedSet& s, Judged& judged) {
  if (judged.verdict == Verdict::Fail || s.job.boards.hard_depth.mm() > kNoTape) return;
  judged.verdict = Verdict::Unknown;
  judged.measured += " for the boards alone";
  judged.advice =
      "measure bolt heads and the like in front of the boards, and set boards.hard_depth";
}

}  // namespace

void check_extension(const CheckedSet& s, const Season& season, Book& book) {
  if (!season.extension_most) return;
  const double out =
      s.frame.fit().mm() + s.section.depth_mm() + 0.5 * s.section.cloth_thickness_mm();
  book.at_most(*season.extension_most,
               {"extension",
                "from the frame out to the cloth",
                out,
                fmt::format("take {} off board, padding or fit",
                            book.on_tape(out - season.extension_most->value.mm())),
                {{Subject::bumpers()},
                 {"boards.thickness", padding_depth_key(s.job), "frame.fit", "cloth.thickness"}}},
               Grace::Inspection);
}

void check_hard_parts(const CheckedSet& s, const Season& season, Book& book) {
  const double hard = s.job.boards.hard_depth.mm();
  if (season.hard_parts_past_frame) {
    const Length limit = season.hard_parts_past_frame->value;
    const double out = board_front(s) + hard;
    const Verdict verdict = book.verdict(out - limit.mm(), Grace::Inspection);
    Judged j{
        "hard-parts",
        "boards and bolt heads, out from the frame",
        fmt::format("at most {}", book.exactly(limit)),
        book.about(out),
        verdict,
        book.graced(verdict, fmt::format("bring them in by {}", book.on_tape(out - limit.mm()))),
        {{Subject::boards()}, {"boards.hard_depth", "boards.thickness", "frame.fit"}}};
    ask_for_hardware(s, j);
    book.add(*season.hard_parts_past_frame, j);
  }
  if (season.hard_parts_under_padding) {
    const Length limit = season.hard_parts_under_padding->value;
    const double over = s.section.padding_depth_mm() - hard;
    const Verdict verdict = book.verdict(limit.mm() - over, Grace::Inspection);
    Judged j{
        "hard-parts",
        "padding beyond boards and bolt heads",
        fmt::format("at least {}", book.exactly(limit)),
        book.about(over),
        verdict,
        book.graced(verdict,
                    fmt::format("{} is missing: sink the bolt heads, or take deeper padding",
                                book.on_tape(limit.mm() - over))),
        {{Subject::boards(), Subject::padding()}, {"boards.hard_depth", padding_depth_key(s.job)}}};
    ask_for_hardware(s, j);
    book.add(*season.hard_parts_under_padding, j);
  }
}

void check_zone(const CheckedSet& s, const Season& season, Book& book) {
  if (season.zone_filled) judge_zone_filled(s, season, book);
  if (season.zone_inside) judge_zone_inside(s, season, book);
}

}  // namespace swathe
