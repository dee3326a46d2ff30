#pragma once

// A job: read, checked, written, one value of it changed in its text.

#include <array>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "swathe/base.hpp"
#include "swathe/plane.hpp"
#include "swathe/rules.hpp"

namespace swathe {

/// A sheet of paper that can be asked for by name, standing: width is the shorter edge.
struct Paper {
  std::string name;
  Length width, height;
};

/// The name of paper that comes off a roll: a width, and as long as a page needs.
inline constexpr std::string_view kRoll = "roll";

/// Every paper known, by name.
std::vector<Paper> papers();
std::optional<Paper> find_paper(std::string_view name);
/// What an office prints on where people measure in these units.
const Paper& office_paper(Units units);

// A job as read: every key with its default. The job file's reference is the contract that
// `swathe new` prints; the names here are its keys.

/// The slip fit where a job gives none and its covers are held by hook-and-loop, which lies behind
/// the boards. Common practice, no source.
inline constexpr Length kHookAndLoopFit = inches(3.0 / 16);

struct FrameKeys {
  std::vector<FlatPoint> corners;  ///< from above, counter-clockwise; side i runs from corner i
  std::vector<std::string> sides;  ///< one name a side: front, left, back, right of a rectangle
  Length fit = inches(1.0 / 16);   ///< slip fit between frame and boards, each side; see above
  Length floor_gap = inches(2);    ///< floor to the underside of the boards
  bool backed = true;              ///< the frame stands behind the boards as the season asks
};

enum class Joint { Lapped, Mitred };

struct BoardKeys {
  Length thickness = inches(23.0 / 32);
  Length height = inches(5);
  Joint joint = Joint::Lapped;
  std::vector<std::string> lapping = {"front", "back"};
  std::array<Length, 2> stock = {inches(48), inches(96)};
  Length kerf = inches(1.0 / 8);
  Length hard_depth;  ///< bolt heads and the like, out from the board's front
  double density_kg_m3 = 600;
};

enum class PaddingForm { Noodles, Block };
enum class PaddingCorner { Butted, Mitred, Bent };
enum class Core { Unstated, Solid, Hollow };

struct PaddingKeys {
  PaddingForm form = PaddingForm::Noodles;
  Length diameter = inches(2.5);
  int stack = 2;
  Core core = Core::Unstated;
  Length depth = inches(2.5);        ///< block
  Length height = inches(5);         ///< block
  Length edge_radius = inches(0.5);  ///< block
  PaddingCorner corner = PaddingCorner::Butted;
  bool filled = true;  ///< butted noodles: the hollows at corners, cloth and all
  std::vector<std::string> lapping = {"front", "back"};
  Length stock = inches(60);
  double density_kg_m3 = 30;
};

enum class Relief { Fold, Sewn };
enum class Fixing { Staples, HookAndLoop };

struct ClothColor {
  std::string name;
  Color srgb;
};

/// Covers that come off again, held to the boards' backs by hook-and-loop: [cloth.hook_and_loop].
struct HookAndLoopKeys {
  Length flap = inches(2.25);  ///< finished reach on to the back
  Length hem = inches(0.5);    ///< folded under beyond the flap
  Length strip = inches(1);    ///< width of the hook-and-loop
  double stretch = 0.01;       ///< taken out round the section, so that the cover pulls taut
  double density_kg_m2 = 0.7;  ///< of the strips, hooks and loops together
};

struct ClothKeys {
  Length thickness = mm(0.5);
  Length roll_width = inches(58);
  Length buy_step = inches(9);  ///< 1/4 yd
  Length shop_cut = inches(2);  ///< bought besides
  std::vector<ClothColor> colors = {{"red", {0xb5 / 255.0, 0x12 / 255.0, 0x1b / 255.0}},
                                    {"blue", {0x1b / 255.0, 0x3a / 255.0, 0x93 / 255.0}}};
  Length flap = inches(2);
  Length staple_line = inches(1);
  Length staple_spacing = inches(1.5);
  double stretch_along = 0.0;
  double stretch_around = 0.0;
  Relief relief = Relief::Fold;
  Length setback = inches(1.0 / 8);
  Length cut_clear = inches(1.0 / 4);
  Length seam = inches(0.5);
  Length end_reach = inches(2);
  bool may_join = false;
  /// Of cloth at hand, along the cover; unset: cut from the roll.
  std::optional<Length> longest_piece;
  bool may_lie_across = false;  ///< covers may lie across the roll
  bool one_way = false;         ///< pile, print or shine runs one way: all covers lie alike
  double density_kg_m2 = 0.35;
  double staple_g = 0.17;           ///< crown and legs of 10 mm, of steel wire 1.2 by 0.6 mm
  Fixing fixing = Fixing::Staples;  ///< how the flaps are held to the boards
  HookAndLoopKeys hook_and_loop;
};

/// A share of a side of the frame, counter-clockwise.
struct SideShare {
  double fraction = 0.5;
};

/// A distance along a side, from the corner that it shares with one of its two neighbors.
struct FromCorner {
  Length distance;
  std::string neighbor;  ///< the side on the other side of that corner
};

/// Where something is along a side: measured on the frame itself, without the play.
using SidePlace = std::variant<SideShare, FromCorner>;

/// A side without a bumper in its middle.
struct OpeningKeys {
  std::string side;
  Length width;      ///< finished, from cover to cover
  SidePlace center;  ///< the middle of the side
};

/// Where a bumper starts or ends: a side, and how far along it.
struct RunEnd {
  struct Corner {};   ///< out to the outer face where the side laps, else up to the neighbor
  struct Opening {};  ///< the near edge of the side's opening
  using Share = SideShare;
  std::string side;
  std::variant<Share, FromCorner, Corner, Opening> at;
};

/// Where along its side an end is told to be; nothing where a corner or an opening says it.
std::optional<SidePlace> place_on_side(const RunEnd& end);

struct BumperKeys {
  std::string name;
  RunEnd from, to;
  Length end_clearance = inches(1.0 / 4);
};

enum class BracketCloth { Under, Window };

struct BracketKeys {
  std::string side;
  SidePlace at;        ///< its center where a share, else the edge nearer the corner named
  std::string bumper;  ///< "" unsaid: it follows from the place
  Length width;
  Length height;
  Length down;  ///< from the board's top edge
  /// mm along from the edge nearer the corner that `at` or `holes_from` names, and mm down from the
  /// bracket's top edge.
  std::vector<FlatPoint> holes;
  std::string holes_from;  ///< the neighbor at that corner, where `at` is a share; "" unsaid
  BracketCloth cloth = BracketCloth::Under;
  Length clearance = inches(1.0 / 4);
  Length corner_radius = inches(1.0 / 4);
  std::optional<double> mass_g;  ///< with its screws, bolts and nuts
};

/// The neighboring side from whose corner a bracket and its holes are measured; "" where the job
/// names none: centered, and the holes alike from both ends.
const std::string& measured_from(const BracketKeys& bracket);

enum class NumeralMethod { Stencil, IronOn, SewOn, PaintMask };
enum class StencilFor { Digit, Number };

struct NumeralSpacing {
  bool tabular = false;
  Length extra;  ///< between digits, on top of the font's own
};

/// A place for the number chosen by hand.
struct NumeralPlaceKeys {
  std::string side;
  std::optional<SidePlace> center;  ///< unset: the free stretch's middle
  std::string bumper;               ///< "" unsaid: the only one on the side, or the one at `center`
  /// So many digits stand at the end of this bumper, the others at the start of the next one on the
  /// side; 0 for the whole number here.
  int split = 0;
};

struct NumeralKeys {
  std::string font = "Anton";
  std::map<std::string, double> axes;
  std::optional<Length> height;  ///< of the shortest digit; unset: the season's least plus 1/8 in
  std::optional<std::vector<std::string>> sides;  ///< unset: the program chooses
  std::vector<NumeralPlaceKeys> places;
  NumeralSpacing spacing;
  NumeralMethod method = NumeralMethod::Stencil;
  StencilFor stencil_for = StencilFor::Digit;
  Color color{1, 1, 1};
  Length outline;
  bool make_legal = false;
  Length bridge = inches(1.0 / 4);
  int spares = 0;
};

/// A box on the machine that hides cloth: frame coordinates, z from the floor.
struct BlindKeys {
  std::array<Length, 3> lo, hi;
};

struct SightKeys {
  std::vector<Length> distance = {inches(240), inches(480), inches(720)};
  std::vector<Length> eye_height = {inches(48), inches(63)};
  Angle step = degrees(1);  ///< narrower stretches of bearings are not told of
  Angle least_angle = Angle::from_arcmin(15);
  std::vector<BlindKeys> blind;
};

enum class PaperFace { Inside, Outside };

struct PaperKeys {
  std::string sheet = office_paper(Units::Inches).name;  ///< of the paper list, or "own size"
  Length width = office_paper(Units::Inches).width;
  Length height = office_paper(Units::Inches).height;
  Length margin = inches(0.5);
  Length overlap = inches(0.5);
  PaperFace face = PaperFace::Inside;
  /// What the test page's 100 mm scales came out as, across and down.
  std::optional<std::array<Length, 2>> measured;
};

/// Every other side from the first, so front and back of a rectangle: those that lap where a job
/// does not say. No two neighbors, also where the number of sides is odd.
std::vector<std::string> every_other(const std::vector<std::string>& sides);

/// Where each table and key stands in its file: "frame.width", "bumper.0.from", "bracket.2".
class Places {
 public:
  explicit Places(std::string file = "job") : file_(std::move(file)) {}
  void set(std::string key, Place place) { places_[std::move(key)] = std::move(place); }
  /// The key's own place, else that of the nearest table above it that is there, else 1:1; with the
  /// key, as set_value() takes it.
  Place of(std::string_view key) const;
  /// All of them with their keys, as the text has them; of those that begin together the innermost
  /// last.
  std::vector<Place> in_order() const;
  /// Whether the file has this very table or key.
  bool has(std::string_view key) const { return places_.contains(key); }

