#include "sheet/cover_ends.hpp"

#include "sheet/texts.hpp"

namespace swathe {

std::string cover_end_words(const Made& made, std::size_t bumper, bool start) {
  using sheet_texts::say;
  const std::vector<RunSide>& legs = made.wraps[bumper].run().sides;
  const auto name = [&](int side) {
    return made.frame.sides()[static_cast<std::size_t>(side)].name;
  };
  const int on = (start ? legs.front() : legs.back()).side;
  if (legs.front().side != legs.back().side) return say("end.on", {{"side", name(on)}});

  const std::size_t count = made.wraps.size();
  const std::size_t before = (bumper + count - 1) % count, after = (bumper + 1) % count;
  if (legs.size() == 1 && before != after)
    return say("end.next-to-bumper", {{"bumper", made.patterns[start ? before : after].bumper}});
  // A bumper that stays on its side begins beside the side before. One that goes once round and
  // comes back to its first side begins beside the side that it goes on to.
  const bool comes_back = legs.size() > 1;
  const int by = start != comes_back ? made.frame.previous(on) : made.frame.next(on);
  return say("end.on-by", {{"side", name(on)}, {"other", name(by)}});
}

}  // namespace swathe
