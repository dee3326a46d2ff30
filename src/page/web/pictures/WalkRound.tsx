// Round the machine: the chart of who can read it from where, the eye that is dragged round on it,
// and the machine as that eye sees it.
import { batch, useComputed, useSignal } from '@preact/signals';
import { useEffect, useId, useMemo, useRef } from 'preact/hooks';
import type { Observer, PlaceVerdict } from 'swathe';
import type { Bench } from '../state/bench';
import { placeOn, roundWords, standAt, turned } from './compass';
import { lengthWords } from '../words/lengths';
import { walked, type Units } from './lengths';
import { Newest } from './newest';
import { Picture } from './picture';
import { View } from './View';
import { bearingOf, kWays } from './ways';
import { useNow } from './use_now';
import { say } from '../words/en';

const words = say.pictures;

const kTurn = 5; // degrees that an arrow key goes round
const kQuarter = 45; // and Page Up and Page Down
const kHighest = 2500; // mm; higher where the job asks it
const kFarthest = 30_000;

export function WalkRound(props: { bench: Bench; bearing: number; onClose: () => void }) {
  const { bench } = props;
  const dialog = useRef<HTMLDialogElement>(null);
  const heading = useId();
  const bearing = useSignal(props.bearing);
  const distance = useSignal<number | null>(null); // the job's own until it is changed
  const height = useSignal<number | null>(null);
  const color = useSignal(0);
  const verdict = useSignal<PlaceVerdict | null>(null);
  const units = useComputed<Units>(() => bench.opened.value?.job.units ?? 'in');

  const observer = (): Observer => ({
    bearing: bearing.peek(),
    color: color.peek(),
    ...(distance.peek() === null ? {} : { distance: distance.peek()! }),
    ...(height.peek() === null ? {} : { eye_height: height.peek()! }),
  });

  const chart = useMemo(() => new Picture(bench, (size) => bench.core.chart(observer(), size)), [bench]);
  const view = useMemo(
    () => new Picture(bench, (size) => bench.core.view(observer(), { ...size, all_round: true, key: 'round' })),
    [bench],
  );
  const asking = useMemo(
    () => new Newest(() => bench.core.verdict(observer()), (answer: PlaceVerdict) => void (verdict.value = answer)),
    [bench],
  );
  useEffect(() => {
    dialog.current?.showModal();
    return () => {
      chart.close();
      view.close();
      asking.close();
    };
  }, []);

  useNow(() => {
    // Whoever goes round stays on the same chart.
    void [bench.opened.value, chart.size.value, height.value];
    if (bench.opened.value) chart.again();
  });
  useNow(() => {
    void [view.size.value, bearing.value, distance.value, height.value, color.value];
    if (!bench.opened.value) return;
    view.again();
    asking.want(undefined);
  });

  const said = verdict.value;
  const number = bench.opened.value?.job.number ?? '';
  const unread = said !== null && said.reads !== 'number' && number !== '';
  const away = distance.value ?? said?.distance ?? 0;
  const high = height.value ?? said?.eye_height ?? 0;
  const inches = units.value === 'in';
  const rings = chart.drawn.value?.rings;
  const nearest = rings?.radii[0]?.mm ?? 0;
  const farthest = Math.max(kFarthest, 1.2 * (rings?.radii[rings.radii.length - 1]?.mm ?? 0));
  const colors = colorsOf(bench);

  return (
    <dialog
      class="round"
      ref={dialog}
      aria-labelledby={heading}
      onClose={props.onClose}
      onClick={(event) => {
        if (event.target === event.currentTarget) event.currentTarget.close(); // beside it
      }}
    >
      <div class="inside">
        <header>
          <h2 id={heading}>{words.who}</h2>
          <button type="button" onClick={() => dialog.current?.close()}>
            {words.close}
          </button>
        </header>
        <div class="chart">
          <View bench={bench} picture={chart} />
          <Eye
            chart={chart}
            bearing={bearing.value}
            away={away}
            units={units.value}
            onStand={(at) =>
              batch(() => {
                bearing.value = at.bearing;
                if (at.mm !== undefined) distance.value = Math.round(at.mm);
              })
            }
          />
        </div>
        {number !== '' && (
          <ul class="key">
            <li class="reads">{words.canBeRead(number)}</li>
            <li class="another">{words.another}</li>
            <li class="nothing">{words.cannotBeRead}</li>
          </ul>
        )}
        <div class="seen">
          <View bench={bench} picture={view} />
          <p class={`verdict${unread ? ' unread' : ' read'}`} aria-live="polite">
            {said && (
              <>
                <strong>
                  {unread && <span class="sign" aria-hidden="true">! </span>}
                  {words.stands(roundWords(bearing.value), walked(away, units.value))}:
                </strong>{' '}
                {number === '' ? words.noNumber : said.words}
              </>
            )}
          </p>
        </div>
        <div class="where">
          <div class="ways-to-go" role="group" aria-label={words.standing}>
            {kWays.map((way) => (
              <button
                key={way}
                type="button"
                aria-pressed={Math.abs(turned(bearing.value - bearingOf(way))) < 0.5}
                onClick={() => (bearing.value = bearingOf(way))}
              >
                {words.way[way]}
              </button>
            ))}
          </div>
          <Range
            name={words.away}
            says={walked(away, units.value)}
            least={nearest}
            most={farthest}
            step={inches ? 304.8 : 500}
            value={away}
            onValue={(mm) => (distance.value = mm)}
          />
          <Range
            name={words.high}
            says={lengthWords(high, units.value)}
            least={0}
            most={Math.max(kHighest, said?.eye_height ?? 0)}
            step={inches ? 25.4 : 20}
            value={high}
            onValue={(mm) => (height.value = mm)}
          />
          {colors.length > 1 && (
            <label class="setting">
              <span>{words.color}</span>
              <select
                value={String(color.value)}
                onChange={(event) => (color.value = Number(event.currentTarget.value))}
              >
                {colors.map((name, k) => (
                  <option key={name} value={String(k)}>
                    {name}
                  </option>
                ))}
              </select>
            </label>
          )}
        </div>
      </div>
    </dialog>
  );
}

