#include "page/core/asks.hpp"

#include <algorithm>
#include <array>
#include <stdexcept>
#include <string_view>

namespace swathe::page {
namespace {

struct Ask {
  std::string_view name;
  Outcome<Answer> (*answer)(Session&, const Json&);
};

constexpr std::array kAsks = {
    Ask{"findings", findings},
    Ask{"report", report},
    Ask{"sheets", sheets},
    Ask{"pages", pages},
    Ask{"page_svg", page_svg},
    Ask{"sheet_pdf", sheet_pdf},
    Ask{"ways", ways},
    Ask{"plan", plan},
    Ask{"cover", cover},
    Ask{"cut_through", cut_through},
    Ask{"view", view},
    Ask{"chart", chart},
    Ask{"verdict", verdict},
    Ask{"verdicts", verdicts},
    Ask{"file", file},
    Ask{"begin_files", begin_files},
    Ask{"next_file", next_file},
    Ask{"archive", archive},
    Ask{"named_files", named_files},
    Ask{"read", read},
    Ask{"set", set},
    Ask{"remove", remove},
    Ask{"keys_of", keys_of_subject},
    Ask{"fields", fields},
    Ask{"typed", typed},
    Ask{"move", move},
    Ask{"from_corner", said_from_corner},
    Ask{"words", words},
    Ask{"choices", choices},
    Ask{"new_text", new_text},
    Ask{"questions", questions},
    Ask{"job_of_answers", job_of_answers},
    Ask{"kinds", kinds},
    Ask{"job_of_kind", job_of_kind},
    Ask{"label_font", label_letters},
    Ask{"look_at_font", look_at_font},
};

}  // namespace

Outcome<Answer> ask(Session& session, const Json& request) {
  const std::string name = request.value("ask", "");
  const auto found = std::ranges::find(kAsks, std::string_view(name), &Ask::name);
  if (found == kAsks.end()) throw std::runtime_error("nobody can be asked for \"" + name + "\"");
  return found->answer(session, request);
}

}  // namespace swathe::page
