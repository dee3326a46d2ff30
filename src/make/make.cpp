#include "swathe/make/make.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "make/count_sheets.hpp"
#include "make/keys_in_vain.hpp"
#include "place/sight_advice.hpp"
#include "swathe/check/check.hpp"
#include "swathe/job/check_job.hpp"
#include "swathe/job/read_job.hpp"
#include "swathe/pattern/joins.hpp"
#include "swathe/place/make_numerals.hpp"
#include "swathe/sight/demand.hpp"
#include "swathe/type/faces.hpp"

namespace swathe {
namespace {

/// Values where there are any, faults into the one list.
template <class T>
std::optional<T> take(Outcome<T> outcome, Refusals& faults) {
  if (outcome) return std::move(*outcome);
  faults.insert(faults.end(), outcome.error().begin(), outcome.error().end());
  return std::nullopt;
}

/// Faults of something a key names stand at that key.
template <class T>
Outcome<T> at_key(Outcome<T> outcome, const Place& place) {
  if (outcome) return outcome;
  Refusals faults = std::move(outcome.error());
  for (Refusal& fault : faults) fault.place = place;
  return tl::unexpected(std::move(faults));
}

/// Whether a key's value is the path of a file, not a name of ours; an ending may be in capitals.
bool is_path(std::string name, std::initializer_list<const char*> endings) {
  for (char& c : name)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return name.find('/') != std::string::npos ||
         std::ranges::any_of(endings, [&](const std::string& ending) {
           return name.size() > ending.size() && name.ends_with(ending);
         });
}

bool is_rule_file(const std::string& season) { return is_path(season, {".toml"}); }
bool is_font_file(const std::string& font) { return is_path(font, {".ttf", ".otf", ".woff2"}); }

Outcome<std::string> bytes_of(const std::string& name, const NamedFiles& files) {
  const auto found = files.find(name);
  if (found == files.end())
    return refuse(Why::Missing, fmt::format("the file \"{}\" is not here", name));
  return found->second;
}

/// The way from where the job's file is named to a file that is named beside it.
std::string beside(const std::string& job_file, const std::string& path) {
  const auto slash = job_file.rfind('/');
  return path.starts_with('/') || slash == std::string::npos ? path
                                                             : job_file.substr(0, slash + 1) + path;
}

/// The season a job names; nothing in it for "none".
Outcome<std::optional<Season>> season_of(const Job& job, const std::string& job_file,
                                         const NamedFiles& files) {
  const Place place = job.places.of("job.season");
  if (job.season == "none") return std::nullopt;
  if (!is_rule_file(job.season)) {
    auto season = at_key(bundled_season(job.season), place);
    if (!season) return tl::unexpected(std::move(season.error()));
    return std::optional<Season>(std::move(*season));
  }
  const auto text = at_key(bytes_of(job.season, files), place);
  if (!text) return tl::unexpected(text.error());
  // Its faults have places in its own file.
  auto season = read_season(*text, beside(job_file, job.season));
  if (!season) return tl::unexpected(std::move(season.error()));
  return std::optional<Season>(std::move(*season));
}

/// A face and the bytes it reads from.
struct OpenFace {
  std::string name;
  std::map<std::string, double> axes;
  std::string bytes;  ///< of a font file; empty for a bundled face
  std::optional<Face> face;
};

/// Into `into`, which stays where it is: the face reads from its bytes.
Refusals open_face(const Job& job, const NamedFiles& files, OpenFace& into) {
  const NumeralKeys& keys = job.numerals;
  const Place place = job.places.of("numerals.font");
  Refusals faults;
  if (is_font_file(keys.font)) {
    auto bytes = take(at_key(bytes_of(keys.font, files), place), faults);
    if (!bytes) return faults;
    into.bytes = std::move(*bytes);
    into.axes = keys.axes;
    into.face = take(at_key(Face::open(into.bytes, keys.axes), place), faults);
    if (into.face) into.name = into.face->name();
    return faults;
  }
  const auto bundled = take(at_key(bundled_face(keys.font), place), faults);
  if (!bundled) return faults;
  into.name = bundled->name;
  into.axes = bundled->axes;
  for (const auto& [axis, value] : keys.axes) into.axes[axis] = value;
  const bool own_axes = !keys.axes.empty();
  into.face = take(
      at_key(open_bundled(*bundled, keys.axes), own_axes ? job.places.of("numerals.axes") : place),
      faults);
  return faults;
}

/// The number in each bundled face, for advice where the chosen one is too wide.
std::vector<FaceCandidate> candidates_for(const Job& job) {
  std::vector<FaceCandidate> candidates;
  for (const BundledFace& bundled : bundled_faces()) {
    const auto face = open_bundled(bundled);
    if (!face) continue;
    if (auto candidate = face_candidate(bundled.name, *face, job.number, job.numerals.spacing))
      candidates.push_back(std::move(*candidate));
  }
  return candidates;
}

NumeralRules numeral_rules(const std::optional<Season>& season) {
  constexpr Length kAsOne =
      inches(4);  // farther apart than this, the season 2026 reads two numbers
  NumeralRules rules;
  rules.space = kAsOne;
  rules.may_split = !season;
  if (!season) return rules;
  // A rule on the space between digits lets them stand that far apart.
  rules.may_split =
      season->numerals_split ? season->numerals_split->value : season->numerals_spacing.has_value();
  if (season->numerals_spacing) rules.space = season->numerals_spacing->value;
  if (season->numerals_height) rules.height = season->numerals_height->value;
  if (season->numerals_stroke) rules.stroke = season->numerals_stroke->value;
  if (season->numerals_places) rules.places = season->numerals_places->value;
  return rules;
}

/// The stages of the pass. Each runs where everything it hangs on is sound, and adds its faults.
class Pass {
 public:
  Pass(JobReading reading, std::string job_file, const NamedFiles& files)
      : reading_(std::move(reading)),
        job_file_(std::move(job_file)),
        files_(files),
        faults_(std::move(reading_.faults)) {
    // A bracket at fault stands nowhere: its other keys may be defaults.
    for (std::size_t k = 0; k < reading_.job.brackets.size(); ++k)
      if (!reading_.sound(fmt::format("bracket.{}", k))) reading_.job.brackets[k].bumper.clear();
  }

