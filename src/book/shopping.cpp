#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "book/chapters.hpp"
#include "book/hook_and_loop.hpp"
#include "book/words.hpp"
#include "swathe/rules/weight.hpp"

namespace swathe {
namespace {

/// Up to the next whole inch, or centimeter: what a shop measures off.
Length bought(double length_mm, Units units) {
  const double step = units == Units::Inches ? inches(1).mm() : 10.0;
  return mm(std::ceil(length_mm / step - 1e-6) * step);
}

/// "90 in (2 1/2 yd)": cloth is sold by the yard where it is measured in inches.
std::string cloth_words(const ClothLay& lay, Units units) {
  std::string length = exact(mm(lay.length_to_buy), units);
  if (units != Units::Inches) return length;
  return fmt::format("{} ({})", length, yards(mm(lay.length_to_buy)));
}

void add_stock(const Made& made, Flow& flow) {
  const Job& job = made.job;
  const Stock& stock = made.stock;
  const auto full = [&](Length length) { return exact(length, job.units); };
  flow.heading("To buy, for all colors");
  Table table;
  table.columns = {{"what"}, {"how much"}, {"of", Anchor::Left, 88}, {"used", Anchor::Right}};
  if (stock.sheets > 0)
    table.rows.push_back({"boards", counted(stock.sheets, "sheet"),
                          fmt::format("{} by {}, {} thick", full(job.boards.stock[0]),
                                      full(job.boards.stock[1]), full(job.boards.thickness)),
                          share_words(stock.sheets_used)});
  if (!stock.padding.sticks.empty())
    table.rows.push_back({"padding",
                          counted(static_cast<int>(stock.padding.sticks.size()), padding_noun(job)),
                          padding_words(job) + ", " + full(job.padding.stock) + " long",
                          share_words(stock.padding.used_fraction)});
  for (const ClothLay& lay : stock.cloth)
    table.rows.push_back(
        {lay.color + " cloth", cloth_words(lay, job.units),
         fmt::format("roll {} wide inside the selvedges", full(mm(lay.roll_width))),
         share_words(lay.used_fraction)});
  std::size_t staples = 0;
  for (const Pattern& pattern : made.patterns) staples += pattern.staples.size();
  if (staples > 0)
    table.rows.push_back({"staples",
                          std::to_string(staples * static_cast<std::size_t>(cover_sets(made))),
                          "and some to spare; crown 10 mm, shorter than the board is thick"});
  if (const double strips = strip_length(made); strips > 0)
    for (const bool soft : {true, false})
      table.rows.push_back(
          {soft ? "loop strip" : "hook strip",
           full(bought(strips * (soft ? cover_sets(made) : padded_sets(job)), job.units)),
           fmt::format("{} wide, {}", full(job.cloth.hook_and_loop.strip),
                       soft ? "the softer half, sewn on" : "the other half, for the boards")});
  flow.table(table);
}

void add_weights(const Made& made, Flow& flow) {
  const auto words = [&](double grams) { return weight_words(grams, made.job.units); };
  flow.heading("Weight, by the job's densities");
  Table table;
  table.columns = {{"bumper"},
                   {"boards", Anchor::Right},
                   {"padding", Anchor::Right},
                   {"cloth", Anchor::Right},
                   {"fasteners", Anchor::Right},
                   {"together", Anchor::Right}};
  const auto row = [&](const std::string& name, const BumperWeight& one) {
    table.rows.push_back({name, words(one.boards_g), words(one.padding_g), words(one.cloth_g),
                          words(one.fasteners_g), words(one.together_g())});
  };
  for (const BumperWeight& one : made.stock.weights) row(one.bumper, one);
  row("one set", made.stock.set);
  flow.table(table);
  std::string limit = "Put a finished set on a scale.";
  if (const int unknown = made.stock.set.unknown_brackets; unknown > 0)
    limit += fmt::format(" {}, whose mass the job does not say, {} on top.",
                         counted(unknown, "bracket"), unknown == 1 ? "comes" : "come");
  if (made.season && made.season->weight_set)
    limit +=
        fmt::format(" {}, {}: one set at most {}.", made.season->name,
                    made.season->weight_set->rule, words(made.season->weight_set->value.grams));
  if (made.season && made.season->weight_machine)
    limit += fmt::format(" {}, {}: the machine with its bumpers at most {}.", made.season->name,
                         made.season->weight_machine->rule,
                         words(made.season->weight_machine->value.grams));
  flow.words(limit);
}

}  // namespace

void add_shopping(const Made& made, Flow& flow) {
  add_stock(made, flow);
  add_weights(made, flow);
}

}  // namespace swathe
