#include <cassert>
#include <cstddef>
#include <exception>
#include <new>
#include <string>
#include <string_view>

#include "page/core/asks.hpp"
#include "page/core/json.hpp"
#include "page/core/session.hpp"

// The door: what a page calls. Texts and bytes come in as a pointer and a length, in UTF-8 where
// they are words, and go out by swathe_said() and swathe_bytes(), which hold until the next call.

#define SWATHE_CALL extern "C" __attribute__((used, visibility("default")))

namespace swathe::page {
namespace {

/// What a call came to.
enum Came : int {
  kDone = 0,
  kRefused = 1,   ///< said: the faults, each with its place
  kFailed = 2,    ///< said: a sentence; nothing is wrong with the job
  kNoMemory = 3,  ///< this instance is not to be used any more
};

Answer answer;

template <class Action>
int guarded(Action action) {
  answer = {};
  try {
    auto outcome = action();
    if (outcome) {
      answer = *std::move(outcome);
      return kDone;
    }
    answer = said(json_of(outcome.error()));
    return kRefused;
  } catch (const std::bad_alloc&) {
    return kNoMemory;
  } catch (const std::exception& error) {
    answer = said(error.what());
    return kFailed;
  }
}

std::string_view text_at(const char* start, std::size_t size) { return {start, size}; }

}  // namespace
}  // namespace swathe::page

using swathe::page::Session;

SWATHE_CALL Session* swathe_begin() {
  try {
    return new Session;
  } catch (const std::bad_alloc&) {
    return nullptr;
  }
}
SWATHE_CALL void swathe_end(Session* session) { delete session; }

SWATHE_CALL const char* swathe_said() { return swathe::page::answer.said.data(); }
SWATHE_CALL std::size_t swathe_said_size() { return swathe::page::answer.said.size(); }
SWATHE_CALL const char* swathe_bytes() { return swathe::page::answer.bytes.data(); }
SWATHE_CALL std::size_t swathe_bytes_size() { return swathe::page::answer.bytes.size(); }

/// A file that jobs name: a font or a rule file. Another of that name takes its place.
SWATHE_CALL int swathe_give(Session* session, const char* name, std::size_t name_size,
                            const char* bytes, std::size_t size) {
  assert(session);
  return swathe::page::guarded([&]() -> swathe::Outcome<swathe::page::Answer> {
    session->files.insert_or_assign(std::string(name, name_size), std::string(bytes, size));
    return swathe::page::Answer{};
  });
}

/// Works a job's text out; `request` as open_job() has it.
SWATHE_CALL int swathe_open(Session* session, const char* text, std::size_t size,
                            const char* request, std::size_t request_size) {
  assert(session);
  return swathe::page::guarded([&] {
    return open_job(*session, swathe::page::text_at(text, size),
                    swathe::page::Json::parse(swathe::page::text_at(request, request_size)));
  });
}

/// Anything else: {"ask": "findings", ...}, by name as asks.cpp lists them.
SWATHE_CALL int swathe_ask(Session* session, const char* request, std::size_t size) {
  assert(session);
  return swathe::page::guarded([&] {
    return swathe::page::ask(*session,
                             swathe::page::Json::parse(swathe::page::text_at(request, size)));
  });
}
