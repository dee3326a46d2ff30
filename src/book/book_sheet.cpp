#include "book/book_sheet.hpp"

#include "book/chapters.hpp"
#include "book/start_sheet.hpp"
#include "book/texts.hpp"

namespace swathe {

using book_texts::say;

SheetName book_name(const PaperKeys& paper) {
  return {"book", say("book.title"), SheetKind::Book, paper.sheet};
}

Sheet book_sheet(const Made& made, const PrintWays& ways, const PaperKeys& paper,
                 const Font& labels) {
  Flow flow(paper, labels, start_head(made, say("chapter.start")));
  add_start(made, ways, flow);
  for (const auto add :
       {add_sketch, add_shopping, add_boards, add_padding, add_cloth, add_numerals, add_lay,
        add_fastening, add_order_of_work, add_inspectors_card, add_labels})
    add(made, flow);
  return {book_name(paper), flow.pages()};
}

Sheet book_sheet(const Made& made, const PaperKeys& paper, const Font& labels) {
  return book_sheet(made, print_ways(made, labels), paper, labels);
}

}  // namespace swathe
