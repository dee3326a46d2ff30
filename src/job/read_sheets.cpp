#include "base/print.hpp"
#include "job/read_tables.hpp"
#include "job/spelling.hpp"
#include "swathe/job.hpp"

// Who looks and on what it is printed: [sight] and [paper].
namespace swathe {
namespace {

void read_blinds(TableReader& in, std::vector<BlindKeys>& blinds) {
  in.tables("blind", [&](const toml::table& table, int i) {
    TableReader one(in.file(), &table, "sight", fmt::format("sight.blind {}: ", i + 1));
    BlindKeys blind;
    if (one.require("box", "its two far corners, [[x, y, z], [x, y, z]]")) {
      const OfPoints& of = one.held<OfPoints>("box");
      const toml::node& node = *one.take("box");
      const std::string what = one.name_of("box");
      if (const auto* list = one.read_list(node, what, "corners", of.count)) {
        const auto lo = one.read_lengths<3>((*list)[0], what, of.range);
        const auto hi = one.read_lengths<3>((*list)[1], what, of.range);
        if (lo && hi) {
          bool grows = true;
          for (std::size_t k = 0; k < 3; ++k) grows = grows && (*lo)[k] < (*hi)[k];
          if (grows)
            blind = {*lo, *hi};
          else
            one.wrong(Why::OutOfRange, node, what, "each of x, y and z less in the first corner");
        }
      }
    }
    one.finish();
    blinds.push_back(blind);
  });
}

std::string paper_names() {
  std::string all;
  for (const Paper& paper : papers()) all += fmt::format("\"{}\", ", paper.name);
  return all;
}

void read_sheet(TableReader& in, PaperKeys& paper) {
  const LengthRange& range = in.held<OfPaper>("sheet").range;
  const toml::node* node = in.take("sheet");
  if (!node) return;
  if (const auto name = node->value_exact<std::string>()) {
    if (same_but_for_case(*name, kRoll)) {
      paper.sheet = kRoll;
      paper.height = range.most;
      if (in.require("width", "how wide the roll is, like \"36 in\""))
        in.read("width", paper.width);
    } else if (const auto found = find_paper(*name)) {
      paper.sheet = found->name;
      paper.width = found->width;
      paper.height = found->height;
    } else {
      in.wrong(Why::UnknownName, *node, "paper.sheet",
               fmt::format("{}\"{}\" or [width, height]", paper_names(), kRoll));
    }
  } else if (const auto size = in.read_lengths<2>(*node, "paper.sheet", range)) {
    paper.sheet = kOwnSize;
    paper.width = (*size)[0];
    paper.height = (*size)[1];
  }
}

/// Of paper that comes off no roll.
void refuse_width(TableReader& in, const PaperKeys& paper) {
  if (paper.sheet == kRoll) return;
  if (const toml::node* width = in.take("width"))
    in.wrong(Why::OutOfRange, *width, "paper.width",
             fmt::format("none where the sheet is no \"{}\"", kRoll));
}

}  // namespace

void read_sight(TableReader& root) {
  TableReader in(root.file(), root.table("sight"), "sight", "sight.");
  read_keys(in, root.file().job().sight,
            [&](std::string_view, std::vector<BlindKeys>& blinds) { read_blinds(in, blinds); });
  in.finish();
}

void read_paper(TableReader& root) {
  JobFile& file = root.file();
  PaperKeys& paper = file.job().paper;
  TableReader in(file, root.table("paper"), "paper", "paper.");
  read_keys(in, paper, [&](std::string_view, std::tuple<std::string&, Length&, Length&>) {
    read_sheet(in, paper);
    refuse_width(in, paper);
  });
  in.finish();

  const Length shorter = std::min(paper.width, paper.height);
  const Length printed = shorter - 2 * paper.margin - paper.overlap;
  if (!file.reading.sound("paper") || printed >= kLeastPrinted) return;
  file.fault(Why::DoesNotFit,
             fmt::format("paper.margin and paper.overlap leave {} of the sheet's {}, expected at "
                         "least {}",
                         exact(printed, file.units), exact(shorter, file.units),
                         exact(kLeastPrinted, file.units)),
             file.job().places.of("paper.margin"), "paper");
  const PaperKeys fallback;
  paper.margin = fallback.margin;
  paper.overlap = fallback.overlap;
}

}  // namespace swathe
