#include "job/new_job.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>

#include "base/embedded.hpp"
#include "job/frame_drawing.hpp"
#include "job/keys.hpp"
#include "swathe/job.hpp"

namespace swathe {
namespace {

constexpr std::string_view kCommented = "# ";
constexpr std::string_view kDrawing = "@@drawing";  // where new-job.toml has it
constexpr char kKeyMark = '@';                      // and a key: "@flap"

std::string_view take_line(std::string_view& text) {
  const std::string_view line = text.substr(0, text.find('\n'));
  text.remove_prefix(std::min(line.size() + 1, text.size()));
  return line;
}

/// A line that shows a key or a table, with the mark of a comment before it or
/// without.
std::string_view shown(std::string_view line) {
  if (line.starts_with(kCommented)) line.remove_prefix(kCommented.size());
  return line;
}

/// "cloth" of "[cloth]", "bumper" of "[[bumper]]"; nothing of any other line.
std::string_view table_in(std::string_view line) {
  line = shown(line);
  if (!line.starts_with('[')) return {};
  const auto first = line.find_first_not_of('[');
  return line.substr(first, line.find(']') - first);
}

/// "flap = "2 in"   # what it means", the meanings below each other where there
/// is room. In force where a value is given, else a comment with the default.
std::string key_line(std::string_view table, std::string_view name, const std::string* value) {
  constexpr std::size_t kMeanings = 40;  // the column where they begin
  const Key* key = find_key(fmt::format("{}.{}", table, name));
  assert(key && "new-job.toml is our own file");
  std::string line = value ? fmt::format("{} = {}", name, *value)
                           : fmt::format("{}{} = {}", kCommented, name, key->value);
  if (line.size() < kMeanings)
    line.resize(kMeanings, ' ');
  else
    line += "   ";
  return fmt::format("{}# {}", line, key->meaning);
}

const std::string* found(const NewJob::Table& table, const std::string& key) {
  const auto at = table.find(key);
  return at == table.end() ? nullptr : &at->second;
}

/// Writes the new job's text line by line.
class Writer {
 public:
  explicit Writer(const NewJob& job) : job_(job) {}

  std::string text(std::string_view drawing) {
    std::string_view rest = embedded("job/new-job.toml");
    while (!rest.empty()) {
      const std::string_view line = take_line(rest);
      if (line == kDrawing)
        out_ += drawing;
      else
        write(line);
    }
    end_table();
    return std::move(out_);
  }

 private:
  void write(std::string_view line) {
    if (const std::string_view name = table_in(line); !name.empty()) {
      end_table();
      table_ = name;
      list_ = list_of(name);
      // A list of tables begins with its first, or is a comment all through.
      if (list_) line = list_->empty() ? line : shown(line);
    } else if (line.empty()) {
      end_table();
    } else if (shown(line).starts_with(kKeyMark)) {
      order_.emplace_back(shown(line).substr(1));
      out_ += key_line(table_, order_.back(), value_of(order_.back())) + '\n';
      return;
    }
    out_ += line;
    out_ += '\n';
  }

  const std::vector<NewJob::Table>* list_of(std::string_view table) const {
    if (table == "opening") return &job_.openings;
    if (table == "bumper") return &job_.bumpers;
    return table == "bracket" ? &job_.brackets : nullptr;
  }

  const std::string* value_of(const std::string& name) const {
    if (list_) return list_->empty() ? nullptr : found(list_->front(), name);
    return found(job_.values, fmt::format("{}.{}", table_, name));
  }

  /// The other tables of a list, each with what it says alone.
  void end_table() {
    for (std::size_t k = 1; list_ && k < list_->size(); ++k) {
      out_ += fmt::format("\n[[{}]]\n", table_);
      for (const std::string& name : order_)
        if (const std::string* value = found((*list_)[k], name))
          out_ += fmt::format("{} = {}\n", name, *value);
    }
    list_ = nullptr;
    order_.clear();
  }

  const NewJob& job_;
  std::string out_;
  std::string_view table_;
  const std::vector<NewJob::Table>* list_ = nullptr;  ///< of which this is the first
  std::vector<std::string> order_;                    ///< of its keys
};

}  // namespace

std::string drawing_comment(std::string_view job_text) {
  const JobReading reading = read_job(job_text, "job");
  assert(reading.faults.empty() && "a new job can be read");
  std::string lines;
  for (const std::string& line : frame_drawing(reading.job.frame, reading.job.units))
    lines += line.empty() ? "#\n" : "#   " + line + '\n';
  return lines;
}

std::string new_job_of(const NewJob& job) {
  return Writer(job).text(drawing_comment(Writer(job).text("")));
}

std::vector<KeyWords> key_words() {
  std::vector<KeyWords> all;
  for (const Key& key : job_keys())
    all.push_back({std::string(key.path), key.value, key.meaning, key.why, key.given});
  return all;
}

}  // namespace swathe
