#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <string>

// C libraries differ in the last digit of these; a browser's does too. Exact ones, as std::sqrt,
// std::fmod or std::floor, may be used everywhere.
TEST_CASE("base: nothing but maths computes sines and the like") {
  const std::string names =
      "(a?(sin|cos|tan)h?|atan2|hypot|pow|exp|exp2|expm1|log|log2|log10|log1p|cbrt|fma|[tl]gamma|"
      "erfc?|polar)[fl]?";
  // A call that no name, dot or arrow stands before, or the name with std::, called or not.
  const std::regex called("(^|[^\\w:.>])(std)?(::)?\\b" + names + "\\s*\\(|std::" + names +
                          "\\b|#include <(complex|math.h)>");
  CHECK(std::regex_search("x = std::sin(y)", called));
  CHECK(std::regex_search("hypot (x, y)", called));
  CHECK(std::regex_search("&std::cos;", called));
  CHECK_FALSE(std::regex_search("x = maths::sin(y)", called));
  CHECK_FALSE(std::regex_search("std::sqrt(cosine(y))", called));

  int files = 0;
  for (const char* folder : {"/src", "/include"})
    for (const auto& entry :
         std::filesystem::recursive_directory_iterator(SWATHE_SOURCE + std::string(folder))) {
      const std::string path = entry.path().string(), ending = entry.path().extension().string();
      if (ending != ".cpp" && ending != ".hpp") continue;
      if (path.find("/base/maths") != std::string::npos) continue;
      ++files;
      std::ifstream file(path);
      for (std::string line; std::getline(file, line);) {
        const std::string code = line.substr(0, line.find("//"));
        CHECK_MESSAGE(!std::regex_search(code, called), path << ": " << line);
      }
    }
  CHECK(files > 200);
}
