#include <ft2build.h>

#include "swathe/type.hpp"
#include FT_FREETYPE_H
#include FT_ERRORS_H
#include FT_MODULE_H
#include FT_MULTIPLE_MASTERS_H
#include FT_OUTLINE_H
#include <fmt/format.h>
#include <hb-ft.h>
#include <hb-ot.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <functional>
#include <memory>
#include <new>
#include <numbers>
#include <string>
#include <string_view>
#include <unordered_map>

#include "base/limits.hpp"
#include "base/maths.hpp"
#include "base/memory_watch.hpp"
#include "base/print.hpp"
#include "plane/clip.hpp"
#include "plane/crossings.hpp"
#include "type/flatten.hpp"

namespace swathe {
namespace {

constexpr std::size_t kMostFontName = 60;  ///< of what a font file says it is called

constexpr FT_Int32 kLoad = FT_LOAD_NO_HINTING | FT_LOAD_NO_BITMAP;
constexpr double kSubunit = 64;  // FreeType and, through it, HarfBuzz count 1/64 of a font unit

/// Memory for FreeType: malloc with an upper limit.
struct Memory {
  std::size_t used = 0, most = kMostFontMemory;
  FT_MemoryRec_ record{};

  Memory() {
    record.user = this;
    record.alloc = [](FT_Memory memory, long size) -> void* {
      return static_cast<Memory*>(memory->user)->resize(nullptr, size);
    };
    record.free = [](FT_Memory memory, void* block) {
      if (block) static_cast<Memory*>(memory->user)->release(block);
    };
    record.realloc = [](FT_Memory memory, long, long size, void* block) -> void* {
      return static_cast<Memory*>(memory->user)->resize(block, size);
    };
  }

  Memory(const Memory&) = delete;
  Memory& operator=(const Memory&) = delete;

  // The size is kept in front of each block, since FreeType does not give it when it frees one.
  static constexpr std::size_t kHead = alignof(std::max_align_t);

  void* resize(void* block, long size) {
    if (size < 0) return nullptr;
    char* const head = block ? static_cast<char*>(block) - kHead : nullptr;
    const std::size_t old = head ? *reinterpret_cast<std::size_t*>(head) : 0;
    const std::size_t wanted = static_cast<std::size_t>(size);
    if (head && wanted <= old) return block;
    // A block that has grown will probably grow again: adding half of its size saves copies.
    const std::size_t room = head ? std::max(wanted, old + old / 2) : wanted;
    if (used - old + room > most) return nullptr;
    char* const fresh = static_cast<char*>(std::realloc(head, room + kHead));
    if (!fresh) return nullptr;
    *reinterpret_cast<std::size_t*>(fresh) = room;
    used += room - old;
    return fresh + kHead;
  }

  void release(void* block) {
    char* const head = static_cast<char*>(block) - kHead;
    used -= *reinterpret_cast<std::size_t*>(head);
    std::free(head);
  }
};

bool looks_like_a_font(std::string_view bytes) {
  using namespace std::string_view_literals;
  constexpr std::array kSignatures = {"\0\1\0\0"sv, "true"sv, "OTTO"sv,
                                      "ttcf"sv,     "wOFF"sv, "wOF2"sv};
  return std::ranges::any_of(kSignatures, [&](auto s) { return bytes.starts_with(s); });
}

std::string tag_text(FT_ULong tag) {
  std::string text;
  for (int shift = 24; shift >= 0; shift -= 8) {
    const char c = static_cast<char>((tag >> shift) & 0xff);
    text += c >= ' ' && c <= '~' ? c : '?';  // a damaged font may contain any bytes
  }
  while (!text.empty() && text.back() == ' ') text.pop_back();
  return text;
}

std::string in_words(const std::vector<FontAxis>& axes) {
  std::string text;
  for (const FontAxis& axis : axes) {
    text +=
        fmt::format("{}{} {:g} to {:g}", text.empty() ? "" : ", ", axis.tag, axis.least, axis.most);
  }
  return text;
}

FT_Fixed to_fixed(double value) { return static_cast<FT_Fixed>(std::lround(value * 65536)); }
double from_fixed(FT_Fixed value) { return static_cast<double>(value) / 65536.0; }

/// Turns FreeType's calls for an outline into our curves.
struct OutlineWriter {
  std::vector<type::Curve> curves;
  double units;  // 1/64 font units in the em
  FlatPoint at;
  bool open = false;

