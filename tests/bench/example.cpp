#include "example.hpp"

#include <cstdlib>
#include <fstream>
#include <sstream>

#include "swathe/make.hpp"
#include "swathe/type.hpp"

namespace swathe::bench {

std::string example_text() {
  std::ostringstream text;
  text << std::ifstream(SWATHE_SOURCE "/examples/tin-heron.toml").rdbuf();
  return text.str();
}

Made make_job(const std::string& text) {
  auto made = make(text, "job.toml");
  if (!made) std::abort();
  return *std::move(made);
}

Made made_example() {
  static const std::string text = example_text();
  return make_job(text);
}

Font labels() {
  auto font = Font::open(label_font());
  if (!font) std::abort();
  return *std::move(font);
}

}  // namespace swathe::bench
