#include "book/book_sheet.hpp"

#include "book/chapters.hpp"
#include "book/texts.hpp"
#include "book/words.hpp"

namespace swathe {

using book_texts::say;

SheetName book_name(const PaperKeys& paper) {
  return {"book", say("book.title"), SheetKind::Book, paper.sheet};
}

Sheet book_sheet(const Made& made, const PaperKeys& paper, const Font& labels) {
  const bool inches = made.job.units == Units::Inches;
  PageHead head;
  head.title = {
      made.job.title,
      say("chapter.built"),
      "",
      {say(inches ? "head.inches" : "head.millimeters") + " " +
           say(made.job.cloth.fixing == Fixing::HookAndLoop ? "head.one-set" : "head.set-a-color"),
       say("head.colors", {{"colors", color_words(made)}}),
       say(inches ? "head.nearest-inches" : "head.nearest-millimeters")}};
  Flow flow(paper, labels, head);
  for (const auto add :
       {add_sketch, add_shopping, add_boards, add_padding, add_cloth, add_numerals, add_lay,
        add_fastening, add_order_of_work, add_inspectors_card, add_labels})
    add(made, flow);
  return {book_name(paper), flow.pages()};
}

}  // namespace swathe
