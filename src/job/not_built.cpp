#include "job/read_tables.hpp"

namespace swathe {
namespace {

/// Puts the default back where the key asks for what is not built; whether it did.
template <class T>
bool take_back(bool asked, T& key, const T& fallback) {
  if (asked) key = fallback;
  return asked;
}

struct NotBuilt {
  std::string_view key;   ///< its place in the file, and where a dot ends its table
  std::string_view what;  ///< as it stands in the file
  bool (*take_back)(Job& job);
};

/// Keys that are understood and wait for what they ask for. A feature that is built loses its row.
constexpr NotBuilt kNotBuilt[] = {
    {"paper.measured", "given",
     [](Job& job) {
       auto& key = job.paper.measured;
       return take_back(key.has_value(), key, {});
     }},
};

}  // namespace

void refuse_not_built(JobFile& file) {
  for (const NotBuilt& row : kNotBuilt) {
    if (!row.take_back(file.job())) continue;
    file.fault(Why::NotSupported,
               fmt::format("{} is {}, which is not supported yet: leave it out", row.key, row.what),
               file.job().places.of(row.key), std::string(row.key.substr(0, row.key.find('.'))));
  }
}

}  // namespace swathe
