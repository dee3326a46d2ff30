#include <fmt/format.h>

#include <array>
#include <cmath>
#include <initializer_list>
#include <numbers>
#include <string_view>
#include <utility>
#include <vector>

#include "swathe/base.hpp"
#include "swathe/write.hpp"
#include "write/dxf_text.hpp"

namespace swathe {
namespace {

constexpr std::size_t kKinds = static_cast<std::size_t>(LineKind::Outline) + 1;
constexpr const char* kKeyLayer = "KEY";
constexpr const char* kTextLayer = "TEXT";
constexpr int kWhiteOrBlack = 7;  ///< whichever the background is not

/// The color index of a kind's layer. Cutters tell their passes by color: what a blade follows
/// has one that nothing else has. Common practice, no source.
constexpr std::array<int, kKinds> kColors = {
    1,  // Cut: red
    6,  // CutLast: magenta
    5,  // Fold: blue
    3,  // Stitch: green
    4,  // Corner: cyan
    8,  // StapleLine: gray
    2,  // Staple: yellow
    6,  // Punch: magenta, a hole is cut too
    5,  // Match
    4,  // Numeral
    8,  // Bridge
    8,  // Grain
    9,  // Join
    9,  // Trim
    8,  // Scale
    9,  // Thin
    7,  // Outline
};

/// Names by which objects of a file point to one another. What is drawn follows kFirstFree.
enum Handle : unsigned {
  kNobody = 0,
  kViewports = 1,
  kLineTypes,
  kLayers,
  kStyles,
  kViews,
  kCoordinateSystems,
  kApplications,
  kDimensionStyles,
  kBlockRecords,
  kModelRecord,
  kPaperRecord,
  kRootDictionary,
  kGroupDictionary,
  kFirstFree = 0x20,
};

/// Pairs of group code and value, a line each.
class Groups {
 public:
  void add(int code, std::string_view value) { text_ += fmt::format("{}\n{}\n", code, value); }
  void whole(int code, int value) { add(code, fmt::format("{}", value)); }
  void real(int code, double value) { add(code, plain_number(value, kDecimals)); }
  void handle(int code, unsigned value) { add(code, fmt::format("{:X}", value)); }
  void point(int code, FlatPoint p) {
    real(code, p.x);
    real(code + 10, p.y);
    real(code + 20, 0);
  }
  /// A name, then what follows it until the next.
  void begin(std::string_view name) { add(0, name); }
  void classes(std::initializer_list<const char*> names) {
    for (const char* const name : names) add(100, name);
  }
  void append(const Groups& other) { text_ += other.text_; }

  const std::string& text() const { return text_; }

 private:
  static constexpr int kDecimals = 6;
  std::string text_;
};

/// A line's width as the format has it.
int hundredths(double width_mm) { return static_cast<int>(std::lround(100 * width_mm)); }

std::string section(std::string_view name, const Groups& content) {
  Groups whole;
  whole.begin("SECTION");
  whole.add(2, name);
  whole.append(content);
  whole.begin("ENDSEC");
  return whole.text();
}

/// A page's marks as entities, and which layers they lie on.
class Entities {
 public:
  Entities(const Page& page, const Font& labels) : labels_(labels) {
    for (const draw::Mark& mark : page.drawing.marks())
      std::visit([&](const auto& one) { add(one); }, mark);
  }

  const Groups& groups() const { return groups_; }
  bool has_layer(std::size_t kind) const { return lines_[kind]; }
  bool has_key() const { return has_key_; }
  bool has_text() const { return has_text_; }
  unsigned next_handle() const { return next_; }

 private:
  void begin(std::string_view type, std::string_view layer) {
    groups_.begin(type);
    groups_.handle(5, next_++);
    groups_.handle(330, kModelRecord);
    groups_.classes({"AcDbEntity"});
    groups_.add(8, layer);
  }

  void add(const LineMark& mark) { add(mark.kind, mark.path, mark.sample); }

  void add(const FillMark& mark) {
    if (mark.color.red + mark.color.green + mark.color.blue > 0) return;  // a tint
    for (const plane::Path& outline : mark.outlines) add(mark.kind, outline);
  }

  void add(LineKind kind, const plane::Path& path, bool sample = false) {
    if (path.vertices.size() < 2) return;
    const LineStyle& style = style_of(kind);
    if (sample)
      has_key_ = true;
    else
      lines_[static_cast<std::size_t>(kind)] = true;
    begin("LWPOLYLINE", sample ? kKeyLayer : style.layer);
    if (sample) {  // in its kind's own dashes and width, whatever its layer's are
      if (!style.dashes_mm.empty()) groups_.add(6, style.layer);
      groups_.whole(370, hundredths(style.width_mm));
    }
    groups_.classes({"AcDbPolyline"});
    groups_.whole(90, static_cast<int>(path.vertices.size()));
    groups_.whole(70, path.closed ? 1 : 0);
    for (const plane::Vertex& vertex : path.vertices) {
      groups_.real(10, vertex.at.x);
      groups_.real(20, vertex.at.y);
      if (vertex.bulge != 0) groups_.real(42, vertex.bulge);
    }
  }

