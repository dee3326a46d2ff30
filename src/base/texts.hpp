#pragma once

#include <initializer_list>
#include <map>
#include <string>
#include <string_view>

namespace swathe {

/// The language of the texts. English is the one there is so far: another is a folder beside it.
inline constexpr std::string_view kLanguage = "en";

/// What is set into a text where it says {name}.
struct TextValue {
  std::string_view name;
  std::string value;
};

/// The texts that a room prints, in one language: src/ROOM/data/LANGUAGE/texts.toml.
///
/// Each is `id = "words"`, or, with values to set in, `id = { text = "words {width}", width =
/// "longest value" }`: every value is declared, with the longest it comes to, which tests try.
class Texts {
 public:
  struct Text {
    std::string words;
    std::map<std::string, std::string, std::less<>> longest;  ///< of each value, by name
  };

  /// Those of a room: "book".
  static Texts of_room(std::string_view room);

  /// The words of a text with its values set in. Requires: a text of that id, and exactly the
  /// values that it declares; anything else is an assert.
  std::string operator()(std::string_view id, std::initializer_list<TextValue> values = {}) const;

  const std::map<std::string, Text, std::less<>>& all() const { return texts_; }

 private:
  std::map<std::string, Text, std::less<>> texts_;
};

}  // namespace swathe
