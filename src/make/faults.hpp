#pragma once

#include <optional>
#include <utility>

#include "swathe/base.hpp"

namespace swathe {

/// Values where there are any, faults into the one list.
template <class T>
std::optional<T> take(Outcome<T> outcome, Refusals& faults) {
  if (outcome) return std::move(*outcome);
  faults.insert(faults.end(), outcome.error().begin(), outcome.error().end());
  return std::nullopt;
}

/// What a stage made and what was wrong, passed on together, so that later stages that need neither
/// still run.
template <class T>
struct Staged {
  T value;
  Refusals faults;
};

/// The value, its faults into the one list.
template <class T>
T take(Staged<T> staged, Refusals& faults) {
  faults.insert(faults.end(), staged.faults.begin(), staged.faults.end());
  return std::move(staged.value);
}

/// Faults of something a key names stand at that key.
template <class T>
Outcome<T> at_key(Outcome<T> outcome, const Place& place) {
  if (outcome) return outcome;
  Refusals faults = std::move(outcome.error());
  for (Refusal& fault : faults) fault.place = place;
  return tl::unexpected(std::move(faults));
}

/// In the order of their places, each once.
Refusals in_order(Refusals faults);

}  // namespace swathe
