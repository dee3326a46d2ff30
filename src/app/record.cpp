#include "record.hpp"

#include <algorithm>

namespace swathe::app {
namespace {

constexpr std::string_view kHead =
    "# Files that swathe wrote here, with their SHA-256. When it writes here again, it deletes "
    "those\n"
    "# that it no longer makes, if nobody has changed them.\n";
constexpr std::string_view kKind = "# kind: ";
constexpr std::size_t kDigits = 64;  ///< of a hash

bool is_hash(std::string_view text) {
  return text.size() == kDigits && std::ranges::all_of(text, [](char c) {
           return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f');
         });
}

bool is_name_of_ours(std::string_view name) {
  return !name.empty() && name.front() != '.' && std::ranges::all_of(name, [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' ||
           c == '-' || c == '.';
  });
}

}  // namespace

std::string record_text(const Record& record) {
  std::string text(kHead), kind;
  for (const RecordedFile& file : record) {
    if (file.kind != kind) text += std::string(kKind) + file.kind + '\n';
    kind = file.kind;
    text += file.sha256 + "  " + file.name + '\n';
  }
  return text;
}

std::optional<Record> read_record(std::string_view text) {
  if (!text.starts_with(kHead)) return {};
  text.remove_prefix(kHead.size());
  Record record;
  std::string kind;
  while (!text.empty()) {
    const std::size_t end = text.find('\n');
    if (end == std::string_view::npos) return {};  // broken off
    const std::string_view line = text.substr(0, end);
    text.remove_prefix(end + 1);
    if (line.starts_with(kKind)) {
      kind = line.substr(kKind.size());
      continue;
    }
    if (line.size() <= kDigits + 2 || line.substr(kDigits, 2) != "  ") return {};
    const std::string_view hash = line.substr(0, kDigits), name = line.substr(kDigits + 2);
    if (!is_hash(hash) || !is_name_of_ours(name)) return {};
    record.push_back({std::string(name), kind, std::string(hash)});
  }
  return record;
}

}  // namespace swathe::app
