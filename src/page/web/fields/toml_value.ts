// Values of a job's text that are more than one word: read for the parts of a field, and written back.

export type TomlValue = string | number | boolean | TomlValue[] | { [name: string]: TomlValue };

class Reader {
  private at = 0;
  constructor(private readonly text: string) {}

  whole(): TomlValue {
    const value = this.value();
    this.blank();
    if (this.at < this.text.length) throw new SyntaxError('more after the value');
    return value;
  }

  private blank(): void {
    for (;;) {
      const sign = this.text[this.at];
      if (sign === '#') while (this.at < this.text.length && this.text[this.at] !== '\n') ++this.at;
      else if (sign !== undefined && /\s/.test(sign)) ++this.at;
      else return;
    }
  }
  private take(sign: string): boolean {
    this.blank();
    if (!this.text.startsWith(sign, this.at)) return false;
    this.at += sign.length;
    return true;
  }

  private value(): TomlValue {
    this.blank();
    if (this.take('[')) return this.list();
    if (this.take('{')) return this.table();
    const sign = this.text[this.at];
    if (sign === '"' || sign === "'") return this.quoted();
    const bare = /^[^\s,\]}#]+/.exec(this.text.slice(this.at))?.[0] ?? '';
    this.at += bare.length;
    if (bare === 'true' || bare === 'false') return bare === 'true';
    const number = Number(bare.replaceAll('_', ''));
    if (bare === '' || Number.isNaN(number)) throw new SyntaxError('no value');
    return number;
  }
  private list(): TomlValue[] {
    const items: TomlValue[] = [];
    while (!this.take(']')) {
      items.push(this.value());
      if (!this.take(',')) {
        if (this.take(']')) break;
        throw new SyntaxError('a list that does not end');
      }
    }
    return items;
  }
  private table(): { [name: string]: TomlValue } {
    const table: { [name: string]: TomlValue } = Object.create(null);
    while (!this.take('}')) {
      this.blank();
      const sign = this.text[this.at];
      let name: string;
      if (sign === '"' || sign === "'") name = this.quoted();
      else {
        name = /^[\w-]+/.exec(this.text.slice(this.at))?.[0] ?? '';
        this.at += name.length;
      }
      if (name === '' || !this.take('=')) throw new SyntaxError('no name');
      table[name] = this.value();
      if (!this.take(',')) {
        if (this.take('}')) break;
        throw new SyntaxError('a table that does not end');
      }
    }
    return table;
  }
  private quoted(): string {
    const quote = this.text[this.at++]!;
    const begin = this.at;
    if (quote === "'") {
      const end = this.text.indexOf("'", begin);
      if (end < 0) throw new SyntaxError('a text that does not end');
      this.at = end + 1;
      return this.text.slice(begin, end);
    }
    let read = '';
    for (;;) {
      const sign = this.text[this.at++];
      if (sign === undefined || sign === '\n') throw new SyntaxError('a text that does not end');
      if (sign === '"') return read;
      if (sign !== '\\') read += sign;
      else {
        const escape = this.text[this.at++] ?? '';
        const length = { u: 4, U: 8 }[escape];
        if (length) {
          read += String.fromCodePoint(parseInt(this.text.slice(this.at, this.at + length), 16));
          this.at += length;
        } else {
          read += { n: '\n', t: '\t', r: '\r', b: '\b', f: '\f' }[escape] ?? escape;
        }
      }
    }
  }
}

/** The value that a text is; nothing where it is none. */
export function readToml(text: string): TomlValue | undefined {
  try {
    return new Reader(text).whole();
  } catch {
    return undefined;
  }
}

function writtenText(text: string): string {
  const escaped = text.replace(/["\\\u0000-\u001f\u007f]/g, (sign) =>
    sign === '"' || sign === '\\' ? `\\${sign}` : `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`);
  return `"${escaped}"`;
}

/** On one line, as a job has it. */
export function writeToml(value: TomlValue): string {
  if (typeof value === 'string') return writtenText(value);
  if (typeof value !== 'object') return String(value);
  if (Array.isArray(value)) return `[${value.map(writeToml).join(', ')}]`;
  const parts = Object.entries(value).map(([name, one]) =>
    `${/^[A-Za-z0-9_-]+$/.test(name) ? name : writtenText(name)} = ${writeToml(one)}`);
  return parts.length === 0 ? '{}' : `{ ${parts.join(', ')} }`;
}

/** A text as a person writes a list: "48 in, 96 in". */
export function listShown(value: TomlValue | undefined): string {
  return Array.isArray(value) ? value.map((one) => (Array.isArray(one) ? one.join(' x ') : String(one))).join(', ')
    : value === undefined ? '' : String(value);
}

/** A value as a button says it: without quotes and brackets. */
export function valueWords(value: string): string {
  const read = readToml(value);
  return Array.isArray(read) ? listShown(read) : typeof read === 'string' ? read : value;
}
