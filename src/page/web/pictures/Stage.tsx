// Where a picture is shown: what the core drew, and over it the page's own handles and names of
// parts, for pointer, finger and keyboard.
import { signal, useComputed, useSignal, type Signal } from '@preact/signals';
import { useEffect, useId, useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import type { Bench } from '../state/bench';
import type { Handle, Said } from './adopt';
import { listen, type Grips } from './gestures';
import { figure, snapOf, stepOf, within, type Units } from './lengths';
import { light, listOf, point, select } from './links';
import { asDrawn, laid, lieOf, minus, type Lie, type Point } from './map';
import { Move } from './move';
import { nameOf, placeOf } from './parts';
import type { Picture } from './picture';
import { faultsOf } from './subjects';
import { useNow } from './use_now';
import { words } from './words';

/** A handle that is moved just now. */
interface Hold {
  moves: Move;
  /** Where it was, and how many pixels one of what was drawn takes. */
  from: Point;
  scale: number;
  /** Null where it is moved by key. A signal of its own: what follows the pointer is little. */
  pointer: Signal<Point | null>;
  /** It was let go of, and pictures do not show it yet. */
  ending: boolean;
}

/** One place to stop at by keyboard. */
type Stop = { key: string; subject: string; handle: Handle } | { key: string; subject: string; said: Said };

/** Arrow keys that follow each other so closely are one step to undo, in milliseconds. */
const kPause = 500;

/** From a part to its sign, in pixels. */
const kSign = 11;

/** From the pointer to the figure beside it, and from that to the edge. */
const kBeside = 14;
const kEdge = 4;
/** A picture so wide has no room for the name of what is moved. */
const kNarrow = 440;

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
  const hold = useSignal<Hold | null>(null);
  const current = useSignal('');
  const keys = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const units = useComputed<Units>(() => bench.opened.value?.job.units ?? 'in');

  const grips = useMemo<Grips>(
    () => ({
      // Of a job at fault nothing is moved: what is half typed would be lost.
      handleOf: (subject) =>
        bench.faults.peek().length > 0
          ? undefined
          : picture.drawn.peek()?.handles.find((handle) => handle.subject === subject),
      take: (handle, at) => {
        const lie = picture.lie.peek();
        const before = hold.peek();
        const isSame = before?.moves.handle.subject === handle.subject;
        // It is there already where the picture shows it only soon.
        const mm = isSame ? before.moves.mm.peek() : handle.mm;
        const from = isSame ? placeAt(before, mm) : laid(lie, handle.at);
        picture.hold();
        const moves = new Move(bench, { ...handle, mm }, units.peek(), () => settled(picture));
        hold.value = { moves, from, scale: lie.scale, pointer: signal<Point | null>(at), ending: false };
        select(bench, handle.subject);
        current.value = handle.subject;
        return moves;
      },
      follow: (at) => {
        const held = hold.peek();
        if (held) held.pointer.value = at;
      },
      letGo: async (keep) => {
        const held = hold.peek();
        if (!held || held.ending) return;
        hold.value = { ...held, ending: true };
        await (keep ? held.moves.drop() : held.moves.takeBack());
        if (hold.peek()?.moves !== held.moves) return; // taken hold of again
        picture.letGo();
        await settled(picture);
        if (hold.peek()?.moves === held.moves) hold.value = null;
      },
    }),
    [bench, picture],
  );

  useEffect(() => (host.current ? listen(host.current, bench, picture, grips) : undefined), [
    bench,
    picture,
    grips,
  ]);

  useEffect(() => {
    const element = host.current;
    if (!element) return;
    const watch = new ResizeObserver(([entry]) => {
      if (!entry) return;
      const { width, height } = entry.contentRect;
      const now = picture.size.peek();
      if (now?.width !== width || now.height !== height) picture.size.value = { width, height };
    });
    watch.observe(element);
    return () => watch.disconnect();
  }, [picture]);

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
  const stops = drawn ? stopsOf(drawn.handles, drawn.said) : [];
  const at = stops.some((stop) => stop.key === current.value) ? current.value : stops[0]?.key;

  const go = (key: string) => {
    current.value = key;
    const stop = [...(host.current?.querySelectorAll<HTMLElement>('[data-stop]') ?? [])].find(
      (element) => element.dataset.stop === key,
    );
    stop?.focus({ preventScroll: true });
  };
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
    if (event.ctrlKey || event.metaKey) endKeys(); // what comes now is for the whole page
    if (!stop || event.ctrlKey || event.metaKey) return;
    const way = kArrows[event.key];
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
  const isDimmed = bench.stale.value && !bench.dragging.value;
  const classes = ['stage'];
  if (isDimmed) classes.push('dimmed');
  else if (picture.waiting.value && !hold.value) classes.push('waiting');
  if (hold.value) classes.push('moving');
  if (!picture.isWhole) classes.push('zoomed');

  return (
    <div class={classes.join(' ')} ref={host} aria-busy={!drawn && picture.waiting.value}>
      <div class="sheet" ref={sheet} style={transformOf(lie)} />
      {drawn && <Faults bench={bench} picture={picture} />}
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
          {words.movesBy(figure(stepOf(units.value), units.value), figure(snapOf(units.value), units.value))}
        </p>
      )}
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

