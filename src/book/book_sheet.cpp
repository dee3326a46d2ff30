#include "swathe/book/book_sheet.hpp"

#include <fmt/format.h>

#include "book/chapters.hpp"
#include "book/words.hpp"

namespace swathe {

SheetName book_name(const PaperKeys& paper) {
  return {"book", "build book", SheetKind::Book, paper.sheet};
}

Sheet book_sheet(const Made& made, const PaperKeys& paper, const Font& labels) {
  const bool inches = made.job.units == Units::Inches;
  PageHead head;
  head.title = {made.job.title,
                "build book: what is built",
                "",
                {fmt::format("All figures in {}; {}", inches ? "inches" : "mm",
                             made.job.cloth.fixing == Fixing::HookAndLoop
                                 ? "one set of boards and padding, its covers are changed"
                                 : "one set is one color"),
                 fmt::format("colors: {}", color_words(made)),
                 inches ? "(+1/32): so much more than the figure says; (-1/32): less"
                        : "(+0.5): so much more than the figure says; (-0.5): less"}};
  Flow flow(paper, labels, head);
  for (const auto add :
       {add_sketch, add_shopping, add_boards, add_padding, add_cloth, add_numerals, add_lay,
        add_fastening, add_order_of_work, add_inspectors_card, add_labels})
    add(made, flow);
  return {book_name(paper), flow.pages()};
}

}  // namespace swathe
