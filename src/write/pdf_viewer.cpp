#include "write/pdf_viewer.hpp"

#include <fmt/format.h>

#include <stdexcept>
#include <string_view>

namespace swathe {
namespace {

/// Cairo's file is not as it is known: its library is at fault, not the job.
[[noreturn]] void unknown_form() {
  throw std::runtime_error("the drawing library wrote a PDF of a form that is not known");
}

std::size_t found(std::size_t at) {
  if (at == std::string_view::npos) unknown_form();
  return at;
}

/// The whole number from there on, blanks before it skipped.
std::size_t number_at(std::string_view text, std::size_t at) {
  at = found(text.find_first_not_of(" \r\n", at));
  constexpr std::size_t kMostDigits = 12;  // of a file's places: 10
  std::size_t number = 0, digits = 0;
  for (; at + digits < text.size() && text[at + digits] >= '0' && text[at + digits] <= '9' &&
         digits < kMostDigits;
       ++digits)
    number = 10 * number + static_cast<std::size_t>(text[at + digits] - '0');
  if (digits == 0) unknown_form();
  return number;
}

/// Of a dictionary's text, the number behind a key.
std::size_t number_of(std::string_view dictionary, std::string_view key) {
  return number_at(dictionary, found(dictionary.find(key)) + key.size());
}

}  // namespace

std::string with_true_size(std::string pdf) {
  const std::string_view all = pdf;
  constexpr std::string_view kTable = "startxref", kTrailer = "trailer";
  const std::size_t table = number_at(all, found(all.rfind(kTable)) + kTable.size());
  const std::string_view trailer = all.substr(found(all.rfind(kTrailer)));
  const std::size_t size = number_of(trailer, "/Size"), root = number_of(trailer, "/Root"),
                    info = number_of(trailer, "/Info");

  const std::size_t object = found(all.rfind(fmt::format("\n{} 0 obj\n", root)));
  const std::size_t from = found(all.find("<<", object));
  const std::size_t to = found(all.find(">>\nendobj", from));
  const std::string catalog(all.substr(from + 2, to - from - 2));

  const std::size_t at = pdf.size();
  pdf += fmt::format(
      "{} 0 obj\n<< /Version /1.7{}"
      "   /ViewerPreferences << /PrintScaling /None /Duplex /Simplex >>\n>>\nendobj\n",
      root, catalog);
  const std::size_t table_at = pdf.size();
  // A line of the table has 20 bytes, its end two of them.
  pdf += fmt::format("xref\n{} 1\n{:010} 00000 n \n", root, at);
  pdf += fmt::format("trailer\n<< /Size {}\n   /Root {} 0 R\n   /Info {} 0 R\n   /Prev {}\n>>\n",
                     size, root, info, table);
  pdf += fmt::format("startxref\n{}\n%%EOF\n", table_at);
  return pdf;
}

}  // namespace swathe
