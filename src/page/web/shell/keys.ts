// Keys that work all over the page.
import type { Desk } from '../state/desk';
import type { WorkBench } from '../state/make_bench';
import type { Incoming } from './incoming';
import { saveJob } from './save_job';

function takesText(element: Element | null): boolean {
  return element !== null && element.closest('input, textarea, [contenteditable]') !== null;
}

export function listenToKeys(bench: WorkBench, desk: Desk, incoming: Incoming): void {
  document.addEventListener('keydown', (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || desk.starting.peek()) return;
    if (document.querySelector('dialog[open]')) return;
    const key = event.key.toLowerCase();
    if (key === 'z') event.shiftKey ? bench.redo() : bench.undo();
    else if (key === 'y') bench.redo();
    else if (key === 's') void saveJob(bench, incoming);
    else return;
    // The field's own memory of what was typed knows nothing of the job.
    event.preventDefault();
    const field = document.activeElement;
    if (key === 's' || !(field instanceof HTMLInputElement)) return;
    // What was being typed is over: whoever comes back to the field finds the job's value.
    field.blur();
    field.focus();
  });
  document.addEventListener('paste', (event) => {
    if (takesText(event.target as Element | null)) return;
    const text = event.clipboardData?.getData('text/plain') ?? '';
    if (text === '') return;
    event.preventDefault();
    incoming.paste(text);
  });
}