  Outcome<Made> run() {
    season_ = take(season_of(job(), job_file_, files_), faults_);
    stand_bumpers();
    lay_patterns();
    open_numerals();
    if (!faults_.empty()) return sorted_faults();
    Made made{std::move(reading_.job),
              std::move(*season_),
              std::move(*frame_),
              std::move(*section_),
              std::move(wraps_),
              std::move(patterns_),
              std::move(gaps_),
              {},
              {},
              std::move(boards_),
              std::move(padding_),
              {},
              {},
              {},
              {},
              {},
              {}};
    cover_gaps(made);
    if (Refusals faults = set_numerals(made); !faults.empty()) {
      faults_ = std::move(faults);
      return sorted_faults();
    }
    if (Refusals faults = lay_seams(made); !faults.empty()) {
      faults_ = std::move(faults);
      return sorted_faults();
    }
    made.same = same_patterns(made.patterns, made.numerals_on_patterns());
    share_mark_names(made.patterns, made.same);
    made.stock = plan_stock(made.job, made.boards, made.padding, made.patterns);
    made.findings =
        check({made.job, made.season ? &*made.season : nullptr, made.frame, made.section,
               made.wraps, made.patterns, made.bare_gaps, made.covered_gaps, made.boards,
               made.padding, made.numerals ? &*made.numerals : nullptr, &made.stock,
               made.sight ? &*made.sight : nullptr});
    made.notices = keys_in_vain(made);
    return made;
  }

 private:
  const Job& job() const { return reading_.job; }
  bool sound(std::initializer_list<std::string_view> tables) const {
    return std::ranges::all_of(tables, [&](std::string_view t) { return reading_.sound(t); });
  }

  void stand_bumpers() {
    if (sound({"frame"})) frame_ = take(Frame::make(job().frame, job().places), faults_);
    if (sound({"backing", "padding", "cloth"}))
      section_ =
          take(Section::make(job().backing, job().padding, job().cloth, job().places, job().units),
               faults_);
    if (!frame_ || !section_) return;
    std::vector<Run> runs;
    for (std::size_t k = 0; k < job().bumpers.size(); ++k) {
      if (!reading_.sound(fmt::format("bumper.{}", k))) continue;
      auto run = take(make_run(*frame_, *section_, job().padding, job().bumpers[k],
                               static_cast<int>(k), job().places, job().units),
                      faults_);
      if (run) runs.push_back(std::move(*run));
    }
    if (auto gaps =
            take(gaps_between(*frame_, *section_, runs, job().places, job().units), faults_))
      gaps_ = std::move(*gaps);
    for (const Run& run : runs) {
      add(boards_, board_pieces(*frame_, *section_, run, job().backing, job().places));
      add(padding_, padding_pieces(*frame_, *section_, run, job().padding, job().places));
      wraps_.emplace_back(*frame_, *section_, run);
    }
  }

  void add(std::vector<Piece>& pieces, Outcome<std::vector<Piece>> more) {
    if (auto some = take(std::move(more), faults_))
      pieces.insert(pieces.end(), some->begin(), some->end());
  }

  void lay_patterns() {
    for (const Wrap& wrap : wraps_)
      if (auto pattern = take(make_pattern(wrap, job()), faults_))
        patterns_.push_back(std::move(*pattern));
    if (!sound({"paper"})) return;
    const Refusals faults = too_many_sheets(job(), patterns_);
    faults_.insert(faults_.end(), faults.begin(), faults.end());
  }

