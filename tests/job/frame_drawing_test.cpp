#include "job/frame_drawing.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "support/examples.hpp"

namespace swathe {
namespace {

FrameKeys rectangle(Length width, Length depth) {
  FrameKeys frame;  // from above, counter-clockwise; the front side first
  frame.corners = {{width.mm(), depth.mm()}, {0, depth.mm()}, {0, 0}, {width.mm(), 0}};
  frame.sides = {"front", "left", "back", "right"};
  return frame;
}

std::string text_of(const std::vector<std::string>& lines) {
  std::string text;
  for (const std::string& line : lines) text += line + '\n';
  return text;
}

std::size_t count(const std::string& text, const std::string& what) {
  std::size_t times = 0;
  for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++times;
  return times;
}

}  // namespace

TEST_CASE("frame drawing: a rectangle, letter by letter") {
  // 30 in are 13 rows, so 28 in are 2 x 13 x 28 / 30 = 24.3 columns, 23 of them between corners;
  // "left 30 in" has 10 letters and stands a blank away from the side.
  const std::string open = "            |" + std::string(23, ' ') + "|\n";
  const std::string edge = "            +" + std::string(23, '-') + "+\n";
  std::string expected = "                   front 28 in\n" + edge;
  for (int row = 0; row < 5; ++row) expected += open;
  expected += " left 30 in |" + std::string(23, ' ') + "| right 30 in\n";
  for (int row = 0; row < 6; ++row) expected += open;
  expected += edge + "                   back 28 in\n";
  CHECK(text_of(frame_drawing(rectangle(inches(28), inches(30)), Units::Inches)) == expected);
}

TEST_CASE("frame drawing (1) (2) (3): each corner, each side's words once, within the columns") {
  std::vector<std::pair<FrameKeys, Units>> frames;
  for (const auto& path : test::example_jobs()) {
    const JobReading reading = read_job(test::bytes_of(path), "job");
    frames.emplace_back(reading.job.frame, reading.job.units);
  }
  for (const double width : {12.0, 20.0, 28.0, 47.5})
    for (const double depth : {12.0, 24.0, 33.25, 60.0})
      for (const Units units : {Units::Inches, Units::Millimeters})
        frames.emplace_back(rectangle(inches(width), inches(depth)), units);
  for (const auto& [frame, units] : frames) {
    const auto lines = frame_drawing(frame, units);
    const std::string text = text_of(lines);
    CAPTURE(text);
    CHECK(count(text, "+") == frame.corners.size());
    for (std::size_t k = 0; k < frame.sides.size(); ++k) {
      const FlatPoint along = frame.corners[(k + 1) % frame.corners.size()] - frame.corners[k];
      const std::string words =
          frame.sides[k] + " " + dimension_with_unit(mm(std::hypot(along.x, along.y)), units);
      // "left 30 in" also stands in "front left 30 in".
      std::size_t also = 0;
      for (std::size_t other = 0; other < frame.sides.size(); ++other)
        also += other != k && frame.sides[other].ends_with(" " + frame.sides[k]) ? 1 : 0;
      CHECK(count(text, words) >= 1);
      CHECK(count(text, words) <= 1 + also);
    }
    for (const std::string& line : lines) {
      CHECK(line.size() <= kDrawingColumns);
      CHECK_FALSE(line.ends_with(' '));
    }
  }
}

}  // namespace swathe
