// What moves things on the page waits while something is pressed: a button that moves away before it is
// let go of is not clicked.

let down = false;
let waiting: (() => void)[] = [];

addEventListener('pointerdown', () => (down = true), true);
for (const end of ['pointerup', 'pointercancel'])
  addEventListener(end, () => setTimeout(() => {
    down = false;
    const steps = waiting;
    waiting = [];
    for (const step of steps) step();
  }), true);

/** At once where nothing is pressed. */
export function whenReleased(step: () => void): void {
  if (down) waiting.push(step);
  else step();
}

/** The field with the keyboard shows all that it shows until then. Ends with what it gives. */
export function holdWhilePressed(): () => void {
  const hold = () => {
    const field = document.activeElement?.closest('.fields .field');
    field?.setAttribute('data-held', '');
    whenReleased(() => field?.removeAttribute('data-held'));
  };
  document.addEventListener('pointerdown', hold, true);
  return () => document.removeEventListener('pointerdown', hold, true);
}
