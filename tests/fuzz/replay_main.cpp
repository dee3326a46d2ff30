// A plain main for any fuzz target: replays kept cases, and mutates seeds by a plain rule where no
// libFuzzer is at hand.
//
//   replay FILE...                           each file once; "ok - NAME" a line
//   replay --mutate RUNS SECONDS SEED FILE...  that many mutants of the files, or until the time is
//                                            up; the last one tried stays in ./mutant on a crash

#include <chrono>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <string>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

constexpr double kHang = 10;  // s for one case, under sanitizers and on a busy machine

using Clock = std::chrono::steady_clock;

double seconds_since(Clock::time_point start) {
  return std::chrono::duration<double>(Clock::now() - start).count();
}

std::string bytes_of(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) {
    std::printf("not ok - %s cannot be read\n", path.c_str());
    std::exit(1);
  }
  return {std::istreambuf_iterator<char>(file), {}};
}

/// Whether it ended in time.
bool run(const std::string& bytes) {
  const auto start = Clock::now();
  LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size());
  return seconds_since(start) < kHang;
}

/// Bytes changed, numbers at their ends, pieces cut, doubled, moved or taken from another seed.
std::string mutant(const std::vector<std::string>& seeds, std::mt19937_64& rng) {
  const auto below = [&](std::size_t n) {
    return n < 2 ? std::size_t{0} : std::uniform_int_distribution<std::size_t>(0, n - 1)(rng);
  };
  std::string bytes = seeds[below(seeds.size())];
  const std::size_t changes = 1 + below(1 + below(20));
  for (std::size_t k = 0; k < changes && !bytes.empty(); ++k) {
    const std::size_t at =
        below(2) == 0 ? below(std::min<std::size_t>(bytes.size(), 512)) : below(bytes.size());
    const std::size_t length = std::min(bytes.size() - at, 1 + below(1 + below(64)));
    switch (below(6)) {
      case 0:
        bytes[at] = static_cast<char>(below(256));
        break;
      case 1:
        bytes[at] = static_cast<char>(bytes[at] ^ (1 << below(8)));
        break;
      case 2:
        bytes.replace(at, length, length, below(2) == 0 ? '\xff' : '\0');
        break;
      case 3:
        bytes.erase(at, length);
        break;
      case 4:
        bytes.insert(below(bytes.size()), bytes.substr(at, length));
        break;
      default: {
        const std::string& other = seeds[below(seeds.size())];
        bytes.replace(at, length, other.substr(below(other.size()), length));
      }
    }
  }
  if (below(16) == 0) bytes.resize(below(bytes.size() + 1));
  return bytes;
}

int replay(const std::vector<std::string>& files) {
  int failed = 0;
  for (const std::string& file : files) {
    const bool ok = run(bytes_of(file));
    std::printf("%s - %s\n", ok ? "ok" : "not ok", std::filesystem::path(file).filename().c_str());
    failed += ok ? 0 : 1;
  }
  if (files.empty()) std::printf("not ok - no cases\n");
  return failed > 0 || files.empty() ? 1 : 0;
}

int mutate(long runs, double seconds, std::uint64_t seed, const std::vector<std::string>& files) {
  std::vector<std::string> seeds;
  for (const std::string& file : files) seeds.push_back(bytes_of(file));
  std::mt19937_64 rng(seed);
  const auto start = Clock::now();
  long done = 0;
  for (; done < runs && seconds_since(start) < seconds; ++done) {
    const std::string bytes = mutant(seeds, rng);
    std::ofstream("mutant", std::ios::binary) << bytes;
    if (!run(bytes)) {
      std::printf("not ok - a mutant of seed %llu takes too long; it stays in ./mutant\n",
                  static_cast<unsigned long long>(seed));
      return 1;
    }
  }
  std::filesystem::remove("mutant");
  std::printf("ok - %ld mutants in %.0f s, seed %llu\n", done, seconds_since(start),
              static_cast<unsigned long long>(seed));
  return 0;
}

}  // namespace

int main(int argc, char** argv) {
  std::vector<std::string> arguments(argv + 1, argv + argc);
  if (arguments.size() < 5 || arguments[0] != "--mutate") return replay(arguments);
  const std::vector<std::string> files(arguments.begin() + 4, arguments.end());
  return mutate(std::stol(arguments[1]), std::stod(arguments[2]), std::stoull(arguments[3]), files);
}