  /// Fitted between both ends of its base line (72: 5). A reader that knows only where a text
  /// starts finds it at the same place.
  void add(const TextMark& mark) {
    const double width = labels_.text_width_mm(mark.text, mark.height_mm);
    if (!(width > 0)) return;
    const double share = mark.anchor == draw::Anchor::Left     ? 0.0
                         : mark.anchor == draw::Anchor::Middle ? 0.5
                                                               : 1.0;
    const FlatPoint along = plane::direction(mark.turn), start = mark.at - share * width * along;
    has_text_ = true;
    begin("TEXT", kTextLayer);
    groups_.classes({"AcDbText"});
    groups_.point(10, start);
    groups_.real(40, mark.height_mm);
    groups_.add(1, dxf_text(mark.text));
    groups_.real(50, mark.turn * 180 / std::numbers::pi);
    groups_.whole(72, 5);
    groups_.point(11, start + width * along);
    groups_.classes({"AcDbText"});
  }

  const Font& labels_;
  Groups groups_;
  std::array<bool, kKinds> lines_{};
  bool has_key_ = false, has_text_ = false;
  unsigned next_ = kFirstFree;
};

/// The tables of a file. Each of their entries has a handle of its own.
class Tables {
 public:
  Tables(const Page& page, const Entities& entities) : next_(entities.next_handle()) {
    viewport(page);
    line_types();
    layers(entities);
    text_style();
    empty_tables();
    application();
    block_records();
  }

  const Groups& groups() const { return groups_; }
  unsigned next_handle() const { return next_; }

 private:
  void begin(std::string_view name, unsigned handle, int entries) {
    groups_.begin("TABLE");
    groups_.add(2, name);
    groups_.handle(5, handle);
    groups_.handle(330, kNobody);
    groups_.classes({"AcDbSymbolTable"});
    groups_.whole(70, entries);
  }
  void end() { groups_.begin("ENDTAB"); }

  void empty_tables() {
    begin("VIEW", kViews, 0);
    end();
    begin("UCS", kCoordinateSystems, 0);
    end();
    begin("DIMSTYLE", kDimensionStyles, 0);
    groups_.classes({"AcDbDimStyleTable"});
    end();
  }

  void entry(std::string_view type, unsigned table, const char* record, std::string_view name,
             unsigned handle) {
    groups_.begin(type);
    groups_.handle(5, handle);
    groups_.handle(330, table);
    groups_.classes({"AcDbSymbolTableRecord", record});
    groups_.add(2, name);
  }

  /// Opens the file on the whole page.
  void viewport(const Page& page) {
    begin("VPORT", kViewports, 1);
    entry("VPORT", kViewports, "AcDbViewportTableRecord", "*Active", next_++);
    groups_.whole(70, 0);
    const auto pair = [&](int code, double x, double y) {
      groups_.real(code, x);
      groups_.real(code + 10, y);
    };
    pair(10, 0, 0);
    pair(11, 1, 1);
    pair(12, 0.5 * page.width_mm, 0.5 * page.height_mm);  // the view's middle
    groups_.real(40, page.height_mm);
    groups_.real(41, page.height_mm > 0 ? page.width_mm / page.height_mm : 1.0);
    end();
  }

  void line_type(std::string_view name, const std::vector<double>& dashes) {
    entry("LTYPE", kLineTypes, "AcDbLinetypeTableRecord", name, next_++);
    groups_.whole(70, 0);
    groups_.add(3, "");
    groups_.whole(72, 65);  // the letter A: dashes begin and end on the line's ends
    groups_.whole(73, static_cast<int>(dashes.size()));
    double whole = 0;
    for (const double dash : dashes) whole += dash;
    groups_.real(40, whole);
    for (std::size_t k = 0; k < dashes.size(); ++k) {
      groups_.real(49, k % 2 == 0 ? dashes[k] : -dashes[k]);
      groups_.whole(74, 0);
    }
  }

  void line_types() {
    begin("LTYPE", kLineTypes, static_cast<int>(kKinds) + 3);
    for (const char* const name : {"ByBlock", "ByLayer", "Continuous"}) line_type(name, {});
    for (std::size_t kind = 0; kind < kKinds; ++kind) {
      const LineStyle& style = style_of(static_cast<LineKind>(kind));
      if (!style.dashes_mm.empty()) line_type(style.layer, style.dashes_mm);
    }
    end();
  }

  void layer(std::string_view name, int color, std::string_view line_type, double width_mm) {
    entry("LAYER", kLayers, "AcDbLayerTableRecord", name, next_++);
    groups_.whole(70, 0);
    groups_.whole(62, color);
    groups_.add(6, line_type);
    groups_.whole(370, hundredths(width_mm));
  }

