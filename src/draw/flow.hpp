#pragma once

#include <string>
#include <vector>

#include "draw/furniture.hpp"
#include "draw/page_head.hpp"
#include "swathe/draw.hpp"
#include "swathe/job.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// A drawing and the room it takes.
struct Picture {
  Drawing drawing;
  plane::Box box;
};

/// Headings, words, tables, cautions and pictures set one below the other, over as many pages of
/// the job's paper as they take.
class Flow {
 public:
  /// Every page has the head; what is below its subject stands on the first page alone.
  Flow(const PaperKeys& paper, const Font& labels, PageHead head);

  /// Continues on a new page. Each of a chapter's pages names it.
  void chapter(const std::string& name);
  /// Headings, cautions, and words before a table or a picture stay on one page with what follows.
  void heading(const std::string& words);
  void words(const std::string& words);
  void caution(const std::string& words);
  /// Rows are kept whole; a large table may go over pages, its headings on each. Where it is wider
  /// than the page it is lettered smaller, and then its widest columns give way.
  void table(const Table& table, double height_mm = kTextHeight);
  void picture(Picture picture);

  /// Across a page.
  double width() const { return room_.width(); }
  /// Down a page, below its head.
  double height() const { return room_.height(); }
  const Font& labels() const { return labels_; }

  /// Every page with its head. The flow is empty afterwards.
  std::vector<Page> pages();

 private:
  struct Item {
    enum class Kind { Chapter, Heading, Words, Table, Caution, Picture } kind;
    std::string words;  ///< of a chapter
    Picture picture;    ///< of all but chapters and tables
    Table table;
    double height_mm = 0;  ///< of its lettering
    double whole_mm = 0;   ///< height of a table that is not split
  };
  PageHead head_of(std::size_t page, std::size_t of, const std::string& chapter) const;
  bool leads(std::size_t item) const;
  double wanted(std::size_t item, double after) const;

  PaperKeys paper_;
  Font labels_;
  PageHead head_;
  plane::Box room_;  ///< of a page that is not the first
  std::vector<Item> items_;
};

}  // namespace swathe
