#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <set>
#include <string>
#include <vector>

#include "support/examples.hpp"
#include "support/label_font.hpp"
#include "support/made.hpp"
#include "support/overlaps.hpp"
#include "support/screen_pictures.hpp"
#include "swathe/job.hpp"
#include "swathe/screen.hpp"
#include "swathe/write.hpp"

// What every picture for a screen promises, of every example and of drawn jobs, at the sizes of a
// small window, of the page's panes and of a whole school laptop's window.
namespace swathe {
namespace {

const std::vector<ScreenOptions> kSizes = {
    {320, 240, 13, {}}, {620, 360, 13, {}}, {1366, 620, 13, {}}, {620, 360, 26, {}}};

/// Ink keeps off the edge of its box by so much: boxes that only touch are apart to the eye.
constexpr double kTouching = 0.1;  // CSS mm

/// All layers as one page: what lies over what is asked of the whole picture.
Page page_of(const ScreenPicture& picture) {
  Page page{picture.width_px / screen::kPxPerMm, picture.height_px / screen::kPxPerMm, {}, ""};
  for (const screen::Layer& layer : picture.layers) page.drawing.add(layer.drawing, {});
  return page;
}

void check_words(const ScreenPicture& picture, const Font& labels) {
  const Page page = page_of(picture);
  for (const std::string& fault : test::text_faults(page, labels, kTouching)) FAIL_CHECK(fault);
  for (const std::string& fault : test::lines_through_text(page, labels, kTouching))
    FAIL_CHECK(fault);
  for (const TextMark& text : test::texts_of(page.drawing)) {
    // CSS has the size of the em; the em's share that capitals take is the font's own.
    const double em_px = text.height_mm / labels.cap_height() * 96 / 25.4;
    CHECK(em_px == doctest::Approx(picture.text_px));
  }
}

/// Everything but the observer's own mark is of something of the job, and that is there.
void check_subjects(const ScreenPicture& picture, const Job& job, std::set<std::string>& known) {
  for (const screen::Layer& layer : picture.layers) {
    CAPTURE(layer.what);
    CHECK_FALSE(layer.drawing.marks().empty());
    if (layer.what == "eye") continue;
    for (const draw::Mark& mark : layer.drawing.marks()) {
      CHECK_FALSE(shown_by(mark).empty());
      for (const Subject& subject : shown_by(mark)) {
        const std::string text = to_text(subject);
        if (!known.insert(text).second) continue;
        CAPTURE(text);
        CHECK_FALSE(keys_of(subject, job).empty());
      }
    }
  }
}

void check_sizes_of_marks(const ScreenPicture& picture) {
  for (const screen::Layer& layer : picture.layers)
    for (const draw::Mark& mark : layer.drawing.marks())
      if (const auto* fill = std::get_if<FillMark>(&mark))
        for (const plane::Path& outline : fill->outlines) {
          const plane::Box box = bounds(outline);
          CHECK(std::max(box.width(), box.height()) * 96 / 25.4 >= 0.5 - 1e-9);
        }
}

/// False where the job is refused.
bool check_pictures(const std::filesystem::path& path, const Font& labels, std::size_t most_bytes) {
  CAPTURE(path.filename().string());
  const auto made = test::make_text(test::bytes_of(path), path.filename().string());
  if (!made) return false;
  std::set<std::string> known;
  for (const ScreenOptions& size : kSizes) {
    CAPTURE(size.width_px);
    CAPTURE(size.text_px);
    for (const test::NamedPicture& one : test::screen_pictures(*made, labels, size)) {
      CAPTURE(one.name);
      CHECK_FALSE(one.picture.title.empty());
      CHECK(one.picture.words.ends_with("."));
      check_words(one.picture, labels);
      check_subjects(one.picture, made->job, known);
      check_sizes_of_marks(one.picture);
      CHECK(to_svg(one.picture, labels).size() <= most_bytes);
    }
  }
  return true;
}

TEST_CASE("pictures (1), (2): of every example") {
  const Font labels = test::label_font();
  for (const auto& path : test::example_jobs()) CHECK(check_pictures(path, labels, 60'000));
}

// Frames of many sides with bent corners take more than an example may.
TEST_CASE("pictures (1), (2): of drawn jobs") {
  const Font labels = test::label_font();
  std::vector<std::filesystem::path> jobs;
  for (const auto& entry : std::filesystem::directory_iterator(SWATHE_TEST_DATA "/manifest/jobs"))
    if (entry.path().filename().string().starts_with("drawn-")) jobs.push_back(entry.path());
  std::ranges::sort(jobs);
  int made = 0;
  for (std::size_t k = 0; k < jobs.size(); k += 12) made += check_pictures(jobs[k], labels, 90'000);
  CHECK(made >= 10);
}

TEST_CASE("pictures (1): zoomed in, words keep their size, and more is to be seen") {
  const Font labels = test::label_font();
  const Made made = test::made(test::bytes_of(test::example("tin-heron")));
  const ScreenOptions whole{620, 360, 13, {}};
  ScreenOptions part = whole;
  part.window = plane::Box{{-100, -150}, {500, 200}};
  const auto staples = [](const ScreenPicture& picture) {
    return std::ranges::count(picture.layers, std::string("staple"), &screen::Layer::what);
  };
  const ScreenPicture far = screen_cover(made, 0, labels, whole);
  const ScreenPicture near = screen_cover(made, 0, labels, part);
  CHECK(staples(far) == 0);
  CHECK(staples(near) == 1);
  CHECK(near.text_px == far.text_px);
  std::set<std::string> known;
  for (const test::NamedPicture& one : test::screen_pictures(made, labels, part)) {
    CAPTURE(one.name);
    check_words(one.picture, labels);
    check_subjects(one.picture, made.job, known);
    CHECK(to_svg(one.picture, labels).size() <= 60'000);
    if (!one.picture.map) continue;
    // All of the window is in the picture, and it is as large as it can be.
    const FlatPoint a = one.picture.map->to_px(part.window->lo);
    const FlatPoint b = one.picture.map->to_px(part.window->hi);
    CHECK(std::min(a.x, b.x) >= -1e-6);
    CHECK(std::max(a.x, b.x) <= 620 + 1e-6);
    CHECK(std::min(a.y, b.y) >= -1e-6);
    CHECK(std::max(a.y, b.y) <= 360 + 1e-6);
    CHECK(std::abs(b.x - a.x) == doctest::Approx(360 * 600.0 / 350));
  }
}

TEST_CASE("pictures: sizes past their limits, and windows of no size, are taken to the nearest") {
  const Font labels = test::label_font();
  const Made made = test::made(test::bytes_of(test::example("kinds/opening")));
  const double nan = std::numeric_limits<double>::quiet_NaN(), inf = 1 / 0.0;
  for (const ScreenOptions& odd :
       {ScreenOptions{1, -5, 0, {}}, ScreenOptions{nan, nan, nan, {}},
        ScreenOptions{1e9, inf, 1e9, {}}, ScreenOptions{620, 360, 13, plane::Box{}},
        ScreenOptions{620, 360, 13, plane::Box{{0, 0}, {nan, 10}}},
        ScreenOptions{620, 360, 13, plane::Box{{5, 5}, {5, 10}}},
        ScreenOptions{620, 360, 13, plane::Box{{1e7, 0}, {2e7, 1e7}}}})
    for (const test::NamedPicture& one : test::screen_pictures(made, labels, odd)) {
      CAPTURE(one.name);
      CHECK(one.picture.width_px >= 160);
      CHECK(one.picture.width_px <= 4096);
      CHECK(one.picture.height_px >= 160);
      CHECK(one.picture.height_px <= 4096);
      CHECK(one.picture.text_px >= 8);
      CHECK(one.picture.text_px <= 48);
      check_words(one.picture, labels);
      CHECK(to_svg(one.picture, labels).find("nan") == std::string::npos);
    }
}

TEST_CASE("pictures: a job without a number has all of them") {
  const Font labels = test::label_font();
  std::string text = test::bytes_of(test::example("tin-heron"));
  text = text.substr(0, text.find("[numerals]"));
  text.erase(text.find("number = \"20486\""), 16);
  const Made made = test::made(text);
  REQUIRE_FALSE(made.sight.has_value());
  for (const test::NamedPicture& one : test::screen_pictures(made, labels, {})) {
    CAPTURE(one.name);
    check_words(one.picture, labels);
    CHECK_FALSE(one.picture.layers.empty());
  }
  for (const PlaceVerdict& side : side_verdicts(made))
    CHECK(side.words == "this job has no number");
}

TEST_CASE("pictures: what they say to those who cannot see them") {
  const Font labels = test::label_font();
  const Made made = test::made(test::bytes_of(test::example("tin-heron")));
  CHECK(screen_plan(made, labels).words ==
        "The frame from above with its bumpers on, the machine's front at the top. Side front: 28 "
        "in. Side left: 30 in. Side back: 28 in. Side right: 30 in. Bumper A on front, left and "
        "back. Bumper B on back, right and front. Bracket 1 on left. Bracket 2 on right. Bracket 3 "
        "on left. Bracket 4 on right. Number 20486 on front, left, back and right.");
  CHECK(screen_cover(made, 0, labels).title == "Cover A, seen from outside");
  CHECK(screen_cover(made, 0, labels, {}, CoverShown::AsPrinted).title ==
        "Cover A, as printed: inside up");
}

// A number's name that finds no room at the number goes further off, inside the frame too.
TEST_CASE("pictures: from above, each side is named before a number that has to go inside") {
  const Font labels = test::label_font();
  const Made made = test::made(test::bytes_of(test::example("tin-heron")));
  for (const ScreenOptions& size :
       {ScreenOptions{200, 170, 13, {}}, {232, 170, 13, {}}, {240, 180, 13, {}}}) {
    CAPTURE(size.width_px);
    const Page page = page_of(screen_plan(made, labels, size));
    for (const char* side : {"front 28 in", "left 30 in", "back 28 in", "right 30 in"})
      CHECK_MESSAGE(test::says(page.drawing, side), side);
  }
}

// Below 200 px of height there is no room for lengths round the cover.
TEST_CASE("pictures: a low cover tells its sides' lengths where they fit on the sides") {
  const Font labels = test::label_font();
  const Made made = test::made(test::bytes_of(test::example("tin-heron")));
  const auto says = [&](double width_px, double height_px, const char* words) {
    return test::says(page_of(screen_cover(made, 0, labels, {width_px, height_px, 13, {}})).drawing,
                      words);
  };
  CHECK(says(620, 150, "left 36 9/16 in"));
  CHECK(says(620, 150, "front 17 1/16 in"));
  CHECK(says(500, 180, "left 36 9/16 in"));
  CHECK_FALSE(says(500, 180, "front 17 1/16 in"));  // wider than the side
  CHECK(says(500, 180, "front"));
}

}  // namespace
}  // namespace swathe
