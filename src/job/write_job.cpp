#include "swathe/job/write_job.hpp"

#include <fmt/format.h>

#include "job/names.hpp"
#include "swathe/job/papers.hpp"

namespace swathe {
namespace {

/// A TOML basic string. Control characters, which a job built in code may hold and no key takes,
/// are escaped, so that they are refused at their key and never end a line.
std::string quoted(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    if ((c >= 0 && c < ' ') || c == '\x7f') {
      out += fmt::format("\\u{:04x}", static_cast<int>(c));
      continue;
    }
    if (c == '"' || c == '\\') out += '\\';
    out += c;
  }
  return out + "\"";
}

/// The shortest decimals that read as the same number; lengths and angles know no exponent.
std::string shortest(double value) {
  constexpr int kMostPlaces = 360;  // beyond the smallest double
  value += 0.0;                     // no minus before a zero
  std::string text = fmt::format("{}", value);
  return text.find('e') == std::string::npos ? text : plain_number(value, kMostPlaces);
}

std::string said(Length length) { return quoted(shortest(length.mm()) + " mm"); }
std::string said(Angle angle) { return quoted(shortest(angle.radians()) + " rad"); }
std::string said(double value) { return shortest(value); }
std::string said(int value) { return fmt::format("{}", value); }
std::string said(bool value) { return value ? "true" : "false"; }
std::string said(const std::string& text) { return quoted(text); }
std::string said(const Color& color) { return quoted(to_text(color)); }
std::string said(FlatPoint point) {
  return fmt::format("[{}, {}]", said(mm(point.x)), said(mm(point.y)));
}

template <class Items>
std::string said_list(const Items& items) {
  std::string out;
  for (const auto& item : items) out += (out.empty() ? "" : ", ") + said(item);
  return "[" + out + "]";
}

std::string said(const RunEnd& end) {
  struct Distance {
    std::string operator()(Length length) const { return said(length); }
    std::string operator()(RunEnd::Share share) const {
      // A share was read as percent: so many places bring back what was written.
      return quoted(plain_number(100 * share.fraction, 12) + "%");
    }
    std::string operator()(RunEnd::Corner) const { return quoted("corner"); }
  };
  return fmt::format("[{}, {}]", said(end.side), std::visit(Distance(), end.at));
}

/// The text so far, a line for each key.
class Writer {
 public:
  void header(std::string_view name) { text_ += fmt::format("\n[{}]\n", name); }
  template <class T>
  void key(std::string_view name, const T& value) {
    raw(name, said(value));
  }
  template <class Items>
  void list(std::string_view name, const Items& items) {
    raw(name, said_list(items));
  }
  template <class T, std::size_t N>
  void word(std::string_view name, T value, const Word<T> (&words)[N]) {
    raw(name, quoted(word_for(words, value)));
  }
  void raw(std::string_view name, const std::string& value) {
    text_ += fmt::format("{} = {}\n", name, value);
  }
  std::string take() { return std::move(text_).substr(1); }

