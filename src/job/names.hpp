#pragma once

#include <string_view>

#include "swathe/base/units.hpp"
#include "swathe/job/job.hpp"

// The words of the job file for what can be one of a few; read and written from the same lists.
namespace swathe {

template <class T>
struct Word {
  std::string_view text;
  T value;
};

inline constexpr Word<Units> kUnitWords[] = {{"in", Units::Inches}, {"mm", Units::Millimeters}};
inline constexpr Word<Joint> kJointWords[] = {{"lapped", Joint::Lapped}, {"mitred", Joint::Mitred}};
inline constexpr Word<PaddingForm> kPaddingFormWords[] = {{"noodles", PaddingForm::Noodles},
                                                          {"block", PaddingForm::Block}};
inline constexpr Word<PaddingCorner> kPaddingCornerWords[] = {{"butted", PaddingCorner::Butted},
                                                              {"mitred", PaddingCorner::Mitred},
                                                              {"bent", PaddingCorner::Bent}};
inline constexpr Word<Core> kCoreWords[] = {
    {"unstated", Core::Unstated}, {"solid", Core::Solid}, {"hollow", Core::Hollow}};
inline constexpr Word<Relief> kReliefWords[] = {{"fold", Relief::Fold}, {"sewn", Relief::Sewn}};
inline constexpr Word<Fixing> kFixingWords[] = {{"staples", Fixing::Staples},
                                                {"hook-and-loop", Fixing::HookAndLoop}};
inline constexpr Word<FromEnd> kFromEndWords[] = {{"left", FromEnd::Left},
                                                  {"right", FromEnd::Right}};
inline constexpr Word<BracketCloth> kBracketClothWords[] = {{"under", BracketCloth::Under},
                                                            {"window", BracketCloth::Window}};
inline constexpr Word<NumeralMethod> kMethodWords[] = {{"stencil", NumeralMethod::Stencil},
                                                       {"iron-on", NumeralMethod::IronOn},
                                                       {"sew-on", NumeralMethod::SewOn},
                                                       {"paint-mask", NumeralMethod::PaintMask}};
inline constexpr Word<PaperFace> kPaperFaceWords[] = {{"inside", PaperFace::Inside},
                                                      {"outside", PaperFace::Outside}};

/// PaperKeys::sheet where the paper has no name.
inline constexpr std::string_view kOwnSize = "own size";

/// The word for a value; every value of a list has one.
template <class T, std::size_t N>
constexpr std::string_view word_for(const Word<T> (&words)[N], T value) {
  for (const Word<T>& word : words)
    if (word.value == value) return word.text;
  return {};
}

}  // namespace swathe
