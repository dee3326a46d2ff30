#include "swathe/base.hpp"
#include "swathe/write.hpp"

namespace swathe {
namespace {

constexpr int kDecimals = 6;

void row(std::string& text, const char* keyword, std::initializer_list<double> values) {
  text += keyword;
  for (const double value : values) text += " " + plain_number(value, kDecimals);
  text += "\n";
}

}  // namespace

std::string to_obj(const Mesh& mesh) {
  std::string text =
      "# The cover of bumper " + mesh.name +
      " in place. Millimeters, z up from the floor; texture coordinates are the cloth's (s, u).\n";
  text += "o bumper_" + mesh.name + "\n";
  for (const SpacePoint& p : mesh.points) row(text, "v", {p.x, p.y, p.z});
  for (const ClothPoint& p : mesh.cloth) row(text, "vt", {p.s, p.u});
  int panel = -1;
  for (std::size_t k = 0; k < mesh.triangles.size(); ++k) {
    if (mesh.panel[k] != panel) {
      panel = mesh.panel[k];
      text += "g panel_" + std::to_string(panel) + "\n";
    }
    text += "f";
    for (const int corner : mesh.triangles[k]) {
      const std::string number = std::to_string(corner + 1);
      text.append(" ").append(number).append("/").append(number);
    }
    text += "\n";
  }
  return text;
}

}  // namespace swathe