 private:
  std::string file_;
  std::map<std::string, Place, std::less<>> places_;
};

struct Job {
  // What the language would imply, compiled once: it is long, and many sources hold one.
  Job();
  Job(const Job&);
  Job(Job&&) noexcept;
  Job& operator=(const Job&);
  Job& operator=(Job&&) noexcept;
  ~Job();

  std::string title;
  std::string number;                    ///< "" where no numerals are wanted
  std::string season = newest_season();  ///< a rule set's name, "none", or a path to a rule file
  Units units = Units::Inches;
  FrameKeys frame;
  BoardKeys boards;
  PaddingKeys padding;
  ClothKeys cloth;
  std::vector<OpeningKeys> openings;
  std::vector<BumperKeys> bumpers;
  std::vector<BracketKeys> brackets;
  NumeralKeys numerals;
  SightKeys sight;
  PaperKeys paper;
  Places places;
  std::string source;  ///< the job file's name, no path
};

/// What a job file says, with everything that is wrong in it.
///
/// Where a key is at fault the job holds its default and the table is unsound, so that what the
/// other tables describe can still be judged in the same run.
struct JobReading {
  Job job;
  Refusals faults;                ///< by place in the file
  std::set<std::string> unsound;  ///< tables with a fault: "frame", "bumper.0", "bracket.2"