  void open_numerals() {
    if (job().number.empty() || !sound({"numerals", "job"})) return;
    Refusals faults = open_face(job(), files_, face_);
    faults_.insert(faults_.end(), faults.begin(), faults.end());
  }

  /// Cloth folded round both ends narrows the gap between neighbours.
  void cover_gaps(Made& made) const {
    for (std::size_t k = 0; k < made.patterns.size(); ++k) {
      // The next bumper's start is cut like this one's end: every end has the same layers.
      int layers = 0;
      for (const EndOnPattern& end : made.patterns[k].ends) layers += end.layers;
      made.covered_gaps.push_back(made.bare_gaps[k] - layers * made.section.cloth_thickness_mm());
    }
  }

  static void look_at(Made& made, const Demand& demand) {
    const std::vector<SightNumber> numbers = numbers_to_see(*made.numerals);
    made.sight = sweep(make_scene(made.wraps, numbers, made.job.sight.blind), made.job.sight,
                       demand.distance);
    const auto misread = [&](const SightRing& ring) {
      return ring.widest(Reads::Another, made.sight->step) != nullptr;
    };
    const bool met =
        !demand.viewpoints || meets(least_fraction(made.sight->demanded), *demand.viewpoints);
    if (met && std::ranges::none_of(made.sight->rings, misread) &&
        std::ranges::none_of(made.sight->demanded, misread))
      return;
    made.sight->advice = sight_advice(made.wraps, numbers, made.job.sight, demand, made.job.units);
  }

  Refusals set_numerals(Made& made) const {
    double half_height = made.section.front_flat_top();
    if (face_.face) {
      const NumeralRules rules = numeral_rules(made.season);
      half_height = 0.5 * numeral_height(made.job.numerals, rules).mm();
      const Demand demand = demand_of(made.season ? &*made.season : nullptr);
      const auto set = [&](const std::vector<FaceCandidate>& candidates) {
        return make_numerals({*face_.face, face_.name, made.job.number, made.job.numerals,
                              made.wraps, made.boards, rules,
                              static_cast<int>(made.job.cloth.colours.size()), candidates,
                              made.job.units, made.job.places, made.job.sight, demand});
      };
      // Other faces are opened and measured only where the number does not fit in this one.
      auto numerals = set({});
      if (numerals && !numerals->misfits.empty()) numerals = set(candidates_for(made.job));
      if (!numerals) return numerals.error();
      made.numerals = std::move(*numerals);
      made.numerals->axes = face_.axes;
      look_at(made, demand);
    }
    for (const Wrap& wrap : made.wraps) made.clear.push_back(clear_stretches(wrap, half_height));
    return {};
  }

  /// Seams keep clear of the numerals, so they come after them.
  Refusals lay_seams(Made& made) const {
    Refusals faults;
    const std::vector<PlacedNumeral> numerals = made.numerals_on_patterns();
    for (std::size_t k = 0; k < made.patterns.size(); ++k) {
      std::vector<Occupied> occupied;
      for (const PlacedNumeral& numeral : numerals)
        if (numeral.bumper == static_cast<int>(k))
          occupied.push_back(
              {numeral.centre_s - 0.5 * numeral.width, numeral.centre_s + 0.5 * numeral.width});
      if (auto joins = take(lay_joins(made.patterns[k], made.job, std::move(occupied)), faults))
        made.patterns[k].joins = std::move(*joins);
    }
    return faults;
  }

  tl::unexpected<Refusals> sorted_faults() {
    std::ranges::stable_sort(faults_, [](const Refusal& a, const Refusal& b) {
      return std::tie(a.place.file, a.place.line, a.place.column) <
             std::tie(b.place.file, b.place.line, b.place.column);
    });
    const auto same = [](const Refusal& a, const Refusal& b) { return to_text(a) == to_text(b); };
    faults_.erase(std::unique(faults_.begin(), faults_.end(), same), faults_.end());
    return tl::unexpected(std::move(faults_));
  }

  JobReading reading_;
  std::string job_file_;
  const NamedFiles& files_;
  Refusals faults_;
  std::optional<std::optional<Season>> season_;
  std::optional<Frame> frame_;
  std::optional<Section> section_;
  std::vector<Wrap> wraps_;
  std::vector<Pattern> patterns_;
  std::vector<double> gaps_;
  std::vector<Piece> boards_, padding_;
  OpenFace face_;
};

}  // namespace

std::vector<std::string> files_named(std::string_view job_text) {
  const Job job = read_job(job_text, "").job;
  std::vector<std::string> names;
  if (is_rule_file(job.season)) names.push_back(job.season);
  if (is_font_file(job.numerals.font)) names.push_back(job.numerals.font);
  return names;
}

Outcome<Made> make(std::string_view job_text, const std::string& job_file,
                   const NamedFiles& files) {
  return Pass(read_job(job_text, job_file), job_file, files).run();
}

Outcome<Made> make(const Job& job, const NamedFiles& files) {
  return Pass(read_again(job), job.source, files).run();
}

}  // namespace swathe
