#include "folder_name.hpp"

#include <fmt/format.h>
#include <hb.h>
#include <locale.h>
#include <wctype.h>

#include <algorithm>
#include <array>

#include "base/print.hpp"

namespace swathe::app {
namespace {

constexpr char32_t kNoCharacter =
    0x110000;  ///< past Unicode: from here on, bytes that are not UTF-8

std::u32string characters_of(std::string_view text) {
  std::u32string all;
  while (!text.empty()) {
    const Character one = take_character(text);
    all += one.code.value_or(kNoCharacter + static_cast<unsigned char>(one.bytes.front()));
  }
  return all;
}

void add_decomposed(char32_t code, std::u32string& out) {
  hb_codepoint_t first = 0, second = 0;
  if (code >= kNoCharacter ||
      !hb_unicode_decompose(hb_unicode_funcs_get_default(), code, &first, &second)) {
    out += code;
    return;
  }
  add_decomposed(first, out);
  if (second != 0) add_decomposed(second, out);
}

/// Normalization form D: taken apart, and the marks on a letter in the one order.
std::u32string decomposed(const std::u32string& text) {
  std::u32string out;
  for (const char32_t code : text) add_decomposed(code, out);
  const auto rank = [](char32_t code) {
    return code >= kNoCharacter
               ? 0
               : static_cast<int>(hb_unicode_combining_class(hb_unicode_funcs_get_default(), code));
  };
  for (auto at = out.begin(); at != out.end();) {
    const auto marks = std::find_if(at, out.end(), [&](char32_t c) { return rank(c) != 0; });
    at = std::find_if(marks, out.end(), [&](char32_t c) { return rank(c) == 0; });
    std::stable_sort(marks, at, [&](char32_t a, char32_t b) { return rank(a) < rank(b); });
  }
  return out;
}

/// Letters of all scripts, whatever the locale of the program.
class Letters {
 public:
  Letters() : all_(::newlocale(LC_CTYPE_MASK, "C.UTF-8", locale_t{})) {}
  Letters(const Letters&) = delete;
  Letters& operator=(const Letters&) = delete;
  ~Letters() {
    if (all_ != locale_t{}) ::freelocale(all_);
  }
  /// Through the capital letter, because two small sigmas share one capital.
  char32_t small(char32_t code) const {
    if (code >= kNoCharacter) return code;
    if (all_ == locale_t{}) return code >= 'A' && code <= 'Z' ? code - 'A' + 'a' : code;
    return static_cast<char32_t>(::towlower_l(::towupper_l(static_cast<wint_t>(code), all_), all_));
  }

 private:
  locale_t all_;
};

/// Whether Windows takes the name for a device, with any ending.
bool is_device(std::string_view name) {
  name = name.substr(0, name.find('.'));
  while (name.ends_with(' ')) name.remove_suffix(1);
  std::string small(name);
  for (char& c : small)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  for (const std::string_view device : {"con", "prn", "aux", "nul", "conin$", "conout$"})
    if (small == device) return true;
  if (!small.starts_with("com") && !small.starts_with("lpt")) return false;
  const std::string_view number = std::string_view(small).substr(3);
  if (number.size() == 1) return number[0] >= '0' && number[0] <= '9';
  return number == "¹" || number == "²" || number == "³";
}

}  // namespace

std::optional<std::string> folder_name_fault(std::string_view name) {
  constexpr std::string_view kForbidden = "<>:\"/\\|?*";
  if (name.empty()) return "is empty";
  if (name.starts_with('.')) return "begins with a dot";
  if (name.ends_with('.')) return "ends with a dot";
  if (name.ends_with(' ')) return "ends with a space";
  if (const auto at = name.find_first_of(kForbidden); at != std::string_view::npos)
    return fmt::format("has a {} in it", name[at]);
  if (const auto code = first_unprintable(name))
    return fmt::format("has the character {} in it", code_words(*code));
  if (is_device(name)) return "is a device on Windows";
  return std::nullopt;
}

std::u32string folder_name_key(std::string_view name) {
  const Letters letters;
  std::u32string text = decomposed(characters_of(name));
  for (char32_t& code : text) code = letters.small(code);
  return decomposed(text);
}

}  // namespace swathe::app
