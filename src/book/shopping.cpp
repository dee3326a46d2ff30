#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>

#include "book/chapters.hpp"
#include "book/hook_and_loop.hpp"
#include "book/texts.hpp"
#include "book/words.hpp"
#include "rules/practice.hpp"
#include "rules/weight.hpp"

namespace swathe {
namespace {

using book_texts::say;

constexpr double kKind = 110.0;  ///< width of a column

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

std::string cloth_kind(const ClothLay& lay, Units units) {
  const std::string width = exact(mm(lay.roll_width), units);
  if (lay.shop_cut <= 0) return say("buy.cloth-kind", {{"width", width}});
  return say("buy.cloth-kind-crooked",
             {{"width", width}, {"length", dimension_with_unit(mm(lay.shop_cut), units)}});
}

std::string screws_kind(const Screws& screws, Units units) {
  const std::string length = exact(screws.length, units);
  if (units == Units::Inches)
    return say("buy.screws-kind-inches",
               {{"number", std::to_string(screws.number)}, {"length", length}});
  return say("buy.screws-kind-millimeters",
             {{"across", plain_number(screws.across.mm(), 1)}, {"length", length}});
}

/// The longest legs sold that stay inside the board, mm; the shortest where none does.
double staple_legs(const Job& job) {
  for (const Length legs : practice::kStapleLegs)
    if (legs + practice::kLegStopsBefore <= job.boards.thickness) return legs.mm();
  return std::rbegin(practice::kStapleLegs)->mm();
}

std::string share_words(double share) { return say("share.percent", {{"share", percent(share)}}); }

std::string padding_words(const Job& job) {
  const auto full = [&](Length length) { return exact(length, job.units); };
  const PaddingKeys& padding = job.padding;
  if (padding.form == PaddingForm::Noodles)
    return say("buy.noodles-kind",
               {{"diameter", full(padding.diameter)}, {"length", full(padding.stock)}});
  return say("buy.blocks-kind", {{"depth", full(padding.depth)},
                                 {"height", full(padding.height)},
                                 {"length", full(padding.stock)}});
}

void add_stock(const Made& made, Flow& flow) {
  const Job& job = made.job;
  const Stock& stock = made.stock;
  const auto full = [&](Length length) { return exact(length, job.units); };
  flow.heading(say("buy.heading"));
  Table table;
  table.columns = {{say("buy.column-what")},
                   {say("buy.column-how-much")},
                   {say("buy.column-kind"), draw::Anchor::Left, kKind},
                   {say("buy.column-used"), draw::Anchor::Right}};
  if (stock.sheets > 0)
    table.rows.push_back({say("buy.boards"), counted_sheets(stock.sheets),
                          say("buy.boards-kind", {{"length", full(job.boards.stock[0])},
                                                  {"width", full(job.boards.stock[1])},
                                                  {"thickness", full(job.boards.thickness)}}),
                          share_words(stock.sheets_used)});
  if (stock.screws.count > 0)
    table.rows.push_back({say("buy.screws"), std::to_string(stock.screws.count),
                          screws_kind(stock.screws, job.units)});
  if (!stock.padding.sticks.empty())
    table.rows.push_back({say("buy.padding"),
                          counted_padding(static_cast<int>(stock.padding.sticks.size()), job),
                          padding_words(job), share_words(stock.padding.used_fraction)});
  for (const ClothLay& lay : stock.cloth)
    table.rows.push_back({say("buy.cloth", {{"color", lay.color}}), cloth_words(lay, job.units),
                          cloth_kind(lay, job.units), share_words(lay.used_fraction)});
  std::size_t staples = 0;
  for (const Pattern& pattern : made.patterns) staples += pattern.staples.size();
  if (staples > 0)
    table.rows.push_back({say("buy.staples"),
                          std::to_string(staples * static_cast<std::size_t>(cover_sets(made))),
                          say("buy.staples-kind", {{"legs", plain_number(staple_legs(job), 0)}})});
  if (const double strips = strip_length(made); strips > 0)
    for (const bool soft : {true, false})
      table.rows.push_back(
          {say(soft ? "buy.loop-strip" : "buy.hook-strip"),
           full(bought(strips * (soft ? cover_sets(made) : padded_sets(job)), job.units)),
           say(soft ? "buy.loop-strip-kind" : "buy.hook-strip-kind",
               {{"width", full(job.cloth.hook_and_loop.strip)}})});
  flow.table(table);
}

void add_weights(const Made& made, Flow& flow) {
  const auto words = [&](double grams) { return weight_words(grams, made.job.units); };
  flow.heading(say("weight.heading"));
  std::vector<std::string> notes = {say("weight.scale")};
  if (const int unknown = made.stock.set.unknown_brackets; unknown > 0)
    notes.push_back(unknown == 1 ? say("weight.one-unknown")
                                 : say("weight.unknown", {{"number", std::to_string(unknown)}}));
  if (made.season && made.season->weight_set)
    notes.push_back(
        say("weight.most-of-set", {{"season", made.season->name},
                                   {"rule", made.season->weight_set->rule},
                                   {"weight", words(made.season->weight_set->value.grams)}}));
  if (made.season && made.season->weight_machine)
    notes.push_back(say("weight.most-of-machine",
                        {{"season", made.season->name},
                         {"rule", made.season->weight_machine->rule},
                         {"weight", words(made.season->weight_machine->value.grams)}}));
  flow.words(listed(notes, " "));
  Table table;
  table.columns = {{say("column.bumper")},
                   {say("column.boards"), draw::Anchor::Right},
                   {say("column.padding"), draw::Anchor::Right},
                   {say("column.cloth"), draw::Anchor::Right},
                   {say("weight.column-fasteners"), draw::Anchor::Right},
                   {say("weight.column-all"), draw::Anchor::Right}};
  const auto row = [&](const std::string& name, const BumperWeight& one) {
    table.rows.push_back({name, words(one.boards_g), words(one.padding_g), words(one.cloth_g),
                          words(one.fasteners_g), words(one.together_g())});
  };
  for (const BumperWeight& one : made.stock.weights) row(one.bumper, one);
  row(say("row.one-set"), made.stock.set);
  flow.table(table);
}

}  // namespace

void add_shopping(const Made& made, Flow& flow) {
  add_stock(made, flow);
  add_weights(made, flow);
}

}  // namespace swathe