/** Somebody who looks at the machine, on the chart. */
function Eye(props: {
  chart: Picture;
  bearing: number;
  away: number;
  units: Units;
  onStand: (at: { bearing: number; mm?: number }) => void;
}) {
  const { chart, bearing, away } = props;
  const host = useRef<HTMLDivElement>(null);
  const rings = chart.drawn.value?.rings;
  const dragging = useRef(false);
  const eye = useRef<HTMLDivElement>(null);
  useEffect(() => eye.current?.focus(), [rings !== undefined]);

  const stand = (event: PointerEvent) => {
    const box = host.current?.getBoundingClientRect();
    if (!box || !rings) return;
    props.onStand(standAt(rings, { x: event.clientX - box.left, y: event.clientY - box.top }));
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const by = kRound[event.key];
    if (by === undefined) return;
    event.preventDefault();
    props.onStand({ bearing: (Math.round(bearing) + by + 360) % 360 });
  };
  const at = rings ? placeOn(rings, bearing, away) : null;
  return (
    <div
      class="round-ground"
      ref={host}
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        dragging.current = true;
        host.current?.setPointerCapture(event.pointerId);
        stand(event);
      }}
      onPointerMove={(event) => dragging.current && stand(event)}
      onPointerUp={() => (dragging.current = false)}
      onPointerCancel={() => (dragging.current = false)}
    >
      {at && rings && (
        <>
          <svg class="sightline" aria-hidden="true">
            <line x1={at.x} y1={at.y} x2={rings.center.x} y2={rings.center.y} />
          </svg>
          <div
            class="eye-grip"
            ref={eye}
            role="slider"
            tabIndex={0}
            aria-label={words.standing}
            aria-description={words.drag}
            aria-valuemin={-180}
            aria-valuemax={180}
            aria-valuenow={-Math.round(turned(bearing))}
            aria-valuetext={words.stands(roundWords(bearing), walked(away, props.units))}
            style={{ left: `${at.x}px`, top: `${at.y}px` }}
            onKeyDown={onKeyDown}
          >
            <span class="knob" />
          </div>
        </>
      )}
    </div>
  );
}

const kRound: Record<string, number | undefined> = {
  ArrowLeft: kTurn,
  ArrowUp: kTurn,
  ArrowRight: -kTurn,
  ArrowDown: -kTurn,
  PageUp: kQuarter,
  PageDown: -kQuarter,
};

function Range(props: {
  name: string;
  says: string;
  least: number;
  most: number;
  step: number;
  value: number;
  onValue: (value: number) => void;
}) {
  return (
    <label class="setting">
      <span>{props.name}</span>
      <input
        type="range"
        min={props.step * Math.ceil(props.least / props.step)}
        max={props.most}
        step={props.step}
        value={props.value}
        aria-valuetext={props.says}
        onInput={(event) => props.onValue(Number(event.currentTarget.value))}
      />
      <output>{props.says}</output>
    </label>
  );
}

/** The names in the job's `cloth.colors`, `{ red = "#b5121b", blue = "#1b3a93" }`. */
function colorsOf(bench: Bench): string[] {
  const value = bench.fields.value.find((field) => field.form === 'cloth.colors')?.value ?? '';
  return [...value.matchAll(/("[^"]*"|[A-Za-z0-9_-]+)\s*=/g)].map(([, name = '']) =>
    name.replace(/^"|"$/g, ''),
  );
}
