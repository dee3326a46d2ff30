#include "base/print.hpp"

#include <doctest/doctest.h>
#include <hb.h>

#include <string>

using namespace swathe;

namespace {

bool is_noncharacter(char32_t code) {  // The Unicode Standard, chapter 23.7
  return (code >= 0xfdd0 && code <= 0xfdef) || (code & 0xfffe) == 0xfffe;
}

/// Drawn as nothing though no format character: what DerivedCoreProperties.txt of Unicode 15 has as
/// Default_Ignorable_Code_Point besides Cf, but for what no version has assigned yet.
bool is_mark_without_shape(char32_t code) {
  return code == 0x34f || code == 0x115f || code == 0x1160 || code == 0x17b4 || code == 0x17b5 ||
         (code >= 0x180b && code <= 0x180f) || code == 0x3164 ||
         (code >= 0xfe00 && code <= 0xfe0f) || code == 0xffa0 ||
         (code >= 0xe0100 && code <= 0xe01ef);
}

}  // namespace

TEST_CASE("print: controls, format characters and noncharacters, by HarfBuzz's tables") {
  int refused = 0;
  for (char32_t code = 0; code <= 0x10ffff; ++code) {
    const auto category = hb_unicode_general_category(hb_unicode_funcs_get_default(), code);
    const bool unassigned = category == HB_UNICODE_GENERAL_CATEGORY_UNASSIGNED;
    const bool expected = category == HB_UNICODE_GENERAL_CATEGORY_CONTROL ||
                          category == HB_UNICODE_GENERAL_CATEGORY_FORMAT ||
                          category == HB_UNICODE_GENERAL_CATEGORY_SURROGATE ||
                          category == HB_UNICODE_GENERAL_CATEGORY_LINE_SEPARATOR ||
                          category == HB_UNICODE_GENERAL_CATEGORY_PARAGRAPH_SEPARATOR ||
                          is_noncharacter(code) || is_mark_without_shape(code);
    CAPTURE(static_cast<unsigned>(code));
    if (expected)
      REQUIRE(!is_printable(code));
    else if (!unassigned)
      REQUIRE(is_printable(code));
    refused += expected;
  }
  CHECK(refused > 2300);
  CHECK(!is_printable(0x110000));
}

TEST_CASE("print: a text's first character that cannot be printed") {
  CHECK(!first_unprintable(""));
  CHECK(!first_unprintable("Stoßstange, Größe 4 × 5 €, 保险杠, 🤖"));
  CHECK(first_unprintable("a\u200b\u202e") == U'\u200b');
  CHECK(first_unprintable("\uffff") == U'\uffff');
  CHECK(code_words(0x7) == "U+0007");
  CHECK(code_words(0x200b) == "U+200B");
  CHECK(code_words(0x1ffff) == "U+1FFFF");
}

TEST_CASE("print: bytes of any kind on one line") {
  CHECK(escaped("Größe 保险杠.toml") == "Größe 保险杠.toml");
  CHECK(escaped("a\nb\x1b[2J\x7f") == "a\\x0ab\\x1b[2J\\x7f");
  CHECK(escaped("\xe9t\xe9.toml") == "\\xe9t\\xe9.toml");
  CHECK(escaped("\u200b\u0085") == "\\xe2\\x80\\x8b\\xc2\\x85");
  // RFC 3629: no overlong form, no surrogate, nothing past U+10FFFF, nothing cut short.
  CHECK(escaped("\xc0\xaf") == "\\xc0\\xaf");
  CHECK(escaped("\xe0\x80\xaf") == "\\xe0\\x80\\xaf");
  CHECK(escaped("\xed\xa0\x80") == "\\xed\\xa0\\x80");
  CHECK(escaped("\xf4\x90\x80\x80") == "\\xf4\\x90\\x80\\x80");
  CHECK(escaped("\xf8\x88\x80\x80\x80") == "\\xf8\\x88\\x80\\x80\\x80");
  CHECK(escaped("\xe2\x82") == "\\xe2\\x82");
}

TEST_CASE("print: what is long is told short") {
  CHECK(clip("abc", 3) == "abc");
  CHECK(clip("abcd", 3) == "abc…");
  CHECK(clip("ÄÖÜß", 3) == "ÄÖÜ…");
  CHECK(clip("a\nb", 3) == "a?b");
  CHECK(quoted_name("short.toml") == "short.toml");
  CHECK(quoted_name("abcdefghij", 4) == "ab…ij");
  CHECK(quoted_name("äbcdefghïj", 5) == "äb…hïj");
  CHECK(characters_in(quoted_name(std::string(5000, 'x'))) == kMostQuoted + 1);
  CHECK(quoted_name(std::string(kMostQuoted, 'x')) == std::string(kMostQuoted, 'x'));
}
