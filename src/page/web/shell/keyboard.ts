// A button that goes away when it is pressed hands the keyboard on: to what it names in data-then, else to
// the next control of its surroundings. Fields do not: what is typed would go into another one.

const kControls = 'button, input, select, textarea, summary, [tabindex="0"]';

interface Left {
  button: HTMLElement;
  around: Element[]; // the nearest first
  after: HTMLElement[]; // controls that come after it
}

/** What surrounds it, up to the part of the page that it is in. */
function aroundOf(element: Element): Element[] {
  const around: Element[] = [];
  for (let at = element.parentElement; at && !at.matches('.page, body'); at = at.parentElement) around.push(at);
  return around;
}

function controlsIn(element: Element): HTMLElement[] {
  return [...element.querySelectorAll<HTMLElement>(kControls)];
}

/** Whether it could be given. */
function give(control: HTMLElement): boolean {
  control.focus();
  return document.activeElement === control;
}

function handOn({ button, around, after }: Left): void {
  const then = button.dataset.then && document.querySelector<HTMLElement>(button.dataset.then);
  if (then && give(then)) return;
  for (const one of around.filter((at) => at.isConnected))
    if ([...after.filter((control) => one.contains(control)), ...controlsIn(one)].some(give)) return;
}

export function keepKeyboard(): void {
  let left: Left | null = null;
  const remember = ({ target }: Event) => {
    const button = (target as Element).closest<HTMLElement>('button, summary');
    const around = button ? aroundOf(button) : [];
    const all = around.length > 0 ? controlsIn(around.at(-1)!) : [];
    left = button && { button, around, after: all.slice(all.indexOf(button) + 1) };
  };
  document.addEventListener('focusin', remember);
  document.addEventListener('click', (event) => {
    if (left?.button.contains(event.target as Element)) remember(event); // there may be others around it since
  }, true);
  document.addEventListener('focusout', ({ target }) => queueMicrotask(() => {
    if ((target as Element).isConnected && left?.button === target) left = null;
  }));
  new MutationObserver(() => {
    if (!left || left.button.isConnected) return;
    const lost = left;
    left = null;
    if (document.activeElement === document.body) handOn(lost);
  }).observe(document.body, { childList: true, subtree: true });
}
