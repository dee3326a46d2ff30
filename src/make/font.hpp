#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "make/faults.hpp"
#include "swathe/job/job.hpp"
#include "swathe/make/make.hpp"
#include "swathe/numeral/size.hpp"
#include "swathe/type/face.hpp"

namespace swathe {

/// A face and the bytes it reads from, which stay where they are when it is handed on.
struct OpenFace {
  std::string name;
  std::map<std::string, double> axes;
  std::shared_ptr<const std::string> bytes;  ///< of a font file; none for a bundled face
  std::optional<Face> face;
};

/// The face that a job names; none in it where that cannot be opened.
Staged<OpenFace> open_face(const Job& job, const NamedFiles& files);

/// The number in each bundled face, for advice where the chosen one is too wide.
std::vector<FaceCandidate> candidates_for(const Job& job);

}  // namespace swathe
