#include <zlib.h>

#include <algorithm>
#include <cassert>
#include <cstdint>
#include <memory>
#include <stdexcept>

#include "swathe/write.hpp"

namespace swathe {
namespace {

constexpr unsigned kNeeds = 20;  ///< the form's version that a reader must know: 2.0, deflated
constexpr unsigned kUtf8 = 1u << 11;
constexpr unsigned kStored = 0, kDeflated = 8;

class Bytes {
 public:
  Bytes& two(unsigned value) { return number(value, 2); }
  Bytes& four(std::uint32_t value) { return number(value, 4); }
  Bytes& text(const std::string& bytes) {
    bytes_ += bytes;
    return *this;
  }
  const std::string& get() const { return bytes_; }

 private:
  Bytes& number(std::uint32_t value, int bytes) {  // the lowest byte first
    for (int k = 0; k < bytes; ++k) bytes_ += static_cast<char>(value >> (8 * k) & 0xffu);
    return *this;
  }
  std::string bytes_;
};

std::uint32_t length_of(const std::string& bytes) {
  assert(bytes.size() <= UINT32_MAX && "what is larger wants another form");
  return static_cast<std::uint32_t>(bytes.size());
}

/// Without the zlib form's head and sum, which an archive has its own of.
std::string deflated(const std::string& bytes) {
  z_stream stream{};
  if (deflateInit2(&stream, Z_BEST_COMPRESSION, Z_DEFLATED, -MAX_WBITS, 8, Z_DEFAULT_STRATEGY) !=
      Z_OK)
    throw std::runtime_error("zlib cannot compress: out of memory");
  const std::unique_ptr<z_stream, int (*)(z_stream*)> ends(&stream, deflateEnd);
  std::string out(deflateBound(&stream, length_of(bytes)), '\0');
  // zlib reads through this pointer and never writes.
  stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(bytes.data()));
  stream.avail_in = length_of(bytes);
  stream.next_out = reinterpret_cast<Bytef*>(out.data());
  stream.avail_out = length_of(out);
  if (deflate(&stream, Z_FINISH) != Z_STREAM_END)
    throw std::runtime_error("zlib cannot compress: out of memory");
  out.resize(stream.total_out);
  return out;
}

/// As MS-DOS has it: seconds by twos, years from 1980.
struct DosTime {
  unsigned date = 0, time = 0;
};
DosTime dos_time(const std::string& created) {
  assert(created.size() == std::string_view("2000-01-01T00:00:00Z").size());
  const auto number = [&](std::size_t from, std::size_t digits) {
    unsigned value = 0;
    for (const char c : created.substr(from, digits)) value = 10 * value + unsigned(c - '0');
    return value;
  };
  const unsigned year = number(0, 4);
  if (year < 1980) return {1u << 5 | 1u, 0};
  if (year > 2107) return {127u << 9 | 12u << 5 | 31u, 23u << 11 | 59u << 5 | 29u};
  return {(year - 1980) << 9 | number(5, 2) << 5 | number(8, 2),
          number(11, 2) << 11 | number(14, 2) << 5 | number(17, 2) / 2};
}

}  // namespace

std::string to_zip(const std::vector<MadeFile>& files, const std::string& created) {
  assert(files.size() < 0xffff && "more files want another form");
  const DosTime when = dos_time(created);
  std::string archive;
  Bytes directory;
  for (const MadeFile& file : files) {
    const std::string squeezed = deflated(file.bytes);
    const bool shorter = squeezed.size() < file.bytes.size();
    const std::string& data = shorter ? squeezed : file.bytes;
    const auto sum = static_cast<std::uint32_t>(
        crc32(0, reinterpret_cast<const Bytef*>(file.bytes.data()), length_of(file.bytes)));
    // What the file's own head and its line in the directory have alike.
    Bytes about;
    about.two(kNeeds).two(kUtf8).two(shorter ? kDeflated : kStored).two(when.time).two(when.date);
    about.four(sum).four(length_of(data)).four(length_of(file.bytes));
    about.two(length_of(file.name)).two(0);  // nothing more after the name
    const std::uint32_t at = length_of(archive);
    archive += Bytes().four(0x04034b50).text(about.get()).text(file.name).get();
    archive += data;
    // Made on MS-DOS, as far as a reader is to know: a plain file with no permissions to keep.
    directory.four(0x02014b50).two(kNeeds).text(about.get());
    directory.two(0).two(0).two(0).four(0).four(at).text(file.name);
  }
  const std::uint32_t at = length_of(archive);
  archive += directory.get();
  Bytes end;
  end.four(0x06054b50).two(0).two(0);
  end.two(static_cast<unsigned>(files.size())).two(static_cast<unsigned>(files.size()));
  end.four(length_of(directory.get())).four(at).two(0);
  return archive + end.get();
}

}  // namespace swathe
