// A picture's marks follow what is pointed at, selected and at fault anywhere on the page.
import type { Bench } from '../state/bench';
import { kSubject, type Adopted } from './adopt';
import { lightOf, litOf } from './subjects';
import { wrongsOf } from './wrongs';

/** To be called within an effect: whatever it reads calls it again. */
export function light(bench: Bench, picture: Adopted): void {
  // The round chart and the views say themselves who can read it.
  const isOfModel = picture.map !== null;
  mark(picture, 'lit', bench.pointed.value);
  mark(picture, 'selected', bench.selected.value);
  mark(picture, 'at-fault', isOfModel ? wrongsOf(bench).flatMap((wrong) => wrong.subjects) : []);
}

function mark({ marks, kind }: Adopted, name: string, parts: readonly string[]): void {
  for (const one of marks.values()) {
    const lit = new Set(litOf(one, lightOf(one, parts, kind)));
    for (const element of one.elements) element.classList.toggle(name, lit.has(element));
  }
}

/** What the pointer is over, "bumper.A.end bumper.B.start"; '' over nothing. */
export function subjectAt(target: EventTarget | null): string {
  const element = target instanceof Element ? target.closest(`[${kSubject}]`) : null;
  return element?.getAttribute(kSubject) ?? '';
}

export function listOf(subject: string): readonly string[] {
  return subject === '' ? [] : subject.split(' ');
}

/** Points at parts, on the whole page. */
export function point(bench: Bench, subject: string): void {
  if (bench.pointed.peek().join(' ') !== subject) bench.pointed.value = listOf(subject);
}

export function select(bench: Bench, subject: string): void {
  bench.selected.value = listOf(subject);
}
