#pragma once

#include <cstddef>

// How large files may be, and how deep a text may nest. Limits of a job's keys are in
// job/limits.hpp, which includes these.
namespace swathe {

inline constexpr std::size_t kMostJobBytes = std::size_t{1} << 20;
inline constexpr std::size_t kMostRuleBytes = std::size_t{1} << 18;
inline constexpr std::size_t kMostFontBytes = std::size_t{16} << 20;
/// A packed font may claim any size when it is unpacked, and glyphs made of glyphs can grow for
/// ever. So the font reader's memory is limited by the size of the file, and by this.
inline constexpr std::size_t kMostFontMemory = std::size_t{128} << 20;
inline constexpr std::size_t kLeastFontMemory = std::size_t{8} << 20, kFontMemoryPerByte = 64;
inline constexpr int kMostIslands = 4;  ///< of a digit in a stencil

// Limits of one digit's outline. For comparison, the most that the fonts of the tests need with an
// em 10 m high: 82 curves, 4,600 edges, 53 crossings, 7 contours, 11 times their size; at 1 m, 5
// turns.
inline constexpr std::size_t kMostDigitCurves = 5000;
inline constexpr std::size_t kMostDigitEdges = 6000;  ///< once curves are broken into chords
inline constexpr std::size_t kMostDigitCrossings = 500;
inline constexpr std::size_t kMostDigitContours = 64;  ///< once overlaps are united
inline constexpr double kMostDigitLength = 60;         ///< of all contours, over the greater side
inline constexpr double kMostDigitTurns = 60;          ///< full ones, of all corners added up

inline constexpr int kMostDotsInLine = 200;  ///< of a job or rule file: a.b.c is a table in a table

// Of a rule file: what stands on sheets and in findings, in characters.
inline constexpr int kMostSeasonName = 24;
inline constexpr int kMostRuleName = 24;  ///< "R408-B"; the section of the manual too
inline constexpr int kMostSets = 8;       ///< colors of cloth sets

}  // namespace swathe
