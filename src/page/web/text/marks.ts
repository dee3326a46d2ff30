// Lines of the text that are marked: what is lit, and what a rule that is not met hangs on.
import type { Diagnostic } from '@codemirror/lint';
import { RangeSetBuilder, StateEffect, StateField } from '@codemirror/state';
import type { EditorState, Text } from '@codemirror/state';
import { Decoration, EditorView } from '@codemirror/view';
import type { DecorationSet } from '@codemirror/view';

/** By line, what it is to look like. */
export type LineMarks = ReadonlyMap<number, Decoration>;

function decorated(doc: Text, marks: LineMarks): DecorationSet {
  const builder = new RangeSetBuilder<Decoration>();
  for (const [number, mark] of [...marks].sort(([a], [b]) => a - b)) {
    if (number < 1 || number > doc.lines) continue;
    const { from } = doc.line(number);
    builder.add(from, from, mark);
  }
  return builder.finish();
}

/** Marks stay with their lines while these move, until others are set. */
function lineMarks() {
  const set = StateEffect.define<LineMarks>();
  const field = StateField.define<DecorationSet>({
    create: () => Decoration.none,
    update(lines, transaction) {
      let next = lines.map(transaction.changes);
      for (const effect of transaction.effects)
        if (effect.is(set)) next = decorated(transaction.state.doc, effect.value);
      return next;
    },
    provide: (from) => EditorView.decorations.from(from),
  });
  return { set, field };
}

export const lit = lineMarks();
const kLit = Decoration.line({ class: 'lit-line' });
const kSelected = Decoration.line({ class: 'lit-line selected-line' });

export function litMarks(pointed: readonly number[], selected: readonly number[]): LineMarks {
  return new Map([
    ...pointed.map((line) => [line, kLit] as const),
    ...selected.map((line) => [line, kSelected] as const),
  ]);
}

export const notMet = lineMarks();

/** By line, what is not met. */
export function notMetMarks(words: ReadonlyMap<number, readonly string[]>): LineMarks {
  return new Map([...words].map(([line, said]) =>
    [line, Decoration.line({ class: 'rule-not-met', words: said.join('\n') })]));
}

/** The same in words, where the pointer rests or F8 leads. */
export function notMetSaid(state: EditorState): Diagnostic[] {
  const said: Diagnostic[] = [];
  for (const at = state.field(notMet.field).iter(); at.value; at.next()) {
    const { from, to, text } = state.doc.lineAt(at.from);
    const begin = from + (text.length - text.trimStart().length);
    said.push({ from: begin, to, severity: 'warning', message: at.value.spec.words });
  }
  return said;
}
