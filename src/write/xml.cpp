#include "write/xml.hpp"

namespace swathe {

std::string xml_escaped(std::string_view words) {
  std::string text;
  for (const char c : words) {
    switch (c) {
      case '&':
        text += "&amp;";
        break;
      case '<':
        text += "&lt;";
        break;
      case '>':
        text += "&gt;";
        break;
      case '"':
        text += "&quot;";
        break;
      default:
        if (static_cast<unsigned char>(c) >= 0x20) text += c;
    }
  }
  return text;
}

std::string shown_in(const Subjects& shows) {
  return shows.empty() ? "" : " data-subject=\"" + xml_escaped(to_text(shows)) + "\"";
}

}  // namespace swathe
