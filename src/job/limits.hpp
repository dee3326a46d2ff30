#pragma once

#include "base/limits.hpp"
#include "swathe/base.hpp"

// What a job may ask for: every bound of the job file in one place. They are wider than anything a
// shop makes, and narrow enough that nothing behind them can run out of memory, time or precision.
namespace swathe {

/// From least to most, both allowed.
struct LengthRange {
  Length least, most;
};
struct AngleRange {
  Angle least, most;
};
struct NumberRange {
  double least = 0, most = 0;
};
struct CountRange {
  int least = 0, most = 0;
};

inline constexpr int kMostTitle = 120;  ///< characters
inline constexpr int kMostNumber = 5;   ///< digits
inline constexpr int kMostName = 24;    ///< characters of a bumper, side or color
inline constexpr int kMostPath = 200;   ///< characters of a season or font, name or path

inline constexpr CountRange kSides{3, 16};
inline constexpr CountRange kOpenings{0, 16};
inline constexpr CountRange kBumpers{1, 32};
inline constexpr CountRange kBrackets{0, 64};
inline constexpr CountRange kHoles{0, 16};  ///< of one bracket
inline constexpr CountRange kNumeralPlaces{0, 32};
inline constexpr CountRange kColors{1, 8};
inline constexpr CountRange kAxes{0, 16};
inline constexpr CountRange kObservers{1, 8};  ///< distances, and eye heights
inline constexpr CountRange kBlinds{0, 32};
inline constexpr CountRange kSpares{0, 20};
inline constexpr CountRange kSplit{1, 4};  ///< digits before the gap, of five
inline constexpr CountRange kNoodleStack{1, 4};
inline constexpr int kMostTiles = 500;  ///< sheets of paper that the covers of a job may take

inline constexpr Length kMostLength = mm(20000);
inline constexpr LengthRange kFrameSide{mm(50), kMostLength};
inline constexpr LengthRange kAnywhere{-kMostLength, kMostLength};  ///< a coordinate
inline constexpr LengthRange kAlong{mm(0), kMostLength};            ///< a way from an edge or end
inline constexpr LengthRange kFit{mm(0), mm(50)};
inline constexpr LengthRange kFloorGap{mm(0), mm(2000)};

inline constexpr LengthRange kBoardThickness{mm(1), mm(100)};
inline constexpr LengthRange kBoardHeight{mm(20), mm(1000)};
inline constexpr LengthRange kStockLength{mm(100), kMostLength};
inline constexpr LengthRange kKerf{mm(0), mm(20)};
inline constexpr LengthRange kHardDepth{mm(0), mm(200)};
inline constexpr NumberRange kDensity{1, 5000};        ///< kg/m3
inline constexpr NumberRange kClothDensity{0.01, 10};  ///< kg/m2
inline constexpr NumberRange kStapleMass{0, 100};      ///< g, of one
inline constexpr NumberRange kBracketMass{0, 20000};   ///< g, of one with its screws
inline constexpr LengthRange kPaddingSize{mm(5), mm(500)};
inline constexpr LengthRange kEdgeRadius{mm(0), mm(250)};

inline constexpr LengthRange kClothThickness{mm(0), mm(10)};
inline constexpr LengthRange kBuyStep{mm(1), mm(5000)};
inline constexpr LengthRange kFlap{mm(5), mm(1000)};
inline constexpr LengthRange kStapleSpacing{mm(5), mm(1000)};
inline constexpr LengthRange kSmallGap{mm(0), mm(200)};  ///< clearances, set-backs, allowances
inline constexpr NumberRange kStretch{0, 0.5};

inline constexpr LengthRange kBracketSize{mm(1), kMostLength};
inline constexpr LengthRange kOpeningWidth{mm(20), kMostLength};
inline constexpr LengthRange kNumeralHeight{mm(10), mm(1000)};
inline constexpr LengthRange kDigitSpacing{mm(-200), mm(200)};
inline constexpr LengthRange kBridge{mm(0.5), mm(50)};
inline constexpr NumberRange kAxis{-32768, 32767};  ///< what a font file can hold

inline constexpr LengthRange kSightDistance{mm(100), mm(100000)};
inline constexpr LengthRange kEyeHeight{mm(0), mm(10000)};
inline constexpr AngleRange kSightStep{Angle::from_degrees(0.1), Angle::from_degrees(30)};
inline constexpr AngleRange kLeastAngle{Angle::from_arcmin(1), Angle::from_degrees(10)};

/// PDF viewers need take no page larger: ISO 32000-1, annex C.2 (14 400 units of 1/72 in).
inline constexpr LengthRange kPaperSize{mm(100), mm(5080)};
inline constexpr Length kLeastPrinted =
    mm(50);  ///< of a sheet inside its margins, less the overlap
/// What a 100 mm scale may have come out as: further off, the page was fitted, not printed at 100
/// %.
inline constexpr LengthRange kScaleMeasured{mm(90), mm(110)};

}  // namespace swathe
