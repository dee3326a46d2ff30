#pragma once

#include "page/core/session.hpp"

// What a page may ask, a function each. A request is {"ask": name, ...}; what more is in it, and
// what is said, stands here. Those that need the open job throw where there is none.
namespace swathe::page {

Outcome<Answer> ask(Session& session, const Json& request);

// findings.cpp
/// {"season", "findings": [{"id", "rule", "subject", "required", "measured", "verdict", "attested",
/// "advice", "subjects", "keys": [{"key", "line", "column"}], "mend"}]}, worst first.
Outcome<Answer> findings(Session& session, const Json& request);
/// Bytes: report.json as the command writes it.
Outcome<Answer> report(Session& session, const Json& request);

// sheets.cpp
/// [{"stem", "title", "kind", "files", "paper", "bumper"}] in the order of work; "files" is the
/// kind of file.
Outcome<Answer> sheets(Session& session, const Json& request);
/// {"sheet": stem}: [{"name", "width_mm", "height_mm"}].
Outcome<Answer> pages(Session& session, const Json& request);
/// {"sheet", "page": from 0}: bytes, as to_svg().
Outcome<Answer> page_svg(Session& session, const Json& request);
/// {"sheet", "created"}: bytes, as to_pdf().
Outcome<Answer> sheet_pdf(Session& session, const Json& request);
/// What to print: {"first", "numerals", "book": files, "ways": [{"kind", "words", "sheets",
/// "files": [{"name", "pages", "paper", "bumper"}], "pages"}], "notes"}.
Outcome<Answer> ways(Session& session, const Json& request);

// screen.cpp
//
// Pictures for a screen, each as bytes: an SVG element; where the last job that was asked for could
// not be made, of the one before. All take {"width", "height", "text":
// pixels, "window": [x, y, x, y] of the part to show, in the picture's millimeters}; what is not
// said is as ScreenOptions has it.
Outcome<Answer> plan(Session& session, const Json& request);
/// {"bumper": name, "as_printed"}.
Outcome<Answer> cover(Session& session, const Json& request);
Outcome<Answer> cut_through(Session& session, const Json& request);
/// An observer is {"bearing": degrees, "distance", "eye_height": mm, "color": from 0}; what is not
/// said is as first_observer() has it.
/// {an observer, "all_round"}: the machine of one size for all bearings.
Outcome<Answer> view(Session& session, const Json& request);
/// {an observer}.
Outcome<Answer> chart(Session& session, const Json& request);
/// {an observer}: {"way", "reads": "number", "another" or "nothing", "text", "out_to_mm", "words",
/// "subjects", and the observer}.
Outcome<Answer> verdict(Session& session, const Json& request);
/// The same from straight ahead, the left, behind and the right.
Outcome<Answer> verdicts(Session& session, const Json& request);

// files.cpp
/// {"name", "created"}: bytes of one of the files that the command writes.
Outcome<Answer> file(Session& session, const Json& request);
/// {"kinds": words, all where they are not said; "created"}: begins with the first of the files.
Outcome<Answer> begin_files(Session& session, const Json& request);
/// {"name", "kind", "pages", "paper", "what"} and bytes; null after the last.
Outcome<Answer> next_file(Session& session, const Json& request);
/// {"add": names of given files to add}: bytes, those of `swathe make --zip` where none is added.
Outcome<Answer> archive(Session& session, const Json& request);

// job_text.cpp
/// {"text"}: names of the files that a job names.
Outcome<Answer> named_files(Session& session, const Json& request);
/// {"text", "file"}: faults of the text and its keys alone, [] where it has none.
Outcome<Answer> read(Session& session, const Json& request);
/// {"text", "key", "value", "file"}: {"text", "key", "before", "after"}.
Outcome<Answer> set(Session& session, const Json& request);
/// {"text", "key", "file"}: the same.
Outcome<Answer> remove(Session& session, const Json& request);
/// {"text", "subject"}: [{"key", "line", "column"}]; [] where there is no such subject.
Outcome<Answer> keys_of_subject(Session& session, const Json& request);

// form.cpp
/// {"text", "file"}: [{"key", "form", "given", "value", "shown", "line", "column"}], as
/// fields_of().
Outcome<Answer> fields(Session& session, const Json& request);
/// {"text", "key", "typed", "steps", "file"}: {"value", "reads"}, as typed_value().
Outcome<Answer> typed(Session& session, const Json& request);
/// {"text", "subjects": of a handle, "mm", "snap": false of the fine steps, "file"}: {"text",
/// "changes", "mm", "words"}, as moved(), by the handles of the job that was open last.
Outcome<Answer> move(Session& session, const Json& request);
Outcome<Answer> said_from_corner(Session& session, const Json& request);
/// By key: {"label", "form": {"kind", "range", "unit", "words", "counts"}}.
Json key_forms_json();
/// [{"path", "counts"}] of the tables that may be there many times.
Json table_forms_json();

// words.cpp
/// {"keys": [{"key", "value", "given", "meaning", "why", "label", "form"}], "checks": [{"id",
/// "asks", "why"}], "tables": [{"path", "counts"}]}.
Outcome<Answer> words(Session& session, const Json& request);
/// {"version", "fonts": [{"name", "note", "axes"}], "papers", "seasons"}.
Outcome<Answer> choices(Session& session, const Json& request);
/// The commented job that `swathe new` writes: {"text"}.
Outcome<Answer> new_text(Session& session, const Json& request);

// new_job.cpp
/// {"answers"}: [{"asks", "example", "usual"}], by the answers given so far.
Outcome<Answer> questions(Session& session, const Json& request);
/// {"answers"}: {"text"}. Refuses as new_job(): a fault's line is the number of its question.
Outcome<Answer> job_of_answers(Session& session, const Json& request);
/// Names of the kinds of jobs that there are to start from.
Outcome<Answer> kinds(Session& session, const Json& request);
/// {"kind"}: {"text"}.
Outcome<Answer> job_of_kind(Session& session, const Json& request);

// fonts.cpp
/// Bytes: the font in which labels are set.
Outcome<Answer> label_letters(Session& session, const Json& request);
/// {"name": of a given file}: {"name", "axes"}. Refuses as Font::open, and digits that it lacks.
Outcome<Answer> look_at_font(Session& session, const Json& request);

}  // namespace swathe::page