  FlatPoint em(const FT_Vector* v) const {
    return {static_cast<double>(v->x) / units, static_cast<double>(v->y) / units};
  }
  void close() {
    if (open) curves.push_back({type::Curve::Verb::Close, {}, {}, {}});
    open = false;
  }
  void move(FlatPoint to) {
    close();
    curves.push_back({type::Curve::Verb::Move, {}, {}, to});
    at = to;
    open = true;
  }
  void line(FlatPoint to) {
    if (to == at) return;
    curves.push_back({type::Curve::Verb::Line, {}, {}, to});
    at = to;
  }
  void cubic(FlatPoint a, FlatPoint b, FlatPoint to) {
    curves.push_back({type::Curve::Verb::Cubic, a, b, to});
    at = to;
  }
  void quadratic(FlatPoint control, FlatPoint to) {
    cubic(at + (2.0 / 3.0) * (control - at), to + (2.0 / 3.0) * (control - to), to);
  }
};

/// Exceptions must not pass through FreeType, so they are kept until it returns.
template <class Step>
int step_of(void* user, Step step) {
  try {
    step(*static_cast<OutlineWriter*>(user));
    return FT_Err_Ok;
  } catch (const std::bad_alloc&) {
    return FT_Err_Out_Of_Memory;
  }
}

const FT_Outline_Funcs& outline_callbacks() {
  using Vector = const FT_Vector*;
  static constexpr FT_Outline_Funcs callbacks = {
      [](Vector to, void* user) {
        return step_of(user, [&](OutlineWriter& w) { w.move(w.em(to)); });
      },
      [](Vector to, void* user) {
        return step_of(user, [&](OutlineWriter& w) { w.line(w.em(to)); });
      },
      [](Vector control, Vector to, void* user) {
        return step_of(user, [&](OutlineWriter& w) { w.quadratic(w.em(control), w.em(to)); });
      },
      [](Vector a, Vector b, Vector to, void* user) {
        return step_of(user, [&](OutlineWriter& w) { w.cubic(w.em(a), w.em(b), w.em(to)); });
      },
      0,
      0};
  return callbacks;
}

/// Whether all lies within 100 em of the origin; damaged fonts hold outlines of any size.
bool near_origin(const std::vector<type::Curve>& curves) {
  constexpr double kFurthest = 100;
  const auto near = [](FlatPoint p) {
    return std::abs(p.x) < kFurthest && std::abs(p.y) < kFurthest;
  };
  return std::ranges::all_of(curves, [&](const type::Curve& curve) {
    return near(curve.a) && near(curve.b) && near(curve.to);
  });
}

/// Of all contours, over the greater side of their box.
double relative_length(const plane::Region& region) {
  const plane::Box box = bounds(region);
  double length = 0;
  for (const plane::Polygon& polygon : region) {
    FlatPoint from = polygon.back();
    for (const FlatPoint to : polygon) {
      length += apart(from, to);
      from = to;
    }
  }
  return length > 0 ? length / std::max(box.width(), box.height()) : 0;
}

/// What all corners turn by, left or right, in full turns.
double full_turns(const plane::Region& region) {
  double turned = 0;
  for (const plane::Polygon& polygon : region) {
    const std::size_t n = polygon.size();
    for (std::size_t i = 0; i < n; ++i) {
      const FlatPoint in = polygon[(i + 1) % n] - polygon[i];
      const FlatPoint out = polygon[(i + 2) % n] - polygon[(i + 1) % n];
      turned += std::abs(maths::atan2(cross(in, out), dot(in, out)));
    }
  }
  return turned / (2 * std::numbers::pi);
}

/// Finds a std::string by a view of it.
struct TextHash {
  using is_transparent = void;
  std::size_t operator()(std::string_view text) const {
    return std::hash<std::string_view>()(text);
  }
};

}  // namespace

struct Font::Open {
  Memory memory;
  FT_Library library = nullptr;
  FT_Face face = nullptr;
  hb_font_t* font = nullptr;
  hb_buffer_t* buffer = nullptr;  ///< for one line after another
  hb_language_t language = nullptr;
  std::string name;
  std::vector<FontAxis> axes;
  double units = 0;       ///< 1/64 font units in the em
  double cap_height = 0;  ///< em
  std::unordered_map<unsigned, std::vector<type::Curve>> outlines;
  /// By text, for each choice of options.
  std::array<std::unordered_map<std::string, std::vector<ShapedGlyph>, TextHash, std::equal_to<>>,
             4>
      lines;

