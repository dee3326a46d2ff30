#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <locale>
#include <map>
#include <numbers>
#include <sstream>
#include <vector>

#include "support/commands.hpp"
#include "support/label_font.hpp"
#include "support/made_by_hand.hpp"
#include "swathe/write.hpp"

using namespace swathe;

namespace {

/// A drawing as ezdxf reads it (read_dxf.py has the whole story).
struct ReadBack {
  struct Outline {
    std::string layer;
    bool closed;
    std::size_t corners;
    double area;
    plane::Box box;
  };
  struct Words {
    FlatPoint at;
    double height, turn_deg, width;
    std::string words;
  };
  std::string version;
  int units = 0, measurement = 0, faults = -1, others = 0;
  std::map<std::string, std::string> layers;  ///< "1 70 Continuous"
  std::vector<Outline> paths;
  std::vector<Words> texts;
};

/// Debian's own Python has Debian's ezdxf, whichever other stands first in the path.
ReadBack read_back(const std::string& dxf) {
  const test::TemporaryFolder folder;
  std::istringstream lines(test::run("/usr/bin/python3 " SWATHE_TEST_DATA "/write/read_dxf.py " +
                                     folder.write("page.dxf", dxf)));
  lines.imbue(std::locale::classic());
  ReadBack back;
  std::string line, first, skip;
  while (std::getline(lines, line)) {
    std::istringstream in(line);
    in.imbue(std::locale::classic());
    in >> first;
    if (first == "version") {
      in >> back.version >> skip >> back.units >> skip >> back.measurement >> skip >> back.faults;
    } else if (first == "layer") {
      std::string name;
      in >> name >> std::ws;
      std::getline(in, back.layers[name]);
    } else if (first == "path") {
      ReadBack::Outline one;
      std::string closed;
      in >> one.layer >> closed >> one.corners >> one.area >> one.box.lo.x >> one.box.lo.y >>
          one.box.hi.x >> one.box.hi.y;
      one.closed = closed == "closed";
      back.paths.push_back(one);
    } else if (first == "text") {
      ReadBack::Words one;
      in >> one.at.x >> one.at.y >> one.height >> one.turn_deg >> one.width;
      in.get();
      std::getline(in, one.words);
      back.texts.push_back(one);
    } else if (first == "fault") {
      MESSAGE(line);
    } else {
      ++back.others;
    }
  }
  return back;
}

double closed_area(const ReadBack& back, const std::string& layer) {
  double sum = 0;
  for (const ReadBack::Outline& one : back.paths)
    if (one.layer == layer && one.closed) sum += one.area;
  return sum;
}

const Sheet& sheet_of(const std::vector<Sheet>& sheets, const std::string& stem) {
  const auto found = std::ranges::find(sheets, stem, &Sheet::stem);
  REQUIRE(found != sheets.end());
  return *found;
}

}  // namespace

TEST_CASE("to_dxf: units, layers and areas as ezdxf reads them") {
  Page page{300, 200, {}, ""};
  page.drawing.line(LineKind::Cut, plane::rectangle({20, 30}, {120, 80}));
  page.drawing.line(LineKind::Punch, plane::circle({200, 100}, 25));
  // A circle's segments over a chord of 40 mm: bent by less and by more than half a circle.
  page.drawing.line(LineKind::Stitch, {{{{50, 150}, 0.4}, {{90, 150}, 0}}, true});
  page.drawing.line(LineKind::Fold, {{{{150, 150}, -1.8}, {{190, 150}, 0}}, true});
  page.drawing.line(LineKind::Grain, {10, 10}, {250, 10});
  page.drawing.fill(LineKind::Numeral, {0.9, 0.9, 0.9}, {plane::rectangle({0, 0}, {9, 9})});
  page.drawing.fill(LineKind::Match, {0, 0, 0}, {plane::closed_path({{0, 0}, {8, 0}, {4, 7}})});
  const Font font = test::label_font();
  const std::string dxf = to_dxf(page, font);
  CHECK(dxf == to_dxf(page, font));  // (1)
  const ReadBack back = read_back(dxf);
  CHECK(back.version == "AC1015");
  // Source: the DXF Reference, HEADER section: $INSUNITS 4 is millimeters, $MEASUREMENT 1 metric.
  CHECK(back.units == 4);
  CHECK(back.measurement == 1);
  CHECK(back.faults == 0);
  CHECK(back.others == 0);
  CHECK(back.paths.size() == 6);  // the tint is none

  CHECK(closed_area(back, "CUT") == doctest::Approx(100 * 50));
  CHECK(closed_area(back, "MATCH") == doctest::Approx(28));
  CHECK(closed_area(back, "PUNCH") == doctest::Approx(std::numbers::pi * 25 * 25).epsilon(1e-5));
  // A segment's area is r^2 (a - sin a) / 2, and r = c / (2 sin(a / 2)). Source: any table of plane
  // figures.
  const auto segment = [](double bulge) {
    const double angle = 4 * std::atan(bulge), radius = 20 / std::sin(0.5 * angle);
    return 0.5 * radius * radius * (angle - std::sin(angle));
  };
  CHECK(closed_area(back, "STITCH") == doctest::Approx(segment(0.4)).epsilon(1e-5));
  CHECK(closed_area(back, "FOLD") == doctest::Approx(-segment(1.8)).epsilon(1e-5));
  for (const ReadBack::Outline& one : back.paths) {
    CHECK(one.closed == (one.layer != "GRAIN"));
    // Bent to the right of its way, an arc rises over it.
    if (one.layer == "STITCH") CHECK(one.box.lo.y < 150 - 1);
    if (one.layer == "FOLD") CHECK(one.box.hi.y > 150 + 1);
  }
  // Widths as style_of has them; a dashed kind has dashes of its own name.
  CHECK(back.layers.at("CUT") == "1 70 Continuous");
  CHECK(back.layers.at("FOLD") == "5 35 FOLD");
  CHECK(back.layers.count("CORNER") == 0);  // no empty layers
  CHECK(back.layers.count("NUMERAL") == 0);
}

