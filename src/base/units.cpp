#include <fast_float/fast_float.h>
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <numeric>

#include "swathe/base.hpp"

namespace swathe {
namespace {

constexpr double kInch = 25.4;  // mm, exact by definition of the inch

/// A unit of length by one of its names. Compound lengths ("2 ft 8 in") stay in one system.
struct LengthUnit {
  std::string_view name;
  double mm;
  bool metric;
};

constexpr std::array kLengthUnits = {
    LengthUnit{"in", kInch, false},
    LengthUnit{"inch", kInch, false},
    LengthUnit{"inches", kInch, false},
    LengthUnit{"\"", kInch, false},
    LengthUnit{"''", kInch, false},
    LengthUnit{"″", kInch, false},
    LengthUnit{"”", kInch, false},  // as keyboards of telephones have it
    LengthUnit{"“", kInch, false},
    LengthUnit{"’’", kInch, false},
    LengthUnit{"ft", 12 * kInch, false},
    LengthUnit{"foot", 12 * kInch, false},
    LengthUnit{"feet", 12 * kInch, false},
    LengthUnit{"'", 12 * kInch, false},
    LengthUnit{"′", 12 * kInch, false},
    LengthUnit{"’", 12 * kInch, false},
    LengthUnit{"‘", 12 * kInch, false},
    LengthUnit{"yd", 36 * kInch, false},
    LengthUnit{"yard", 36 * kInch, false},
    LengthUnit{"yards", 36 * kInch, false},
    LengthUnit{"mm", 1, true},
    LengthUnit{"cm", 10, true},
    LengthUnit{"m", 1000, true},
};

struct Share {
  std::string_view sign;
  double value;
};

constexpr std::array kShares = {Share{"½", 1.0 / 2}, Share{"¼", 1.0 / 4}, Share{"¾", 3.0 / 4},
                                Share{"⅛", 1.0 / 8}, Share{"⅜", 3.0 / 8}, Share{"⅝", 5.0 / 8},
                                Share{"⅞", 7.0 / 8}, Share{"⅓", 1.0 / 3}, Share{"⅔", 2.0 / 3}};

constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }
constexpr bool is_blank(char c) { return c == ' ' || c == '\t'; }

/// A number as a person writes it: "32.25", "1/4", "32 1/4", "8-1/4", "32 ¼".
struct Quantity {
  double value = 0;
  bool whole = false;  ///< digits only
};

/// Reads from the front of a text; each function leaves it alone where it finds nothing.
class Scanner {
 public:
  explicit Scanner(std::string_view text) : rest_(text) {}

  bool done() const { return rest_.empty(); }

  void skip_blanks() {
    while (!rest_.empty() && is_blank(rest_.front())) rest_.remove_prefix(1);
  }

  bool take(char c) {
    if (!rest_.starts_with(c)) return false;
    rest_.remove_prefix(1);
    return true;
  }

  std::optional<Quantity> quantity() {
    if (const auto share = sign_of_share()) return Quantity{*share, false};
    const std::string_view first = take_while([](char c) { return is_digit(c) || c == '.'; });
    const auto number = parse_number(first);
    if (!number) return std::nullopt;
    const bool whole = first.find('.') == std::string_view::npos;
    if (!whole) return Quantity{*number, false};
    if (take('/')) {
      const auto share = over(*number);
      if (!share) return std::nullopt;
      return Quantity{*share, false};
    }
    const Scanner before = *this;
    if (take('-')) {
      const auto share = fraction();
      if (!share) return std::nullopt;
      return Quantity{*number + *share, false};
    }
    skip_blanks();
    if (const auto share = fraction()) return Quantity{*number + *share, false};
    *this = before;
    return Quantity{*number, true};
  }