  bool sound(std::string_view table) const { return !unsound.contains(std::string(table)); }
};

/// Reads a job file's text. `file` is the name that stands in places, and, less its folder, in
/// Job::source.
///
/// Refuses (in `faults`): Malformed alone where the text is not TOML, TooLarge alone where it is
/// longer or deeper than is read (then no table is sound); else every unknown key (with
/// the nearest known one), wrong type, value out of range, missing key (a missing table at 1:1),
/// and feature not built yet.
JobReading read_job(std::string_view text, const std::string& file);

/// A job built in code, written as its text and read back: judged as a job file is. Its places are
/// those in job_text(job), of a file named as Job::source says, or "job".
JobReading read_again(const Job& job);

/// What is wrong with a job's keys and values, each at its place in job_text(job): all that
/// read_job() refuses. Whether its parts fit one another is make()'s to say.
Refusals check_job(const Job& job);

/// A job file that reads as this job: every key, lengths in millimeters to the last digit.
///
/// Holds: (1) read_job(job_text(job)) has no fault, for a job that was read without one
///        (2) job_text of what it reads is the same text
std::string job_text(const Job& job);

/// A job's text in which one value is changed, and every other byte is as it was.
struct ValueChange {
  std::string text;
  std::string key;            ///< "bumper.2.from", as the text spells it
  std::string before, after;  ///< the values as they stand in the text; empty where there is none
};

/// Gives a key of a job's text another value, or adds it: to its table after the last key there, or
/// in a table of its own.
///
/// `key` counts from 1 where there are many: "bumper.2.from". `value` is TOML, or the bare text of
/// a string; of a key that is always a text, such as job.number, whatever is not in quotes. `file`
/// stands in places.
///
/// Holds: (1) the new text parses as the old one does with that value in its place
///        (2) what it does not say is byte for byte as it was
///        (3) giving the old value back gives the old text
/// Refuses: what parse_toml refuses of the text; UnknownKey; WrongType (a table is no value, or
///   something else stands where its table should be); OutOfRange (a number past the next);
///   Malformed (a value that is no text).
Outcome<ValueChange> set_value(std::string_view text, std::string_view key, std::string_view value,
                               const std::string& file = "job");

/// Takes a key out of a job's text, with a comment on its line; comments above it stay.
///
/// Holds: (2) of set_value
/// Refuses: as set_value; Missing (the key is not there).
Outcome<ValueChange> remove_value(std::string_view text, std::string_view key,
                                  const std::string& file = "job");

/// The keys that say a part of the model, as set_value() takes them: "bumper.2.from". Where the job
/// leaves them out they are those that an edit of the part would add: of a number that is placed by
/// rule, a place by hand. None where the job has no such part.
///
/// Holds (keys_of_test.cpp): each is a key that set_value() takes.
std::vector<std::string> keys_of(const Subject& subject, const Job& job);

/// A commented job file that makes without change: what `swathe new` writes.
std::string_view new_job_text();

/// Whether a job gives a key.
enum class Given {
  Default,   ///< left out, it has the value shown
  Needed,    ///< the value shown is an example
  Optional,  ///< left out, there is none; the value shown is an example
};

/// What a key of the job file means, in the words of `swathe new`.
struct KeyWords {
  std::string key;         ///< "cloth.flap", "bumper.from"
  std::string_view value;  ///< as it stands in a job: "\"2 in\""
  std::string_view meaning;
  std::string_view why;  ///< a sentence
  Given given = Given::Default;
};

/// Every key there is, in the order of the new job.
std::vector<KeyWords> key_words();

// A new job, out of the answers to seven questions or like one of the examples. Whoever asks, on a
// terminal or in a page, only talks.

/// What somebody who starts a job is asked.
struct NewJobQuestion {
  std::string asks;     ///< in plain words
  std::string example;  ///< an answer, or several
  std::string usual;    ///< what an empty answer stands for, by the answers before
};

/// The questions in their order. What they say hangs on the answers given so far: an opening goes
/// with one bumper, millimeters go with A4.
std::vector<NewJobQuestion> new_job_questions(const std::vector<std::string>& answers = {});

/// The commented job file of these answers, which stand in the order of the questions. An empty
/// answer, or one that is left out at the end, is the usual one.
///
/// Holds (questions_test.cpp): (1) it reads without a fault and makes, and no rule of the newest
///   season fails; (2) what was not answered is not in it: no number, no title, no brackets
/// Refuses: each answer that is not understood, or does not go with those before it, at the line of
///   its question (1 to 7), with an answer that would.
Outcome<std::string> new_job(const std::vector<std::string>& answers);

/// The kinds of jobs there are to start from, by the names of the examples: "hexagon".
std::vector<std::string> job_kinds();

/// A job of that kind, for somebody's own sizes: without title, number and brackets.
/// Refuses: UnknownName, with the nearest and all of them.
Outcome<std::string> new_job_like(std::string_view kind);

}  // namespace swathe
