// A picture's marks follow what is pointed at, selected and at fault anywhere on the page.
import type { Bench } from '../state/bench';
import { kSubject, type Adopted, type Marks } from './adopt';
import { faultsOf, lightOf, type Light } from './subjects';

/** To be called within an effect: whatever it reads calls it again. */
export function light(bench: Bench, picture: Adopted): void {
  const pointed = bench.pointed.value;
  const selected = bench.selected.value;
  // The round chart and the views say themselves who can read it.
  const isOfModel = picture.map !== null;
  const faults = isOfModel ? faultsOf(bench.findings.value) : new Map<string, string>();
  for (const marks of picture.marks.values()) {
    mark(marks, 'lit', lightOf(marks, pointed, picture.kind));
    mark(marks, 'selected', lightOf(marks, selected, picture.kind));
    mark(marks, 'at-fault', marks.subjects.some((one) => faults.has(one)) ? 'all' : '');
  }
}

function mark({ elements }: Marks, name: string, light: Light): void {
  for (const element of elements) {
    const on = light === 'all' || (light === 'cloth' && element.closest('.cloth') !== null);
    element.classList.toggle(name, on);
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
