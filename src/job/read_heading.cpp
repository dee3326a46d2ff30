#include "job/read_tables.hpp"

namespace swathe {

void read_heading(TableReader& root) {
  root.require("job", "the table [job]");
  Job& job = root.file().job();
  TableReader in(root.file(), root.table("job"), "job", "job.");
  read_keys(in, job);
  in.finish();
  root.file().units = job.units;
}

}  // namespace swathe