  Open() = default;
  Open(const Open&) = delete;
  Open& operator=(const Open&) = delete;
  ~Open() {
    if (buffer) hb_buffer_destroy(buffer);
    if (font) hb_font_destroy(font);
    if (face) FT_Done_Face(face);
    if (library) FT_Done_Library(library);
  }

  /// Refuses what Font::open refuses.
  static Outcome<std::shared_ptr<Open>> read(std::string_view bytes,
                                             const std::map<std::string, double>& axes);

  const std::vector<type::Curve>& outline(unsigned glyph);
  std::vector<type::Curve> drawn(unsigned glyph);
  std::vector<ShapedGlyph> shaped(std::string_view text, ShapeOptions options) const;
  const std::vector<ShapedGlyph>& line(std::string_view text, ShapeOptions options);
  Outcome<void> set_axes(const std::map<std::string, double>& wanted);
};

Outcome<void> Font::Open::set_axes(const std::map<std::string, double>& wanted) {
  FT_MM_Var* range = nullptr;
  if (!FT_HAS_MULTIPLE_MASTERS(face) || FT_Get_MM_Var(face, &range) != 0) range = nullptr;
  const FT_UInt count = range ? range->num_axis : 0;
  for (FT_UInt i = 0; i < count; ++i) {
    const FT_Var_Axis& axis = range->axis[i];
    axes.push_back({tag_text(axis.tag), from_fixed(axis.minimum), from_fixed(axis.maximum),
                    from_fixed(axis.def)});
  }
  if (range) FT_Done_MM_Var(library, range);

  Refusals refusals;
  for (const auto& [tag, value] : wanted) {
    const auto found = std::ranges::find(axes, tag, &FontAxis::tag);
    if (found == axes.end()) {
      refusals.push_back(
          {Why::UnknownName,
           axes.empty()
               ? fmt::format("the font {} has no axes, expected none, not \"{}\"", name, tag)
               : fmt::format("the font {} has no axis \"{}\", expected one of {}", name, tag,
                             in_words(axes)),
           {}});
    } else if (!(value >= found->least && value <= found->most)) {
      refusals.push_back({Why::OutOfRange,
                          fmt::format("the axis {} of the font {} is {:g}, expected {:g} to {:g}",
                                      tag, name, value, found->least, found->most),
                          {}});
    } else {
      found->value = value;
    }
  }
  if (!refusals.empty()) return tl::unexpected(std::move(refusals));
  std::vector<FT_Fixed> coordinates;
  for (const FontAxis& axis : axes) coordinates.push_back(to_fixed(axis.value));
  if (!axes.empty() && FT_Set_Var_Design_Coordinates(face, count, coordinates.data()) != 0) {
    return refuse(Why::BadFont, fmt::format("the axes of the font {} cannot be set", name));
  }
  return {};
}

std::vector<type::Curve> Font::Open::drawn(unsigned glyph) {
  if (FT_Load_Glyph(face, glyph, kLoad) != 0) return {};
  if (face->glyph->format != FT_GLYPH_FORMAT_OUTLINE) return {};
  OutlineWriter writer{{}, units, {}};
  const bool whole =
      FT_Outline_Decompose(&face->glyph->outline, &outline_callbacks(), &writer) == 0;
  writer.close();
  if (!whole) return {};
  return std::move(writer.curves);
}

const std::vector<type::Curve>& Font::Open::outline(unsigned glyph) {
  if (const auto found = outlines.find(glyph); found != outlines.end()) return found->second;
  const MemoryWatch watch;
  std::vector<type::Curve> curves = drawn(glyph);
  watch.require();
  return outlines.emplace(glyph, std::move(curves)).first->second;
}

std::vector<ShapedGlyph> Font::Open::shaped(std::string_view text, ShapeOptions options) const {
  const MemoryWatch watch;
  hb_buffer_clear_contents(buffer);
  hb_buffer_add_utf8(buffer, text.data(), static_cast<int>(text.size()), 0, -1);
  hb_buffer_set_direction(buffer, HB_DIRECTION_LTR);
  hb_buffer_set_script(buffer, HB_SCRIPT_LATIN);
  hb_buffer_set_language(buffer, language);
  const auto feature = [](const char(&tag)[5], bool on) {
    return hb_feature_t{HB_TAG(tag[0], tag[1], tag[2], tag[3]), on ? 1u : 0u,
                        HB_FEATURE_GLOBAL_START, HB_FEATURE_GLOBAL_END};
  };
  const std::array features = {feature("lnum", true), feature("onum", false),
                               feature("kern", options.kerning), feature("tnum", true)};
  const unsigned count_of_features = options.tabular ? 4 : 3;
  const char* const shapers[] = {"ot", nullptr};
  hb_shape_full(font, buffer, features.data(), count_of_features, shapers);
  watch.require();
  unsigned count = 0;
  const hb_glyph_info_t* const infos = hb_buffer_get_glyph_infos(buffer, &count);
  const hb_glyph_position_t* const places = hb_buffer_get_glyph_positions(buffer, &count);
  std::vector<ShapedGlyph> line;
  line.reserve(count);
  for (unsigned i = 0; i < count; ++i) {
    line.push_back({infos[i].codepoint,
                    infos[i].cluster,
                    places[i].x_advance / units,
                    {places[i].x_offset / units, places[i].y_offset / units}});
  }
  return line;
}

/// Sheets use the same words often, and measure them before they write them.
const std::vector<ShapedGlyph>& Font::Open::line(std::string_view text, ShapeOptions options) {
  constexpr std::size_t kMostLines = 5000;
  auto& kept = lines[(options.tabular ? 2u : 0u) + (options.kerning ? 1u : 0u)];
  if (const auto found = kept.find(text); found != kept.end()) return found->second;
  if (kept.size() >= kMostLines) kept.clear();
  return kept.emplace(std::string(text), shaped(text, options)).first->second;
}

Outcome<std::shared_ptr<Font::Open>> Font::Open::read(std::string_view bytes,
                                                      const std::map<std::string, double>& axes) {
  if (bytes.size() > kMostFontBytes) {
    return refuse(Why::TooLarge, fmt::format("the font file is {} bytes long, expected at most {}",
                                             bytes.size(), kMostFontBytes));
  }
  if (!looks_like_a_font(bytes)) {
    return refuse(Why::BadFont, "the file is not a font, expected TrueType, OpenType or WOFF2");
  }
  auto open = std::make_shared<Open>();
  open->memory.most =
      std::min(kMostFontMemory, kLeastFontMemory + kFontMemoryPerByte * bytes.size());
  // FT_Init_FreeType would read the environment; these do not.
  if (FT_New_Library(&open->memory.record, &open->library) != 0) {
    return refuse(Why::BadFont, "the font reader cannot start");
  }
  FT_Add_Default_Modules(open->library);
  if (FT_New_Memory_Face(open->library, reinterpret_cast<const FT_Byte*>(bytes.data()),
                         static_cast<FT_Long>(bytes.size()), 0, &open->face) != 0) {
    return refuse(Why::BadFont, "the font file is damaged or cut short, expected a whole one");
  }
  const FT_Face face = open->face;
  if (face->family_name) open->name = clip(face->family_name, kMostFontName);
  if (face->style_name) open->name += " " + clip(face->style_name, kMostFontName);
  if (!FT_IS_SFNT(face) || !FT_IS_SCALABLE(face) || face->units_per_EM < 16) {
    return refuse(Why::BadFont,
                  "the font has no outlines, expected one that has: a bitmap cannot be cut");
  }
  if (!face->charmap || face->charmap->encoding != FT_ENCODING_UNICODE) {
    return refuse(
        Why::BadFont,
        "the font does not say which of its shapes is which character, expected one with a "
        "Unicode character map");
  }
  if (auto set = open->set_axes(axes); !set) return tl::unexpected(std::move(set.error()));
  // At one pixel for each font unit, rounding is to 1/64 of a unit only.
  if (FT_Set_Pixel_Sizes(face, 0, face->units_per_EM) != 0) {
    return refuse(Why::BadFont, "the font cannot be set at its own size");
  }
  open->units = kSubunit * face->units_per_EM;
  open->font = hb_ft_font_create_referenced(face);
  hb_ft_font_set_load_flags(open->font, kLoad);
  open->buffer = hb_buffer_create();
  open->language = hb_language_from_string("en", -1);
  // HarfBuzz reads the same widths from a font's tables itself, in less time.
  if (open->axes.empty()) hb_ot_font_set_funcs(open->font);

  const FT_UInt capital = FT_Get_Char_Index(face, 'H');
  const FT_UInt measured = capital ? capital : FT_Get_Char_Index(face, '1');
  if (measured) {
    constexpr double kFlatness = 1e-4;
    const std::vector<type::Curve>& curves = open->outline(measured);
    if (count_flattened(curves, kFlatness) <= kMostDigitEdges) {
      const plane::Box box = bounds(flatten(curves, kFlatness));
      if (!box.empty()) open->cap_height = box.height();
    }
  }
  return open;
}

Outcome<Font> Font::open(std::string_view bytes, const std::map<std::string, double>& axes) {
  const MemoryWatch watch;
  auto open = Open::read(bytes, axes);
  watch.require();
  if (!open) return tl::unexpected(std::move(open.error()));
  return Font(std::move(*open));
}

const std::string& Font::name() const { return open_->name; }

const std::vector<FontAxis>& Font::axes() const { return open_->axes; }

std::vector<ShapedGlyph> Font::shape(std::string_view text, ShapeOptions options) const {
  return open_->line(text, options);
}

bool Font::has(char32_t character) const { return FT_Get_Char_Index(open_->face, character) != 0; }

const std::vector<type::Curve>& Font::outline(unsigned glyph) const {
  return open_->outline(glyph);
}

// Each is counted before the step whose time depends on it: overlaps are united last.
Outcome<plane::Region> Font::region(unsigned glyph, double tolerance) const {
  constexpr double kGrid = 1e-6;  // em: well below a 1/64 unit of any font
  const auto refused = [](const std::string& found) { return refuse(Why::TooLarge, found); };
  const std::vector<type::Curve>& curves = outline(glyph);
  if (curves.size() > kMostDigitCurves)
    return refused(
        fmt::format("has {} curves, expected at most {}", curves.size(), kMostDigitCurves));
  if (!near_origin(curves))
    return refused("reaches further than 100 em from its origin, expected less");
  if (const std::size_t edges = count_flattened(curves, tolerance); edges > kMostDigitEdges)
    return refused(
        fmt::format("comes to {} straight edges, expected at most {}", edges, kMostDigitEdges));
  const plane::Region drawn = flatten(curves, tolerance);
  if (const double length = relative_length(drawn); length > kMostDigitLength)
    return refused(
        fmt::format("has an outline {:.0f} times as long as the digit is large, expected "
                    "at most {:g} times",
                    std::ceil(length), kMostDigitLength));
  if (count_crossings(drawn, kMostDigitCrossings, kGrid) > kMostDigitCrossings)
    return refused(
        fmt::format("has an outline that crosses or touches itself in more than {} "
                    "places, expected at most {}",
                    kMostDigitCrossings, kMostDigitCrossings));
  plane::Region united = unite(drawn, kGrid);
  if (const double turns = full_turns(united); turns > kMostDigitTurns)
    return refused(fmt::format("has corners that come to {:.0f} full turns, expected at most {:g}",
                               std::ceil(turns), kMostDigitTurns));
  if (united.size() > kMostDigitContours)
    return refused(fmt::format("falls into {} contours, expected at most {}", united.size(),
                               kMostDigitContours));
  return united;
}

double Font::cap_height() const { return open_->cap_height; }

double Font::text_width_mm(std::string_view text, double cap_height_mm) const {
  if (!(open_->cap_height > 0)) return 0;
  double advance = 0;
  for (const ShapedGlyph& glyph : open_->line(text, kLabelFigures)) advance += glyph.advance;
  return advance * cap_height_mm / open_->cap_height;
}

}  // namespace swathe
