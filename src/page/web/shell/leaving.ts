// The window's title, and the question before it is closed with something that is kept nowhere.
import { effect } from '@preact/signals';
import type { Desk } from '../state/desk';
import type { WorkBench } from '../state/make_bench';

export function followTitle(bench: WorkBench, desk: Desk): void {
  const first = document.title;
  effect(() => {
    const title = bench.opened.value?.job.title;
    document.title = !desk.starting.value && title ? `${title} - Swathe` : first;
  });
}

export function askBeforeLeaving(bench: WorkBench, desk: Desk): void {
  window.addEventListener('beforeunload', (event) => {
    const isKept = desk.kept.state.peek() === 'works' && !desk.elsewhere.peek();
    const isLost = !isKept && bench.canUndo.peek() && desk.id.peek() !== null;
    const others = desk.kept.jobs.peek().filter(({ id }) => id !== desk.id.peek() && desk.kept.isOnlyHere(id));
    if (isLost || others.length > 0) event.preventDefault();
  });
}
