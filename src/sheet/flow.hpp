#pragma once

#include <string>
#include <vector>

#include "sheet/page_head.hpp"
#include "swathe/job/job.hpp"
#include "swathe/sheet/drawing.hpp"
#include "swathe/sheet/furniture.hpp"
#include "swathe/type/face.hpp"

namespace swathe {

/// Headings, words, tables and cautions set one below the other, over as many pages of the job's
/// paper as they take.
class Flow {
 public:
  Flow(const PaperKeys& paper, const Face& labels, PageHead head);

  /// Never left alone at the foot of a page.
  void heading(const std::string& words);
  /// Nor are these where a table comes next.
  void words(const std::string& words);
  /// Numbered steps, each kept whole.
  void steps(const std::vector<std::string>& steps);
  void table(const Table& table);
  void caution(const std::string& words);

  /// Every page with its head. The flow is empty afterwards.
  std::vector<Page> pages();

 private:
  struct Item {
    enum class Kind { Heading, Words, Step, Table, Caution } kind;
    std::string words;
    std::string number;  ///< of a step
    Table table;
  };
  std::vector<Page> set(std::size_t of) const;

  PaperKeys paper_;
  Face labels_;
  PageHead head_;
  std::vector<Item> items_;
};

}  // namespace swathe