  /// A unit's name: letters, or one mark.
  std::string_view word() {
    const std::string_view letters = take_while([](char c) { return c >= 'a' && c <= 'z'; });
    if (!letters.empty()) {
      const bool shortened = letters == "in" || letters == "ft" || letters == "yd";
      if (shortened && rest_.starts_with('.') && !(rest_.size() > 1 && is_digit(rest_[1])))
        rest_.remove_prefix(1);  // "26 in."
      return letters;
    }
    const std::string_view mark = rest_.substr(0, size_of_character());
    const bool twice = (mark == "'" || mark == "’") && rest_.substr(mark.size()).starts_with(mark);
    const std::string_view taken = rest_.substr(0, (twice ? 2 : 1) * mark.size());
    rest_.remove_prefix(taken.size());
    return taken;
  }

 private:
  template <class Test>
  std::string_view take_while(Test test) {
    std::size_t n = 0;
    while (n < rest_.size() && test(rest_[n])) ++n;
    const std::string_view taken = rest_.substr(0, n);
    rest_.remove_prefix(n);
    return taken;
  }

  std::size_t size_of_character() const {
    std::size_t n = std::min<std::size_t>(rest_.size(), 1);
    while (n < rest_.size() && (static_cast<unsigned char>(rest_[n]) & 0xc0) == 0x80) ++n;
    return n;
  }

  std::optional<double> sign_of_share() {
    for (const Share& share : kShares)
      if (rest_.starts_with(share.sign)) {
        rest_.remove_prefix(share.sign.size());
        return share.value;
      }
    return std::nullopt;
  }

  std::optional<double> fraction() {
    if (const auto share = sign_of_share()) return share;
    const auto above = parse_number(take_while(is_digit));
    if (!above || !take('/')) return std::nullopt;
    return over(*above);
  }

  std::optional<double> over(double above) {
    const auto below = parse_number(take_while(is_digit));
    if (!below || *below == 0.0) return std::nullopt;
    return above / *below;
  }

  std::string_view rest_;
};

const LengthUnit* length_unit(std::string_view name) {
  for (const LengthUnit& unit : kLengthUnits)
    if (unit.name == name) return &unit;
  return nullptr;
}

/// |value| in whole parts of an inch, half upwards. The nudge makes a half that a multiplication
/// has missed by a last digit go the same way on every machine.
double inch_parts(Length length, int parts) {
  return std::floor(std::abs(length.inches()) * parts + 0.5 + 1e-9);
}

/// "32 1/4" for 129 quarters.
std::string mixed_number(bool negative, double count, int parts) {
  constexpr double kMostExact = 1e15;  // where a double still counts in ones
  if (!(count < kMostExact)) return plain_number(negative ? -count / parts : count / parts, 0);
  const auto all = static_cast<long long>(count);
  const long long whole = all / parts, above = all % parts;
  const std::string sign = negative && all != 0 ? "-" : "";
  if (above == 0) return fmt::format("{}{}", sign, whole);
  const long long shared = std::gcd(above, static_cast<long long>(parts));
  const std::string share = fmt::format("{}/{}", above / shared, parts / shared);
  return whole == 0 ? sign + share : fmt::format("{}{} {}", sign, whole, share);
}

/// A count of last places in figures, its trailing zeros left out: "12.5" for 12500 thousandths.
std::string in_figures(bool negative, std::int64_t count, int decimals) {
  std::array<char, 24> text;
  char* const end = text.data() + text.size();
  char* at = end;
  const bool zero = count == 0;
  const auto next_figure = [&] {
    const char figure = static_cast<char>('0' + count % 10);
    count /= 10;
    return figure;
  };
  for (int place = 0; place < decimals; ++place)
    if (const char figure = next_figure(); figure != '0' || at != end) *--at = figure;
  if (at != end) *--at = '.';
  do *--at = next_figure();
  while (count > 0);
  if (negative && !zero) *--at = '-';
  return {at, end};
}

std::string_view unit_name(Units units) { return units == Units::Inches ? " in" : " mm"; }

}  // namespace

