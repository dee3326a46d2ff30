// Takes one of many tables out of a job's text: "[[bracket]]", its keys and its tables below.
// Comments above it stay: they may be said of its neighbors too.

interface Header {
  line: number;
  path: string;
  many: boolean;
}

/** The lines that begin a table; none within a text of several lines. */
function headersOf(lines: readonly string[]): Header[] {
  const headers: Header[] = [];
  let within: string | null = null;
  lines.forEach((line, number) => {
    if (within === null) {
      const found = /^\s*(\[\[?)\s*([\w.\-"' ]+?)\s*\]\]?\s*(#.*)?$/.exec(line);
      if (found && !/[=,]/.test(line.split('#')[0]!))
        headers.push({ line: number, path: found[2]!.replace(/\s/g, ''), many: found[1] === '[[' });
    }
    for (let at = 0; at < line.length;) {
      const three = line.slice(at, at + 3);
      if (within !== null) {
        if (within === '"""' && line[at] === '\\') at += 2;
        else if (three === within) {
          within = null;
          at += 3;
        } else at += 1;
      } else if (three === '"""' || three === "'''") {
        within = three;
        at += 3;
      } else if (line[at] === '"' || line[at] === "'") {
        const quote = line[at]!;
        at += 1;
        while (at < line.length && line[at] !== quote) at += quote === '"' && line[at] === '\\' ? 2 : 1;
        at += 1;
      } else if (line[at] === '#') {
        break;
      } else {
        at += 1;
      }
    }
  });
  return headers;
}

/** The text without that table, counted from 1; nothing where it does not stand there as a block. */
export function withoutTable(text: string, path: string, number: number): string | null {
  const lines = text.split('\n');
  const headers = headersOf(lines);
  let count = 0;
  const at = headers.findIndex((one) => one.many && one.path === path && ++count === number);
  if (at < 0) return null;
  const next = headers.slice(at + 1).find((one) => !one.path.startsWith(`${path}.`));
  let begin = headers[at]!.line, end = next?.line ?? lines.length;
  // What stands above the next header is said of that one.
  while (end > begin + 1 && next && /^\s*(#.*)?$/.test(lines[end - 1]!)) end -= 1;
  // One empty line goes with it.
  if (end < lines.length && lines[end]!.trim() === '') end += 1;
  else if (begin > 0 && lines[begin - 1]!.trim() === '' && end >= lines.length) begin -= 1;
  return [...lines.slice(0, begin), ...lines.slice(end)].join('\n');
}
