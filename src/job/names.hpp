#pragma once

#include <array>
#include <cassert>
#include <string_view>

#include "swathe/base.hpp"
#include "swathe/job.hpp"

// The words of the job file for what can be one of a few; read and written from the same lists.
namespace swathe {

template <class T>
struct Word {
  std::string_view text;
  T value;
};

/// The words of an enumeration, one for each of its values.
template <class T>
inline constexpr std::array<Word<T>, 0> kWords{};

template <>
inline constexpr Word<Units> kWords<Units>[] = {{"in", Units::Inches}, {"mm", Units::Millimeters}};
template <>
inline constexpr Word<Joint> kWords<Joint>[] = {{"lapped", Joint::Lapped},
                                                {"mitred", Joint::Mitred}};
template <>
inline constexpr Word<PaddingForm> kWords<PaddingForm>[] = {{"noodles", PaddingForm::Noodles},
                                                            {"block", PaddingForm::Block}};
template <>
inline constexpr Word<PaddingCorner> kWords<PaddingCorner>[] = {{"butted", PaddingCorner::Butted},
                                                                {"mitred", PaddingCorner::Mitred},
                                                                {"bent", PaddingCorner::Bent}};
template <>
inline constexpr Word<Core> kWords<Core>[] = {
    {"unstated", Core::Unstated}, {"solid", Core::Solid}, {"hollow", Core::Hollow}};
template <>
inline constexpr Word<Relief> kWords<Relief>[] = {{"fold", Relief::Fold}, {"sewn", Relief::Sewn}};
template <>
inline constexpr Word<Fixing> kWords<Fixing>[] = {{"staples", Fixing::Staples},
                                                  {"hook-and-loop", Fixing::HookAndLoop}};
template <>
inline constexpr Word<BracketCloth> kWords<BracketCloth>[] = {{"under", BracketCloth::Under},
                                                              {"window", BracketCloth::Window}};
template <>
inline constexpr Word<NumeralMethod> kWords<NumeralMethod>[] = {
    {"stencil", NumeralMethod::Stencil},
    {"iron-on", NumeralMethod::IronOn},
    {"sew-on", NumeralMethod::SewOn},
    {"paint-mask", NumeralMethod::PaintMask}};
template <>
inline constexpr Word<StencilFor> kWords<StencilFor>[] = {{"digit", StencilFor::Digit},
                                                          {"number", StencilFor::Number}};
template <>
inline constexpr Word<PaperFace> kWords<PaperFace>[] = {{"inside", PaperFace::Inside},
                                                        {"outside", PaperFace::Outside}};

/// PaperKeys::sheet where the paper has no name.
inline constexpr std::string_view kOwnSize = "own size";

/// The word for a value; every value has one.
template <class T>
constexpr std::string_view word_for(T value) {
  for (const Word<T>& word : kWords<T>)
    if (word.value == value) return word.text;
  return {};
}

/// The value of a word, which is one of kWords<T>.
template <class T>
constexpr T value_of(std::string_view text) {
  for (const Word<T>& word : kWords<T>)
    if (word.text == text) return word.value;
  assert(false && "the description of a key has the words of its member");
  return {};
}

}  // namespace swathe