std::optional<Length> parse_length(std::string_view text, Units bare) {
  Scanner in(text);
  in.skip_blanks();
  const bool negative = in.take('-');
  double total = 0;
  const LengthUnit* last = nullptr;
  bool last_whole = true;
  while (true) {
    const auto number = in.quantity();
    if (!number) return std::nullopt;
    in.skip_blanks();
    if (in.done()) {  // no unit: only a number that stands alone may do without
      if (last) return std::nullopt;
      total = number->value * (bare == Units::Inches ? kInch : 1.0);
      break;
    }
    const LengthUnit* unit = length_unit(in.word());
    if (!unit) return std::nullopt;
    if (last && (!last_whole || unit->metric != last->metric || unit->mm >= last->mm))
      return std::nullopt;
    total += number->value * unit->mm;
    last = unit;
    last_whole = number->whole;
    in.skip_blanks();
    if (in.done()) break;
  }
  if (!std::isfinite(total)) return std::nullopt;
  return Length::from_mm(negative ? 0.0 - total : total);
}

std::optional<Angle> parse_angle(std::string_view text) {
  Scanner in(text);
  in.skip_blanks();
  const bool negative = in.take('-');
  const auto number = in.quantity();
  if (!number) return std::nullopt;
  const double value = negative ? 0.0 - number->value : number->value;
  in.skip_blanks();
  const std::string_view unit = in.done() ? "deg" : in.word();
  in.skip_blanks();
  if (!in.done()) return std::nullopt;
  if (unit == "deg" || unit == "\xc2\xb0") return Angle::from_degrees(value);
  if (unit == "arcmin") return Angle::from_arcmin(value);
  if (unit == "rad") return Angle::from_radians(value);
  return std::nullopt;
}

std::string dimension(Length length, Units units) {
  if (units == Units::Millimeters) return plain_number(length.mm(), 0);
  return mixed_number(length < Length(), inch_parts(length, 16), 16);
}

std::string walked(Length length, Units units) {
  return units == Units::Inches ? plain_number(length.inches() / 12.0, 1) + " ft"
                                : plain_number(length.mm() / 1000.0, 1) + " m";
}

std::string yards(Length length) {
  return dimension(length / 36.0, Units::Inches) + " yd";  // a yard is 36 in
}

std::string dimension_with_unit(Length length, Units units) {
  return dimension(length, units).append(unit_name(units));
}

std::string measured(Length length, Units units) {
  return (units == Units::Inches ? plain_number(length.inches(), 3) : plain_number(length.mm(), 1))
      .append(unit_name(units));
}

std::string exact(Length length, Units units) {
  if (units == Units::Millimeters) return plain_number(length.mm(), 2) + " mm";
  constexpr int kParts = 64;
  constexpr double kNear = 1e-6;  // of a part: what arithmetic may have lost
  const double parts = inch_parts(length, kParts);
  if (std::abs(std::abs(length.inches()) * kParts - parts) > kNear) return measured(length, units);
  return mixed_number(length < Length(), parts, kParts) + " in";
}

std::string plain_number(double value, int decimals) {
  // Nearly every number is told by its count of last places. Only next to a half could the product
  // round another way than the number; those, and very large ones, fmt works out.
  constexpr std::array kParts = {1.0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8};
  constexpr double kMostCounted = 1e12, kNearHalf = 1e-3;  // the product errs by 2e-4 at most
  if (decimals >= 0 && static_cast<std::size_t>(decimals) < kParts.size()) {
    const double parts = std::abs(value) * kParts[static_cast<std::size_t>(decimals)];
    if (parts < kMostCounted) {
      const auto whole = static_cast<std::int64_t>(parts);
      const double over = parts - static_cast<double>(whole);
      if (std::abs(over - 0.5) > kNearHalf)
        return in_figures(value < 0, whole + (over > 0.5 ? 1 : 0), decimals);
    }
  }
  std::string text = fmt::format("{:.{}f}", value, decimals);
  if (text.find('.') != std::string::npos) {
    text.erase(text.find_last_not_of('0') + 1);
    if (text.ends_with('.')) text.pop_back();
  }
  return text == "-0" ? "0" : text;
}

std::optional<double> parse_number(std::string_view text) {
  double value = 0;
  const char* const end = text.data() + text.size();
  const auto [stop, error] = fast_float::from_chars(text.data(), end, value);
  if (error != std::errc() || stop != end || !std::isfinite(value)) return std::nullopt;
  return value;
}

}  // namespace swathe
