// The tables of a job, as the fields show them: which keys are in sight, and what many of one table
// are called.
import type { FieldValue, Words } from 'swathe';

export interface Group {
  /** "frame"; of a table that there may be many of, "bracket". */
  path: string;
  many: [least: number, most: number] | null;
  /** Keys of one such table: their paths. */
  keys: string[];
}

/** Keys that most people set; the others are under "More". */
const kInSight: ReadonlySet<string> = new Set([
  'job.title', 'job.number', 'frame.width', 'frame.depth', 'boards.thickness', 'boards.height',
  'padding.form', 'padding.diameter', 'padding.core', 'cloth.colors', 'numerals.method',
  'numerals.font', 'paper.sheet',
  'bumper.name', 'bumper.from', 'bumper.to',
  'opening.side', 'opening.width', 'opening.center',
  'bracket.side', 'bracket.at', 'bracket.width', 'bracket.height', 'bracket.down', 'bracket.cloth',
  'numerals.place.side', 'numerals.place.center',
  'sight.blind.box',
]);

/** The order in which a person thinks of them. */
const kOrder = [
  'job', 'frame', 'opening', 'bumper', 'bracket', 'boards', 'padding', 'cloth',
  'cloth.hook_and_loop', 'numerals', 'numerals.place', 'sight', 'sight.blind', 'paper',
];

export function tableOf(path: string): string {
  return path.slice(0, path.lastIndexOf('.'));
}

export function groupsOf(words: Words): Group[] {
  const many = new Map(words.tables.map(({ path, counts }) => [path, counts]));
  const paths = new Set(words.keys.map(({ key }) => tableOf(key)));
  const groups = [...paths].map((path): Group => ({
    path, many: many.get(path) ?? null,
    keys: words.keys.map(({ key }) => key).filter((key) => tableOf(key) === path),
  }));
  const place = ({ path }: Group) => (kOrder.indexOf(path) + kOrder.length) % kOrder.length;
  return groups.sort((a, b) => place(a) - place(b));
}

/** Whether a key is in sight, in this job: of two ways to say one thing the one that is used. */
export function inSight(path: string, fields: readonly FieldValue[]): boolean {
  const value = (key: string) => fields.find((one) => one.key === key);
  if (value('frame.corners')?.given) {
    if (path === 'frame.corners') return true;
    if (path === 'frame.width' || path === 'frame.depth') return false;
  }
  if (value('padding.form')?.shown === 'block') {
    if (path === 'padding.depth' || path === 'padding.height') return true;
    if (path === 'padding.diameter' || path === 'padding.core') return false;
  }
  if (path === 'paper.width') return value('paper.sheet')?.shown === 'roll';
  return kInSight.has(path);
}

/** How many of a table there are. */
export function countOf(path: string, fields: readonly FieldValue[]): number {
  let count = 0;
  for (const { key } of fields) {
    if (!key.startsWith(`${path}.`)) continue;
    const number = Number(key.slice(path.length + 1).split('.')[0]);
    if (number > count) count = number;
  }
  return count;
}

/** "bracket.2.at" of "bracket.at". */
export function keyOf(path: string, number: number | null): string {
  if (number === null) return path;
  const table = tableOf(path);
  return `${table}.${number}${path.slice(table.length)}`;
}
