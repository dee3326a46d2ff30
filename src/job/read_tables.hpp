#pragma once

#include "job/read_keys.hpp"

// One reader for each table of the job file. `root` is the whole file; they run in this order, as
// the later ones refer to names and units that the earlier ones read.
namespace swathe {

void read_heading(TableReader& root);  ///< [job]
void read_frame(TableReader& root);
void read_boards(TableReader& root);
void read_padding(TableReader& root);
void read_cloth(TableReader& root);
void read_openings(TableReader& root);
void read_bumpers(TableReader& root);
void read_brackets(TableReader& root);
void read_numerals(TableReader& root);
void read_sight(TableReader& root);
void read_paper(TableReader& root);

/// All of them.
void read_tables(TableReader& root);

}  // namespace swathe