 private:
  std::string text_;
};

void write(Writer& out, const FrameKeys& frame) {
  out.header("frame");
  out.list("corners", frame.corners);
  out.list("sides", frame.sides);
  out.key("fit", frame.fit);
  out.key("floor_gap", frame.floor_gap);
  out.key("backed", frame.backed);
}

void write(Writer& out, const BoardKeys& boards) {
  out.header("boards");
  out.key("thickness", boards.thickness);
  out.key("height", boards.height);
  out.word("joint", boards.joint, kJointWords);
  out.list("lapping", boards.lapping);
  out.list("stock", boards.stock);
  out.key("kerf", boards.kerf);
  out.key("hard_depth", boards.hard_depth);
  out.key("density", boards.density_kg_m3);
}

void write(Writer& out, const PaddingKeys& padding) {
  out.header("padding");
  out.word("form", padding.form, kPaddingFormWords);
  out.key("diameter", padding.diameter);
  out.key("stack", padding.stack);
  out.word("core", padding.core, kCoreWords);
  out.key("depth", padding.depth);
  out.key("height", padding.height);
  out.key("edge_radius", padding.edge_radius);
  out.word("corner", padding.corner, kPaddingCornerWords);
  out.list("lapping", padding.lapping);
  out.key("stock", padding.stock);
  out.key("density", padding.density_kg_m3);
}

void write(Writer& out, const ClothKeys& cloth) {
  out.header("cloth");
  out.key("thickness", cloth.thickness);
  out.key("roll_width", cloth.roll_width);
  out.key("buy_step", cloth.buy_step);
  std::string colors;
  for (const ClothColor& color : cloth.colors)
    colors +=
        fmt::format("{}{} = {}", colors.empty() ? "" : ", ", quoted(color.name), said(color.srgb));
  out.raw("colors", "{ " + colors + " }");
  out.key("flap", cloth.flap);
  out.key("staple_line", cloth.staple_line);
  out.key("staple_spacing", cloth.staple_spacing);
  out.key("stretch_along", cloth.stretch_along);
  out.key("stretch_around", cloth.stretch_around);
  out.word("relief", cloth.relief, kReliefWords);
  out.key("setback", cloth.setback);
  out.key("cut_clear", cloth.cut_clear);
  out.key("seam", cloth.seam);
  out.key("end_reach", cloth.end_reach);
  out.key("may_join", cloth.may_join);
  if (cloth.longest_piece) out.key("longest_piece", *cloth.longest_piece);
  out.key("may_lie_across", cloth.may_lie_across);
  out.key("one_way", cloth.one_way);
  out.key("density", cloth.density_kg_m2);
  out.key("staple_mass", cloth.staple_g);
  out.word("fixing", cloth.fixing, kFixingWords);
  out.header("cloth.hook_and_loop");
  out.key("flap", cloth.hook_and_loop.flap);
  out.key("hem", cloth.hook_and_loop.hem);
  out.key("strip", cloth.hook_and_loop.strip);
  out.key("stretch", cloth.hook_and_loop.stretch);
  out.key("density", cloth.hook_and_loop.density_kg_m2);
}

void write(Writer& out, const BumperKeys& bumper) {
  out.header("[bumper]");
  out.key("name", bumper.name);
  out.key("from", bumper.from);
  out.key("to", bumper.to);
  out.key("end_clearance", bumper.end_clearance);
}

void write(Writer& out, const BracketKeys& bracket) {
  out.header("[bracket]");
  out.key("bumper", bracket.bumper);
  out.key("side", bracket.side);
  out.raw("at",
          fmt::format("[{}, {}]", quoted(word_for(kFromEndWords, bracket.from)), said(bracket.at)));
  if (!bracket.next_to.empty()) out.key("next_to", bracket.next_to);
  out.key("width", bracket.width);
  out.key("height", bracket.height);
  out.key("down", bracket.down);
  out.list("holes", bracket.holes);
  out.word("cloth", bracket.cloth, kBracketClothWords);
  out.key("clearance", bracket.clearance);
  out.key("corner_radius", bracket.corner_radius);
  if (bracket.mass_g) out.key("mass", *bracket.mass_g);
}

void write(Writer& out, const NumeralKeys& numerals) {
  out.header("numerals");
  out.key("font", numerals.font);
  std::string axes;
  for (const auto& [tag, value] : numerals.axes)
    axes += fmt::format("{}{} = {}", axes.empty() ? "" : ", ", quoted(tag), said(value));
  out.raw("axes", "{ " + axes + " }");
  if (numerals.height) out.key("height", *numerals.height);
  if (numerals.sides) out.list("sides", *numerals.sides);
  if (numerals.spacing.tabular)
    out.raw("spacing", quoted("tabular"));
  else if (numerals.spacing.extra != Length())
    out.key("spacing", numerals.spacing.extra);
  out.word("method", numerals.method, kMethodWords);
  out.key("color", numerals.color);
  out.key("outline", numerals.outline);
  out.key("make_legal", numerals.make_legal);
  out.key("bridge", numerals.bridge);
  out.key("spares", numerals.spares);
  for (const NumeralPlaceKeys& place : numerals.places) {
    out.header("[numerals.place]");
    out.key("bumper", place.bumper);
    out.key("side", place.side);
    if (place.center) out.key("center", *place.center);
    if (place.split > 0) out.key("split", place.split);
  }
}

void write(Writer& out, const SightKeys& sight) {
  out.header("sight");
  out.list("distance", sight.distance);
  out.list("eye_height", sight.eye_height);
  out.key("step", sight.step);
  out.key("least_angle", sight.least_angle);
  for (const BlindKeys& blind : sight.blind) {
    out.header("[sight.blind]");
    out.raw("box", fmt::format("[{}, {}]", said_list(blind.lo), said_list(blind.hi)));
  }
}

void write(Writer& out, const PaperKeys& paper) {
  out.header("paper");
  if (paper.sheet == kOwnSize)
    out.list("sheet", std::array{paper.width, paper.height});
  else
    out.key("sheet", paper.sheet);
  if (paper.sheet == kRoll) out.key("width", paper.width);
  out.key("margin", paper.margin);
  out.key("overlap", paper.overlap);
  out.word("face", paper.face, kPaperFaceWords);
  if (paper.measured) out.list("measured", *paper.measured);
}

}  // namespace

std::string job_text(const Job& job) {
  Writer out;
  out.header("job");
  if (!job.title.empty()) out.key("title", job.title);
  if (!job.number.empty()) out.key("number", job.number);
  out.key("season", job.season);
  out.word("units", job.units, kUnitWords);
  write(out, job.frame);
  write(out, job.boards);
  write(out, job.padding);
  write(out, job.cloth);
  for (const BumperKeys& bumper : job.bumpers) write(out, bumper);
  for (const BracketKeys& bracket : job.brackets) write(out, bracket);
  write(out, job.numerals);
  write(out, job.sight);
  write(out, job.paper);
  return out.take();
}

}  // namespace swathe
