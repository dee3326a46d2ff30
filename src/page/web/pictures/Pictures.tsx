// The linked pictures of the open job: from above, a cover laid flat, the cut-through.
import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import type { Bench } from '../state/bench';
import { kArrows } from './arrows';
import { loadLabelFont } from './labels';
import { Picture } from './picture';
import { Stage } from './Stage';
import { useNow } from './use_now';
import { say } from '../words/en';

const words = say.pictures;

export type Place = 'plan' | 'cover' | 'cut-through';

const kZoomStep = 1.5;
/** Of the picture's size, by key. */
const kPanStep = 0.2;

/**
 * A region of the page, with its heading and its buttons. It takes the size that it is given.
 */
export function Pictures({ bench, place }: { bench: Bench; place: Place }) {
  const asPrinted = useSignal(false);
  const picture = useMemo(
    () =>
      new Picture(bench, (size) => {
        if (place === 'plan') return bench.core.plan(size);
        if (place === 'cut-through') return bench.core.cutThrough(size);
        return bench.core.cover(shownBumper(bench), { ...size, as_printed: asPrinted.peek() });
      }),
    [bench, place],
  );
  useEffect(() => {
    void loadLabelFont(bench.core);
    return () => picture.close();
  }, [picture]);

  const before = useMemo(() => ({ bumper: '' }), [picture]);
  useNow(() => {
    const opened = bench.opened.value;
    if (!opened) return;
    const bumper = place === 'cover' ? bench.bumper.value : '';
    if (before.bumper !== bumper) picture.forget();
    before.bumper = bumper;
    // Read, so that each of them draws it anew.
    void [asPrinted.value, picture.size.value, picture.wanted.value];
    picture.again();
  });

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.defaultPrevented) return;
    const way = event.shiftKey && !picture.isWhole ? kArrows[event.key] : undefined;
    const { width = 0, height = 0 } = picture.size.value ?? {};
    // What lies that way comes into sight.
    if (way) picture.panBy({ x: -kPanStep * way.x * width, y: -kPanStep * way.y * height });
    else if (event.key === '+' || event.key === '=') picture.zoomBy(kZoomStep);
    else if (event.key === '-') picture.zoomBy(1 / kZoomStep);
    else if (event.key === '0') picture.showAll();
    else return;
    event.preventDefault();
  };

  const drawn = picture.drawn.value;
  const none = picture.failed.value
    ? words.failed
    : bench.opened.value || bench.faults.value.length === 0
      ? words.coming
      : words.noJob;
  return (
    <section class={`picture ${place}`} aria-label={words.region[place]} onKeyDown={onKeyDown}>
      <header>
        <h2>{drawn?.title ?? words.region[place]}</h2>
        <div class="controls">
          {place === 'cover' && <Bumpers bench={bench} />}
          {place === 'cover' && (
            <button
              type="button"
              role="switch"
              aria-checked={asPrinted.value}
              onClick={() => {
                asPrinted.value = !asPrinted.value;
                picture.showAll();
              }}
            >
              {words.asPrinted}
            </button>
          )}
          <span class="zoom">
            <IconButton name={words.zoomIn} sign="+" onClick={() => picture.zoomBy(kZoomStep)} />
            <IconButton
              name={words.zoomOut}
              sign="−"
              disabled={picture.isWhole}
              onClick={() => picture.zoomBy(1 / kZoomStep)}
            />
            <IconButton
              name={words.showAll}
              sign="⤢"
              disabled={picture.isWhole}
              onClick={() => picture.showAll()}
            />
          </span>
        </div>
      </header>
      <Stage bench={bench} picture={picture} none={none} />
    </section>
  );
}

/** The cover of the bumper chosen, or of the job's first where it has none of that name. */
function shownBumper(bench: Bench): string {
  const bumpers = bench.opened.peek()?.job.bumpers ?? [];
  const chosen = bench.bumper.peek();
  return bumpers.includes(chosen) ? chosen : (bumpers[0] ?? chosen);
}

function IconButton(props: { name: string; sign: string; disabled?: boolean; onClick: () => void }) {
  // Not the disabled attribute: focus would be lost with it.
  return (
    <button
      type="button"
      class="icon"
      aria-label={props.name}
      title={props.name}
      aria-disabled={props.disabled ?? false}
      onClick={() => props.disabled || props.onClick()}
    >
      <span aria-hidden="true">{props.sign}</span>
    </button>
  );
}

function Bumpers({ bench }: { bench: Bench }) {
  const names = bench.opened.value?.job.bumpers ?? [];
  void bench.bumper.value;
  const chosen = shownBumper(bench);
  if (names.length < 2) return null;
  const choose = (name: string, list: HTMLElement | null) => {
    bench.bumper.value = name;
    list?.querySelectorAll<HTMLElement>('[role=tab]')[names.indexOf(name)]?.focus();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const by = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
    if (by === 0) return;
    event.preventDefault();
    const k = (names.indexOf(chosen) + by + names.length) % names.length;
    choose(names[k] ?? chosen, event.currentTarget as HTMLElement);
  };
  return (
    <div class="bumpers" role="tablist" aria-label={words.bumpers} onKeyDown={onKeyDown}>
      {names.map((name) => (
        <button
          key={name}
          type="button"
          role="tab"
          aria-selected={name === chosen}
          aria-label={words.bumper(name)}
          title={words.bumper(name)}
          tabIndex={name === chosen ? 0 : -1}
          onClick={() => choose(name, null)}
        >
          {name}
        </button>
      ))}
    </div>
  );
}
