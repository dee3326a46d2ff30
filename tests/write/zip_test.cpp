#include <doctest/doctest.h>

#include <algorithm>

#include "support/made.hpp"
#include "swathe/write.hpp"

// The whole archive is read by other programs in tests/app/zip_test.py.
namespace swathe {
namespace {

MadeFile file(const char* name, std::string bytes) { return {name, std::move(bytes), 0, "", ""}; }

std::string bytes_of(std::initializer_list<int> values) {
  std::string bytes;
  for (const int value : values) bytes += static_cast<char>(value);
  return bytes;
}

// By hand, from .ZIP File Format Specification 4.3.7 (local file header) and 4.4.6 (MS-DOS time and
// date). 2001-02-03T04:05:06: date (2001 - 1980) * 512 + 2 * 32 + 3 = 10819 = 0x2a43; time 4 * 2048
// + 5 * 32 + 6 / 2 = 8355 = 0x20a3. The CRC of "123456789" is the check value of CRC-32/ISO-HDLC,
// 0xcbf43926; deflated, nine bytes that do not repeat are longer, so they are stored.
TEST_CASE("zip: a file's head is what the form asks for") {
  const std::string zip = to_zip({file("a.txt", "123456789")}, "2001-02-03T04:05:06Z");
  const std::string head =
      bytes_of({'P',  'K',  3,    4, 20, 0, 0, 8, 0, 0, 0xa3, 0x20, 0x43, 0x2a, 0x26,
                0x39, 0xf4, 0xcb, 9, 0,  0, 0, 9, 0, 0, 0,    5,    0,    0,    0});
  CHECK(zip.substr(0, head.size()) == head);
  CHECK(zip.substr(head.size(), 14) == "a.txt123456789");
  CHECK(zip.substr(head.size() + 14, 4) == bytes_of({'P', 'K', 1, 2}));
  // 4.3.16: the end record has no comment, so it is the last 22 bytes.
  const std::string end = zip.substr(zip.size() - 22);
  CHECK(end.substr(0, 12) == bytes_of({'P', 'K', 5, 6, 0, 0, 0, 0, 1, 0, 1, 0}));
  const std::size_t directory = head.size() + 14;
  CHECK(end.substr(12) == bytes_of({46 + 5, 0, 0, 0, static_cast<int>(directory), 0, 0, 0, 0, 0}));
}

TEST_CASE("zip: what is shorter deflated is") {
  const std::string zip = to_zip({file("a.txt", std::string(100000, 'a'))});
  CHECK(zip.size() < 1000);
  CHECK(zip.substr(8, 2) == bytes_of({8, 0}));  // 4.4.5: deflated
}

TEST_CASE("zip (1): same files, same date, same bytes; another date changes no size") {
  const std::vector<MadeFile> files = {file("a.txt", std::string(5000, 'b')), file("b", "")};
  CHECK(to_zip(files) == to_zip(files));
  CHECK(to_zip(files) != to_zip(files, "2020-01-01T00:00:00Z"));
  CHECK(to_zip(files).size() == to_zip(files, "2020-01-01T00:00:00Z").size());
}

// 4.4.6: years count from 1980 in seven bits.
TEST_CASE("zip: a date that the form cannot hold is the nearest that it can") {
  const auto date = [](const char* created) {
    return to_zip({file("a", "")}, created).substr(10, 4);
  };
  CHECK(date("1970-01-01T00:00:00Z") == date("1980-01-01T00:00:00Z"));
  CHECK(date("9999-12-31T23:59:59Z") == date("2107-12-31T23:59:59Z"));
  CHECK(date("2107-12-31T23:59:59Z") != date("2107-12-30T23:59:59Z"));
}

}  // namespace
}  // namespace swathe
