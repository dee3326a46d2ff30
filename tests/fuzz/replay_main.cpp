// A plain main for any fuzz target: replays kept cases, and mutates seeds by a plain rule where no
// libFuzzer is at hand.
//
//   replay FILE...                             each file once; "ok - NAME" a line
//   replay --mutate RUNS SECONDS SEED FILE...  so many mutants of the files, or until the time is
//   up replay --drawn RUNS SECONDS SEED           the same with eight bytes at random: a drawn job
//   each
//
// The last input tried stays beside us as PROGRAM.input where it crashes, takes longer than kHang
// or asks for more than 256 MiB at once.

#include <algorithm>
#include <chrono>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <string>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

/// The address sanitizer asks for its options here.
extern "C" const char* __asan_default_options() { return "max_allocation_size_mb=256"; }

namespace {

constexpr double kHang = 10;  // s of CPU for one case: 2 s without sanitizers

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

/// Seconds of CPU that it took.
double run(const std::string& bytes) {
  const std::clock_t start = std::clock();
  LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size());
  return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
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
    const bool ok = run(bytes_of(file)) < kHang;
    std::printf("%s - %s\n", ok ? "ok" : "not ok", std::filesystem::path(file).filename().c_str());
    failed += ok ? 0 : 1;
  }
  if (files.empty()) std::printf("not ok - no cases\n");
  return failed > 0 || files.empty() ? 1 : 0;
}

std::string eight_bytes(std::mt19937_64& rng) {
  std::string bytes;
  for (std::uint64_t word = rng(); bytes.size() < 8; word >>= 8)
    bytes += static_cast<char>(word & 0xff);
  return bytes;
}

/// Runs what `next` gives, so many times or until the time is up.
template <class Next>
int try_many(const std::vector<std::string>& arguments, const std::string& kept, Next next) {
  const long runs = std::stol(arguments[1]);
  const double seconds = std::stod(arguments[2]);
  std::mt19937_64 rng(std::stoull(arguments[3]));
  const auto start = Clock::now();
  long done = 0;
  double slowest = 0;
  for (; done < runs && seconds_since(start) < seconds && slowest < kHang; ++done) {
    const std::string bytes = next(rng);
    std::ofstream(kept, std::ios::binary) << bytes;
    slowest = std::max(slowest, run(bytes));
  }
  const bool ok = slowest < kHang;
  if (ok) std::filesystem::remove(kept);
  std::printf("%s - %s: %ld inputs in %.0f s, the slowest %.2f s, seed %s\n", ok ? "ok" : "not ok",
              kept.c_str(), done, seconds_since(start), slowest, arguments[3].c_str());
  return ok ? 0 : 1;
}

}  // namespace

int main(int argc, char** argv) {
  const std::vector<std::string> arguments(argv + 1, argv + argc);
  const std::string kept = std::filesystem::path(argv[0]).filename().string() + ".input";
  if (arguments.size() == 4 && arguments[0] == "--drawn")
    return try_many(arguments, kept, eight_bytes);
  if (arguments.size() < 5 || arguments[0] != "--mutate") return replay(arguments);
  std::vector<std::string> seeds;
  for (std::size_t k = 4; k < arguments.size(); ++k) seeds.push_back(bytes_of(arguments[k]));
  return try_many(arguments, kept, [&](std::mt19937_64& rng) { return mutant(seeds, rng); });
}