  void layers(const Entities& entities) {
    begin("LAYER", kLayers, static_cast<int>(kKinds) + 3);
    layer("0", kWhiteOrBlack, "Continuous", 0.25);  // every file has it
    for (std::size_t kind = 0; kind < kKinds; ++kind) {
      if (!entities.has_layer(kind)) continue;
      const LineStyle& style = style_of(static_cast<LineKind>(kind));
      layer(style.layer, kColors[kind], style.dashes_mm.empty() ? "Continuous" : style.layer,
            style.width_mm);
    }
    if (entities.has_key()) layer(kKeyLayer, 8, "Continuous", 0.25);
    if (entities.has_text()) layer(kTextLayer, kWhiteOrBlack, "Continuous", 0.25);
    end();
  }

  void text_style() {
    begin("STYLE", kStyles, 1);
    entry("STYLE", kStyles, "AcDbTextStyleTableRecord", "Standard", next_++);
    groups_.whole(70, 0);
    groups_.real(40, 0);  // each text has its own height
    groups_.real(41, 1);
    groups_.real(50, 0);
    groups_.whole(71, 0);
    groups_.real(42, 3.5);
    groups_.add(3, "txt");
    groups_.add(4, "");
    end();
  }

  void application() {
    begin("APPID", kApplications, 1);
    entry("APPID", kApplications, "AcDbRegAppTableRecord", "ACAD", next_++);
    groups_.whole(70, 0);
    end();
  }

  void block_records() {
    begin("BLOCK_RECORD", kBlockRecords, 2);
    for (const auto& [name, handle] :
         {std::pair{"*Model_Space", kModelRecord}, std::pair{"*Paper_Space", kPaperRecord}})
      entry("BLOCK_RECORD", kBlockRecords, "AcDbBlockTableRecord", name, handle);
    end();
  }

  Groups groups_;
  unsigned next_;
};

Groups header(const Page& page, unsigned next_handle) {
  Groups groups;
  const auto variable = [&](const char* name) { groups.add(9, name); };
  variable("$ACADVER");
  groups.add(1, "AC1015");
  variable("$DWGCODEPAGE");
  groups.add(3, "ANSI_1252");
  variable("$HANDSEED");
  groups.handle(5, next_handle);
  variable("$INSUNITS");
  groups.whole(70, 4);  // millimeters
  variable("$MEASUREMENT");
  groups.whole(70, 1);  // metric
  variable("$LUNITS");
  groups.whole(70, 2);  // decimal
  variable("$LTSCALE");
  groups.real(40, 1);
  variable("$EXTMIN");
  groups.point(10, {0, 0});
  variable("$EXTMAX");
  groups.point(10, {page.width_mm, page.height_mm});
  return groups;
}

/// The two spaces that every file has, empty as blocks: what is drawn stands among the entities.
Groups blocks(unsigned& next) {
  Groups groups;
  for (const auto& [name, record] :
       {std::pair{"*Model_Space", kModelRecord}, std::pair{"*Paper_Space", kPaperRecord}}) {
    const bool paper = record == kPaperRecord;
    const auto entity = [&, owner = record](std::string_view type) {
      groups.begin(type);
      groups.handle(5, next++);
      groups.handle(330, owner);
      groups.classes({"AcDbEntity"});
      if (paper) groups.whole(67, 1);
      groups.add(8, "0");
    };
    entity("BLOCK");
    groups.classes({"AcDbBlockBegin"});
    groups.add(2, name);
    groups.whole(70, 0);
    groups.point(10, {0, 0});
    groups.add(3, name);
    groups.add(1, "");
    entity("ENDBLK");
    groups.classes({"AcDbBlockEnd"});
  }
  return groups;
}

Groups objects() {
  Groups groups;
  const auto dictionary = [&](unsigned handle, unsigned owner) {
    groups.begin("DICTIONARY");
    groups.handle(5, handle);
    groups.handle(330, owner);
    groups.classes({"AcDbDictionary"});
    groups.whole(281, 1);
  };
  dictionary(kRootDictionary, kNobody);
  groups.add(3, "ACAD_GROUP");
  groups.handle(350, kGroupDictionary);
  dictionary(kGroupDictionary, kRootDictionary);
  return groups;
}

}  // namespace

std::string to_dxf(const Page& page, const Font& labels) {
  const Entities entities(page, labels);
  const Tables tables(page, entities);
  unsigned next = tables.next_handle();
  const Groups spaces = blocks(next);
  std::string dxf = section("HEADER", header(page, next));
  dxf += section("CLASSES", {});
  dxf += section("TABLES", tables.groups());
  dxf += section("BLOCKS", spaces);
  dxf += section("ENTITIES", entities.groups());
  dxf += section("OBJECTS", objects());
  Groups last;
  last.begin("EOF");
  return dxf + last.text();
}

}  // namespace swathe
