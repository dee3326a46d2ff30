// What the lines of a job's text say: which keys, and so which parts of the model.
import type { FieldValue, Finding } from 'swathe';
import { subjectsOf } from '../fields/subjects';
import { notMetWords } from '../rules/not_met';

const kHeader = /^\s*(\[\[?)\s*([\w-]+(?:\.[\w-]+)*)\s*\]\]?\s*(?:#.*)?$/;
const kEmpty = /^\s*(#.*)?$/;

/** The keys that a line says or goes on with, or the table that it begins or is in, "bracket.2"; []
 * of a comment. */
export function keysAt(lines: readonly string[], number: number, fields: readonly FieldValue[]): string[] {
  const goesOn = ({ line, value }: FieldValue) =>
    line <= number && number <= line + value.split('\n').length - 1;
  const said = fields.filter((one) => one.given && goesOn(one)).map(({ key }) => key);
  if (said.length > 0) return said;
  if (kEmpty.test(lines[number - 1] ?? '')) return [];
  const table = tableAt(lines, number);
  return table === '' ? [] : [table];
}

/** The table that a line begins, or is in. */
function tableAt(lines: readonly string[], number: number): string {
  for (let at = number; at > 0; --at) {
    const [, bracket, name = ''] = kHeader.exec(lines[at - 1] ?? '') ?? [];
    if (!bracket) continue;
    if (bracket === '[') return name;
    const before = lines.slice(0, at).filter((line) => {
      const header = kHeader.exec(line);
      return header?.[1] === '[[' && header[2] === name;
    });
    return `${name}.${before.length}`;
  }
  return '';
}

/** The parts that a line is about. */
export function subjectsAt(lines: readonly string[], number: number, fields: readonly FieldValue[]): string[] {
  return [...new Set(keysAt(lines, number, fields).flatMap((key) => subjectsOf(key, fields)))];
}

/** The lines on which keys are said. */
export function linesOf(keys: ReadonlySet<string>, fields: readonly FieldValue[]): number[] {
  return fields.filter((one) => one.given && keys.has(one.key))
    .flatMap(({ line, value }) => value.split('\n').map((_, k) => line + k));
}

/** By line, the rules that are not met, of keys that the text says. */
export function notMetLines(findings: readonly Finding[], fields: readonly FieldValue[]): Map<number, string[]> {
  const lines = new Map<number, string[]>();
  for (const finding of findings) {
    if (finding.verdict !== 'fail') continue;
    for (const { key, line: own } of finding.keys) {
      const field = fields.find((one) => one.given && (one.key === key || key.startsWith(`${one.key}.`)));
      if (!field) continue;
      // One of several colors may have a line of its own.
      const line = field.form === 'cloth.colors' ? own : field.line;
      const there = lines.get(line) ?? [], words = notMetWords(finding);
      if (!there.includes(words)) lines.set(line, [...there, words]);
    }
  }
  return lines;
}
