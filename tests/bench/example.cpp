#include "example.hpp"

#include <cstdlib>
#include <fstream>
#include <sstream>

#include "swathe/make/make.hpp"
#include "swathe/type/faces.hpp"

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

Face labels() {
  auto face = Face::open(label_face());
  if (!face) std::abort();
  return *std::move(face);
}

}  // namespace swathe::bench