function Grip(props: {
  bench: Bench;
  handle: Handle;
  at: Point;
  hold: Hold | null;
  units: Units;
  tab: number;
  hint: string;
  onFocus: () => void;
}) {
  const { bench, handle, hold, units } = props;
  const mm = hold ? hold.moves.mm.value : handle.mm;
  const at = hold ? placeAt(hold, mm) : props.at;
  const isLevel = Math.abs(handle.way.x) >= Math.abs(handle.way.y);
  const turn = (Math.atan2(handle.way.y, handle.way.x) * 180) / Math.PI;
  const isLit = bench.pointed.value.join(' ') === handle.subject;
  const isSelected = bench.selected.value.join(' ') === handle.subject;
  return (
    <div
      class={`grip ${handle.kind}${hold ? ' held' : ''}${isLit ? ' lit' : ''}${isSelected ? ' selected' : ''}`}
      role="slider"
      tabIndex={props.tab}
      data-stop={handle.subject}
      data-subject={handle.subject}
      aria-label={nameOf(handle)}
      aria-orientation={isLevel ? 'horizontal' : 'vertical'}
      aria-valuemin={rounded(handle.least, units)}
      aria-valuemax={rounded(handle.most, units)}
      aria-valuenow={rounded(mm, units)}
      aria-valuetext={placeOf(handle, mm, units)}
      aria-describedby={props.hint}
      aria-disabled={bench.faults.value.length > 0}
      style={{ left: `${at.x}px`, top: `${at.y}px`, '--turn': `${turn}deg` }}
      onFocus={props.onFocus}
      onBlur={() => point(bench, '')}
    >
      <span class="knob" />
    </div>
  );
}

/** What is moved and where it is, beside the pointer; and that it cannot be there. */
function Figure(props: { hold: Hold; units: Units; width: number; isWrong: boolean }) {
  const { hold, units, width, isWrong } = props;
  const { handle } = hold.moves;
  const mm = hold.moves.mm.value;
  const at = hold.pointer.value ?? placeAt(hold, mm);
  const place = placeOf(handle, mm, units);
  const text = width < kNarrow ? place : words.moving(nameOf(handle), place);
  const element = useRef<HTMLDivElement>(null);
  const box = useSignal({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const { offsetWidth = 0, offsetHeight = 0 } = element.current ?? {};
    if (box.peek().width !== offsetWidth || box.peek().height !== offsetHeight)
      box.value = { width: offsetWidth, height: offsetHeight };
  }, [text, isWrong]);
  const { width: own, height } = box.value;
  const beside = at.x > width / 2 ? at.x - own - kBeside : at.x + kBeside;
  const above = at.y - height - 2 * kBeside;
  return (
    <div
      aria-hidden="true"
      class="figure"
      ref={element}
      style={{
        left: `${within(beside, kEdge, Math.max(kEdge, width - own - kEdge))}px`,
        top: `${above > 0 ? above : at.y + kBeside}px`,
      }}
    >
      {text}
      {isWrong && <span class="cannot">{words.cannot}</span>}
    </div>
  );
}

