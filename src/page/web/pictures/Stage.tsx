// Where a picture is shown: what the core drew, and over it the page's own handles and names of
// parts, for pointer, finger and keyboard.
import { useComputed, useSignal } from '@preact/signals';
import { useEffect, useId, useMemo, useRef } from 'preact/hooks';
import type { Bench } from '../state/bench';
import type { Handle } from './adopt';
import { isAlong, kArrows } from './arrows';
import { FaultSigns } from './FaultSigns';
import { Figure } from './Figure';
import { listen } from './gestures';
import { Grip } from './Grip';
import { gripsOf, placeAt, type Hold } from './hold';
import { lengthWords } from '../words/lengths';
import { snapOf, stepOf, type Units } from './lengths';
import { light, point, select } from './links';
import { asDrawn, isWithin, laid, lieOf, minus, type Lie } from './map';
import type { Picture } from './picture';
import { boxOf, placeOf, stopsOf, type Stop } from './stops';
import { useNow } from './use_now';
import { watchSize } from './watch_size';
import { say } from '../words/en';

const words = say.pictures;

/** Arrow keys that follow each other so closely are one step to undo, in milliseconds. */
const kPause = 500;

interface Props {
  bench: Bench;
  picture: Picture;
  /** What to say where there is no picture. */
  none: string;
}

