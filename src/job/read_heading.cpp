#include <algorithm>

#include "job/read_tables.hpp"

namespace swathe {
namespace {

bool is_number(std::string_view text) {
  return !text.empty() && text.size() <= kMostNumber &&
         std::ranges::all_of(text, [](char c) { return c >= '0' && c <= '9'; });
}

void read_number(TableReader& in, std::string& number) {
  const toml::node* node = in.take("number");
  if (!node) return;
  const auto text = node->value_exact<std::string>();
  if (text && is_number(*text))
    number = *text;
  else
    in.wrong(text ? Why::OutOfRange : Why::WrongType, *node, "job.number",
             fmt::format("a string of 1 to {} digits, like \"20486\"", kMostNumber));
}

}  // namespace

void read_heading(TableReader& root) {
  root.require("job", "the table [job]");
  Job& job = root.file().job();
  TableReader in(root.file(), root.table("job"), "job", "job.");
  in.text("title", job.title, kMostTitle);
  read_number(in, job.number);
  in.text("season", job.season, kMostPath);
  in.choice("units", job.units, kUnitWords);
  in.finish();
  root.file().units = job.units;
}

}  // namespace swathe