TEST_CASE("to_dxf (2): text stands where it does on paper, whatever the words") {
  Page page{300, 200, {}, ""};
  const Font font = test::label_font();
  const std::string words[] = {"a & b < c > \"d\"",   "50 % of 100 %",    "%%d is no degree",
                               "\\P ^J \\U+0041 {x}", "\xe2\x86\x91 TOP", "\xc3\xbc \xc2\xbd"};
  double y = 190;
  for (const std::string& one : words) page.drawing.text({10, y -= 10}, one, 5);
  page.drawing.text({150, 50}, "in the middle", 4, draw::Anchor::Middle);
  page.drawing.text({290, 20}, "to the right", 3.5, draw::Anchor::Right, std::numbers::pi / 6);
  page.drawing.text({10, 10}, "\x01\x1f ctrl", 3);
  const ReadBack back = read_back(to_dxf(page, font));
  CHECK(back.faults == 0);
  REQUIRE(back.texts.size() == std::size(words) + 3);
  for (std::size_t k = 0; k < std::size(words); ++k) {
    // A code of the format is broken up, so that no reader takes words for it.
    CHECK(back.texts[k].words == (k == 2 ? "% %d is no degree" : words[k]));
    CHECK(back.texts[k].at == FlatPoint{10, 180 - 10.0 * static_cast<double>(k)});
    CHECK(back.texts[k].width == doctest::Approx(font.text_width_mm(words[k], 5)));
  }
  const ReadBack::Words& middle = back.texts[std::size(words)];
  CHECK(middle.at.x + 0.5 * middle.width == doctest::Approx(150));
  CHECK(middle.height == 4);
  const ReadBack::Words& right = back.texts[std::size(words) + 1];
  CHECK(right.turn_deg == doctest::Approx(30));
  CHECK(right.at.x + right.width * std::sqrt(0.75) == doctest::Approx(290));
  CHECK(right.at.y + right.width * 0.5 == doctest::Approx(20));
  CHECK(back.texts.back().words == " ctrl");
}

TEST_CASE("to_dxf (3): a cover and its numerals keep the model's areas") {
  const Font font = test::label_font();
  const Made made = test::made_by_hand(test::demo_job());
  const std::vector<Sheet> sheets = all_sheets(made, font);
  const Page& cover = sheet_of(sheets, "A-pattern").pages.front();
  const ReadBack back = read_back(to_dxf(cover, font));
  CHECK(back.faults == 0);
  const Pattern& pattern = made.patterns[0];
  CHECK(std::abs(closed_area(back, "CUT")) == doctest::Approx(area(pattern.outline)).epsilon(1e-7));
  CHECK(std::abs(closed_area(back, "CUT")) == doctest::Approx(pattern.cloth_area).epsilon(1e-7));
  double windows = 0;
  for (const BracketOnPattern& bracket : pattern.brackets)
    for (const plane::Path& window : bracket.windows)
      windows += std::abs(area(plane::Polygon(flatten(window, 1e-4))));
  CHECK(windows > 1000);
  CHECK(std::abs(closed_area(back, "CUT-LAST")) == doctest::Approx(windows).epsilon(1e-5));
  for (const ReadBack::Outline& one : back.paths)  // nothing to cut but the cloth
    if (one.layer == "CUT" || one.layer == "CUT-LAST") CHECK(one.box.hi.y < cover.height_mm - 40);
  CHECK(back.layers.count("KEY") == 1);
  CHECK(back.texts.size() > 20);

  double cut = 0, model = 0;
  for (const Page& page : sheet_of(sheets, "numerals").pages) {
    const ReadBack digits = read_back(to_dxf(page, font));
    CHECK(digits.faults == 0);
    cut += closed_area(digits, "CUT");
    for (const ReadBack::Outline& one : digits.paths)
      if (one.layer == "CUT") CHECK(one.closed);
  }
  for (const Digit& digit : made.numerals->digits) model += area(digit.stencil);
  CHECK(cut == doctest::Approx(model).epsilon(1e-5));
}

TEST_CASE("to_dxf: a sewn dart's curve strays less than 0.05 mm") {
  Job job = test::demo_job();
  job.padding.corner = PaddingCorner::Mitred;
  job.cloth.relief = Relief::Sewn;
  const Font font = test::label_font();
  const Made made = test::made_by_hand(job);
  const Pattern& pattern = made.patterns[0];
  REQUIRE_FALSE(pattern.corners.empty());
  // Between two points of the drawn curve the wrap has the dart's true width; asked in the middle
  // of each chord, it may differ from the chord by so much.
  double worst = 0, where = 0;
  for (std::size_t c = 0; c < pattern.corners.size(); ++c) {
    const std::vector<DartPoint>& dart = pattern.corners[c].dart;
    const RunCorner& corner = made.wraps[0].run().corners.at(c);
    for (std::size_t k = 0; k + 1 < dart.size(); ++k) {
      const FlatPoint a{dart[k].half_width, dart[k].u};
      const FlatPoint b{dart[k + 1].half_width, dart[k + 1].u};
      const double u = 0.5 * (a.y + b.y);
      const FlatPoint truly{made.wraps[0].dart(corner, u), u};
      const double off = std::abs(cross(unit(b - a), truly - a));
      if (off <= worst) continue;
      worst = off;
      where = u;
    }
  }
  CAPTURE(where);
  CHECK(worst < 0.05);
}
