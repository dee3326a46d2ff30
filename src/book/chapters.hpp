#pragma once

#include "draw/flow.hpp"
#include "swathe/make.hpp"
#include "swathe/sheet.hpp"

// The chapters of the build book, each for one pair of hands: its pages can be given away.
namespace swathe {

/// Plan, verdict, what to print, order of work: the book's first page, and a sheet of its own.
void add_start(const Made& made, const PrintWays& ways, Flow& flow);
void add_sketch(const Made& made, Flow& flow);     ///< plan and section, measured
void add_shopping(const Made& made, Flow& flow);   ///< stock and weights; goes on
void add_boards(const Made& made, Flow& flow);     ///< list, cuts, pencil marks, brackets
void add_padding(const Made& made, Flow& flow);    ///< the same, and the fill of corners; goes on
void add_cloth(const Made& made, Flow& flow);      ///< the covers
void add_numerals(const Made& made, Flow& flow);   ///< goes on below the cloth
void add_lay(const Made& made, Flow& flow);        ///< how the covers lie on the roll; goes on
void add_fastening(const Made& made, Flow& flow);  ///< staples or hook-and-loop
void add_order_of_work(const Made& made, Flow& flow);    ///< steps, tools, what has to dry
void add_inspectors_card(const Made& made, Flow& flow);  ///< nothing where there is no season
void add_labels(const Made& made, Flow& flow);           ///< to cut out and pin on

}  // namespace swathe