/** A sign at each part of which a rule is not met: color alone says nothing. */
function Faults({ bench, picture }: { bench: Bench; picture: Picture }) {
  const drawn = picture.drawn.value;
  const lie = picture.lie.value;
  const faults = faultsOf(bench.findings.value);
  const places = useSignal<{ subject: string; at: Point }[]>([]);
  useLayoutEffect(() => {
    const found: { subject: string; at: Point }[] = [];
    for (const marks of drawn?.marks.values() ?? []) {
      const subject = marks.subjects.find((one) => faults.has(one));
      const [element] = marks.elements;
      if (!subject || !element || found.some((one) => one.subject === subject)) continue;
      const box = (element as SVGGraphicsElement).getBBox();
      const scale = (drawn?.size.width ?? 1) / Number(drawn?.svg.getAttribute('viewBox')?.split(' ')[2]);
      // At its far end, where it hides the least of it.
      const isLevel = box.width >= box.height;
      const x = isLevel ? box.x + box.width + kSign : box.x + box.width / 2;
      const y = isLevel ? box.y + box.height / 2 : box.y - kSign;
      found.push({ subject, at: { x: scale * x, y: scale * y } });
    }
    if (found.length > 0 || places.peek().length > 0) places.value = found;
  }, [drawn, bench.findings.value]);
  return (
    <>
      {places.value.map(({ subject, at }) => {
        const place = laid(lie, at);
        return (
          <span
            key={subject}
            class="fault-sign"
            role="img"
            aria-label={words.atFault(faults.get(subject) ?? '')}
            title={words.atFault(faults.get(subject) ?? '')}
            style={{ left: `${place.x}px`, top: `${place.y}px` }}
          >
            !
          </span>
        );
      })}
    </>
  );
}

const kArrows: Record<string, Point | undefined> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
};

function isAlong(handle: Handle, arrow: Point): boolean {
  const isLevel = Math.abs(handle.way.x) >= Math.abs(handle.way.y);
  return isLevel ? arrow.x !== 0 : arrow.y !== 0;
}

/** Where a handle that is held lies when its distance is `mm`. */
function placeAt({ moves: { handle }, from, scale }: Hold, mm: number): Point {
  const px = (scale * (mm - handle.mm)) / handle.mmPerPx;
  return { x: from.x + px * handle.way.x, y: from.y + px * handle.way.y };
}

/** Handles, then the names of what has none, each part once. */
function stopsOf(handles: readonly Handle[], said: readonly Said[]): Stop[] {
  const stops: Stop[] = handles.map((handle) => ({ key: handle.subject, subject: handle.subject, handle }));
  const seen = new Set(stops.map((stop) => stop.key));
  for (const one of said) {
    if (listOf(one.subject).length === 0 || seen.has(one.subject)) continue;
    seen.add(one.subject);
    stops.push({ key: one.subject, subject: one.subject, said: one });
  }
  return stops;
}

function boxOf(said: Said, lie: Lie) {
  const at = laid(lie, said.middle);
  return {
    left: `${at.x}px`,
    top: `${at.y}px`,
    width: `${lie.scale * said.length + 8}px`,
    transform: `translate(-50%, -50%) rotate(${said.turn}deg)`,
  };
}

function transformOf(lie: Lie) {
  if (lie.scale === asDrawn.scale && lie.x === 0 && lie.y === 0) return undefined;
  return { transform: `translate(${lie.x}px, ${lie.y}px) scale(${lie.scale})` };
}

/** A length in the job's own unit, for a slider's number. */
function rounded(mm: number, units: Units): number {
  return Math.round((units === 'in' ? mm / 25.4 : mm) * 1000) / 1000;
}

/** Waits for the picture, but not for ever: the pointer goes on. */
async function settled(picture: Picture): Promise<void> {
  const kLongest = 400; // ms
  await new Promise((done) => setTimeout(done, 0)); // the new job asks for it first
  await Promise.race([picture.idle(), new Promise((done) => setTimeout(done, kLongest))]);
}