export function Stage({ bench, picture, none }: Props) {
  const host = useRef<HTMLDivElement>(null);
  const sheet = useRef<HTMLDivElement>(null);
  const hint = useId();
  const keys = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const units = useComputed<Units>(() => bench.opened.value?.job.units ?? 'in');

  const hold = useSignal<Hold | null>(null);
  const current = useSignal('');
  const go = (key: string) => {
    current.value = key;
    const stop = [...(host.current?.querySelectorAll<HTMLElement>('[data-stop]') ?? [])].find(
      (element) => element.dataset.stop === key,
    );
    stop?.focus({ preventScroll: true });
  };
  const grips = useMemo(() => gripsOf(bench, picture, hold, go), [bench, picture]);

  useEffect(() => (host.current ? listen(host.current, bench, picture, grips) : undefined), [
    bench,
    picture,
    grips,
  ]);

  useEffect(() => (host.current ? watchSize(host.current, picture) : undefined), [picture]);

  // What the core drew is put in as it is.
  useNow(() => {
    const svg = picture.drawn.value?.svg;
    sheet.current?.replaceChildren(...(svg ? [svg] : []));
  });
  useNow(() => {
    const drawn = picture.drawn.value;
    if (drawn) light(bench, drawn);
  });
  // What is dragged stays under the pointer, also where the whole model moves with it.
  useNow(() => {
    const drawn = picture.drawn.value;
    const held = hold.value;
    const map = picture.held.value;
    if (!held || !map || !drawn?.map) return;
    const { handle } = held.moves;
    const now = drawn.handles.find((one) => one.subject === handle.subject);
    if (!now) return;
    const at = laid(lieOf(drawn.map, map), now.at);
    const shift = minus(placeAt(held, now.mm), at);
    const before = picture.shift.peek();
    if (Math.hypot(shift.x - before.x, shift.y - before.y) > 0.1) picture.shift.value = shift;
  });

  const drawn = picture.drawn.value;
  const lie = picture.lie.value;
  const stops = drawn ? stopsOf(drawn, picture.all.value) : [];
  const at = stops.some((stop) => stop.key === current.value) ? current.value : firstOf(stops, picture)?.key;

  const next = (from: string, by: number) => {
    const k = stops.findIndex((stop) => stop.key === from);
    const to = stops[(k + by + stops.length) % stops.length];
    if (to) go(to.key);
  };

  const moveBy = (handle: Handle, mm: number) => {
    if (!grips.handleOf(handle.subject)) return;
    const held = hold.peek();
    const moves = held && !held.ending ? held.moves : grips.take(handle, handle.at);
    const now = hold.peek();
    if (now) now.pointer.value = null;
    moves.to(moves.mm.peek() + mm, false);
    clearTimeout(keys.current);
    keys.current = setTimeout(endKeys, kPause);
  };
  const endKeys = () => {
    clearTimeout(keys.current);
    if (hold.peek()?.pointer.peek() === null) void grips.letGo(true);
  };

  const onKeyDown = (event: KeyboardEvent) => {
    const key = (event.target as HTMLElement).dataset.stop;
    const stop = stops.find((one) => one.key === key);
    const way = kArrows[event.key];
    // What comes now is for the whole page, or for the whole picture.
    const isForMore = event.ctrlKey || event.metaKey || (event.shiftKey && way);
    if (isForMore) endKeys();
    if (!stop || isForMore) return;
    const handle = 'handle' in stop ? stop.handle : null;
    if (handle && way && isAlong(handle, way)) {
      const sign = way.x * handle.way.x + way.y * handle.way.y > 0 ? 1 : -1;
      moveBy(handle, sign * stepOf(units.peek()));
    } else if (handle && (event.key === 'PageUp' || event.key === 'PageDown')) {
      moveBy(handle, (event.key === 'PageUp' ? 1 : -1) * snapOf(units.peek()));
    } else if (way) {
      endKeys();
      next(stop.key, way.x + way.y > 0 ? 1 : -1);
    } else if (event.key === 'Home' || event.key === 'End') {
      endKeys();
      const to = event.key === 'Home' ? stops[0] : stops[stops.length - 1];
      if (to) go(to.key);
    } else if (event.key === 'Enter' || event.key === ' ') {
      select(bench, stop.subject);
    } else if (event.key === 'Escape') {
      if (hold.peek()?.ending === false) void grips.letGo(false);
      else select(bench, '');
    } else {
      return;
    }
    event.preventDefault();
    if (event.key !== 'Escape') event.stopPropagation();
  };
  const classes = ['stage'];
  if (bench.dimmed.value) classes.push('dimmed');
  else if (picture.isLate.value && !hold.value) classes.push('waiting');
  if (hold.value) classes.push('moving');
  if (!picture.isWhole) classes.push('zoomed');

  return (
    <div class={classes.join(' ')} ref={host} aria-busy={picture.waiting}>
      <div class="sheet" ref={sheet} style={transformOf(lie)} />
      {drawn && <FaultSigns bench={bench} picture={picture} />}
      <div
        class="stops"
        role="group"
        aria-label={words.parts(drawn?.title ?? '')}
        onKeyDown={onKeyDown}
        onFocusOut={endKeys}
      >
        {stops.map((stop) => {
          const tab = stop.key === at ? 0 : -1;
          const focus = () => {
            current.value = stop.key;
            point(bench, stop.subject);
            picture.bringIn(laid(lie, placeOf(stop)));
          };
          return 'handle' in stop ? (
            <Grip
              key={stop.key}
              bench={bench}
              handle={stop.handle}
              at={laid(lie, stop.handle.at)}
              hold={hold.value?.moves.handle.subject === stop.subject ? hold.value : null}
              units={units.value}
              tab={tab}
              hint={hint}
              onFocus={focus}
            />
          ) : (
            <button
              key={stop.key}
              type="button"
              class="name"
              data-stop={stop.key}
              tabIndex={tab}
              aria-pressed={bench.selected.value.join(' ') === stop.subject}
              aria-label={stop.said.text}
              style={boxOf(stop.said, lie)}
              onFocus={focus}
              onBlur={() => point(bench, '')}
            />
          );
        })}
      </div>
      {stops.some((stop) => 'handle' in stop) && (
        <p id={hint} hidden>
          {words.movesBy(lengthWords(stepOf(units.value), units.value), lengthWords(snapOf(units.value), units.value))}
          {!picture.isWhole && ` ${words.looksAround}`}
        </p>
      )}
      {!picture.isWhole && <p class="around" aria-hidden="true">{words.looksAround}</p>}
      {hold.value?.ending === false && (
        <Figure
          hold={hold.value}
          units={units.value}
          width={picture.size.value?.width ?? 0}
          isWrong={bench.faults.value.length > 0}
        />
      )}
      {!drawn && <p class="none">{none}</p>}
    </div>
  );
}

/** Of those in sight, where there are any. */
function firstOf(stops: readonly Stop[], picture: Picture): Stop | undefined {
  const size = picture.size.value;
  const lie = picture.lie.value;
  return stops.find((stop) => size && isWithin(laid(lie, placeOf(stop)), size)) ?? stops[0];
}

function transformOf(lie: Lie) {
  if (lie.scale === asDrawn.scale && lie.x === 0 && lie.y === 0) return undefined;
  return { transform: `translate(${lie.x}px, ${lie.y}px) scale(${lie.scale})` };
}
