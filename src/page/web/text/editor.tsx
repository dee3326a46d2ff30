// The job as text, with its faults underlined at their place.
import { defaultKeymap } from '@codemirror/commands';
import { StreamLanguage, bracketMatching, syntaxHighlighting, HighlightStyle } from '@codemirror/language';
import { toml } from '@codemirror/legacy-modes/mode/toml';
import { forceLinting, linter, lintKeymap } from '@codemirror/lint';
import type { Diagnostic } from '@codemirror/lint';
import { Annotation, EditorState, StateEffect } from '@codemirror/state';
import type { Text } from '@codemirror/state';
import { EditorView, highlightActiveLine, keymap, lineNumbers } from '@codemirror/view';
import type { ViewUpdate } from '@codemirror/view';
import { tags } from '@lezer/highlight';
import { useComputed, useSignalEffect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { Fault } from 'swathe';
import { valueWords } from '../fields/toml_value';
import type { LitKeys } from '../fields/lit';
import type { WorkBench } from '../state/make_bench';
import { point, select } from '../pictures/links';
import { goTo } from '../state/show';
import { say } from '../words/en';
import { linesOf, notMetLines, subjectsAt } from './lines';
import { lit as litLines, litMarks, notMet, notMetMarks, notMetSaid } from './marks';

/** A change that comes from elsewhere on the page. */
const fromBench = Annotation.define<boolean>();

const colors = HighlightStyle.define([
  { tag: tags.comment, class: 'tok-comment' },
  { tag: [tags.string, tags.number, tags.bool, tags.atom], class: 'tok-value' },
  { tag: [tags.propertyName, tags.definition(tags.propertyName)], class: 'tok-key' },
]);

/** Where in the text a line and a column stand; columns count bytes. */
function offsetOf(doc: Text, line: number, column: number): number {
  if (line < 1) return 0;
  if (line > doc.lines) return doc.length;
  const { from, text } = doc.line(line);
  let bytes = 1, at = 0;
  for (const sign of text) {
    if (bytes >= column) break;
    const point = sign.codePointAt(0)!;
    bytes += point < 0x80 ? 1 : point < 0x800 ? 2 : point < 0x10000 ? 3 : 4;
    at += sign.length;
  }
  return from + at;
}

/** What is underlined of a fault: the value that begins there, else the rest of the line. */
function diagnosticOf(doc: Text, fault: Fault, bench: WorkBench): Diagnostic {
  const from = offsetOf(doc, fault.line, fault.column);
  const { to: end, text, from: begin } = doc.lineAt(from);
  const rest = text.slice(from - begin);
  const length = /^(\[[^#]*\]|"[^"]*"|[^\s#]+)/.exec(rest)?.[0].length ?? rest.length;
  return {
    from, to: Math.max(from, Math.min(end, from + length)), severity: 'error', message: fault.sentence,
    actions: fault.mend.length === 0 ? [] : [{
      name: say.job.use(fault.mend.map((one) => valueWords(one.value)).join(', ')),
      apply: () => void bench.set(fault.mend),
    }],
  };
}

/** What is wrong may come, or go, while the text stays. */
const lookAnew = StateEffect.define<null>();
function asksAnew({ transactions }: ViewUpdate): boolean {
  return transactions.some(({ effects }) => effects.some((one) => one.is(lookAnew)));
}

/** The editor's own text has lines that end as on Unix, whatever the job's end with. */
function withUnixLines(text: string): string {
  return text.replace(/\r\n?/g, '\n');
}

/** Over a selection Chromium would keep the look of what is replaced in a style attribute, which the
 * page's policy forbids. */
function typedOver(event: InputEvent, view: EditorView): boolean {
  const { data, inputType, isComposing } = event;
  if (inputType !== 'insertText' || data === null || isComposing || view.state.selection.main.empty) return false;
  event.preventDefault();
  view.dispatch(view.state.replaceSelection(data), { userEvent: 'input.type', scrollIntoView: true });
  return true;
}

export function TextEditor({ bench, lit, nonce }: { bench: WorkBench; lit: LitKeys; nonce: string }) {
  const place = useRef<HTMLDivElement>(null);
  const view = useRef<EditorView | null>(null);
  const pointed = useComputed(() => linesOf(lit.pointed.value, bench.fields.value));
  const selected = useComputed(() => linesOf(lit.selected.value, bench.fields.value));

  useEffect(() => {
    const editor = new EditorView({
      parent: place.current!,
      state: EditorState.create({
        doc: withUnixLines(bench.text.peek()),
        extensions: [
          EditorView.cspNonce.of(nonce),
          lineNumbers(), highlightActiveLine(), bracketMatching(), EditorView.lineWrapping,
          StreamLanguage.define(toml), syntaxHighlighting(colors), litLines.field, notMet.field,
          linter(({ state }) => [
            ...bench.told.peek().map((fault) => diagnosticOf(state.doc, fault, bench)), ...notMetSaid(state),
          ], { delay: 100, needsRefresh: asksAnew }),
          keymap.of([...lintKeymap, ...defaultKeymap]),
          EditorView.contentAttributes.of({ 'aria-label': say.job.textName, spellcheck: 'false', tabindex: '0' }),
          EditorView.domEventHandlers({
            beforeinput: typedOver, blur: () => bench.pause.over(),
            pointermove: pointAt, pointerleave: () => point(bench, ''),
          }),
          EditorView.updateListener.of((update) => {
            if (update.docChanged && !update.transactions.some((one) => one.annotation(fromBench))) {
              const lineEnd = bench.text.peek().includes('\r\n') ? '\r\n' : '\n';
              bench.pause.typed();
              bench.edit(update.state.doc.toString().replaceAll('\n', lineEnd), 'typing');
            }
            if (update.selectionSet && update.view.hasFocus) selectAt(update.state);
          }),
        ],
      }),
    });
    // What stands on the line of the cursor, or of the pointer, lights up in the pictures.
    function partsAt({ doc }: EditorState, place: number): string {
      return subjectsAt(doc.toString().split('\n'), doc.lineAt(place).number, bench.fields.peek()).join(' ');
    }
    function selectAt(state: EditorState): void {
      select(bench, partsAt(state, state.selection.main.head));
    }
    function pointAt(event: PointerEvent, { state }: EditorView): void {
      if (event.pointerType === 'touch') return;
      const line = event.target instanceof Element ? event.target.closest('.cm-line') : null;
      point(bench, line ? partsAt(state, editor.posAtDOM(line)) : '');
    }
    view.current = editor;
    return () => editor.destroy();
  }, []);

  // Edits from elsewhere: the least change, so that the cursor stays.
  useSignalEffect(() => {
    const text = withUnixLines(bench.text.value);
    const editor = view.current;
    if (!editor) return;
    const before = editor.state.doc.toString();
    if (text === before) return;
    let from = 0;
    const most = Math.min(text.length, before.length);
    while (from < most && text[from] === before[from]) ++from;
    let same = 0;
    while (same < most - from && text[text.length - 1 - same] === before[before.length - 1 - same]) ++same;
    editor.dispatch({
      changes: { from, to: before.length - same, insert: text.slice(from, text.length - same) },
      annotations: fromBench.of(true),
    });
  });
  useSignalEffect(() => {
    const said = notMetMarks(notMetLines(bench.findings.value, bench.fields.peek()));
    view.current?.dispatch({ effects: notMet.set.of(said) });
  });
  useSignalEffect(() => {
    void [bench.told.value, bench.findings.value];
    view.current?.dispatch({ effects: lookAnew.of(null) });
    if (view.current) forceLinting(view.current);
  });
  useSignalEffect(() => {
    const editor = view.current;
    if (!editor) return;
    editor.dispatch({ effects: litLines.set.of(litMarks(pointed.value, selected.value)) });
    const first = selected.value[0] ?? pointed.value[0];
    // Under the pointer nothing moves.
    const isUsed = editor.hasFocus || editor.dom.matches(':hover');
    if (first !== undefined && !isUsed && first <= editor.state.doc.lines)
      editor.dispatch({ effects: EditorView.scrollIntoView(editor.state.doc.line(first).from, { y: 'nearest' }) });
  });
  useSignalEffect(() => {
    const at = goTo.value;
    const editor = view.current;
    if (!at || !editor) return;
    const place = offsetOf(editor.state.doc, at.line, at.column);
    editor.dispatch({ selection: { anchor: place }, effects: EditorView.scrollIntoView(place, { y: 'center' }) });
    editor.focus();
    goTo.value = null;
  });

  return <div class="text-editor" ref={place} />;
}
