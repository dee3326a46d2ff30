// Where something is along a side: a part of it in %, or a distance from one of its corners.
import { useContext } from 'preact/hooks';
import type { WorkBench } from '../state/make_bench';
import { say } from '../words/en';
import { FieldsContext } from './context';
import type { EditorGiven } from './editors';
import { PlacePart } from './place_part';
import { beside } from './sides';
import { readToml, writeToml } from './toml_value';
import { typeInto } from './use_field';

type Way = 'share' | 'distance' | 'corner' | 'opening';

interface Place {
  way: Way;
  share: string;
  distance: string;
  corner: string;
}

/** "50%", ["9 in", "front"] or their like: what stands there after the side. */
function placeOf(parts: unknown[], sides: readonly string[], side: string): Place {
  const [first, second] = parts;
  const place: Place = { way: 'share', share: '50%', distance: '', corner: beside(side, sides)[0] ?? '' };
  if (typeof second === 'string')
    return { ...place, way: 'distance', distance: String(first ?? ''), corner: second };
  if (first === 'corner' || first === 'opening') return { ...place, way: first };
  return { ...place, share: String(first ?? '50%') };
}

function partsOf(place: Place): string[] {
  if (place.way === 'distance') return [place.distance, place.corner];
  return [place.way === 'share' ? place.share : place.way];
}

/** Says where it is by its distance from a corner, and it stays there; whether that can be said. */
async function sayFromCorner(bench: WorkBench, key: string): Promise<boolean> {
  if (bench.stale.peek()) return false; // the core knows where it was before
  const text = bench.text.peek();
  const outcome = await bench.during(bench.core.fromCorner(text, key)).catch(() => null);
  if (!outcome?.ok) return false;
  if (bench.text.peek() !== text) return true; // edited meanwhile, which counts
  bench.half.end([key]);
  bench.edit(outcome.value.text, 'set');
  return true;
}

/** `toml`: the key's value of a place. */
function Where({ name, place, sides, side, ways, wrong, toml }: {
  name: string; place: Place; sides: readonly string[]; side: string; ways: Way[]; wrong: boolean;
  toml: (place: Place) => string;
}) {
  const { bench } = useContext(FieldsContext);
  const onPlace = (at: Place) => void typeInto(bench, name, toml(at));
  const choose = async (way: Way) => {
    if (way !== 'distance') onPlace({ ...place, way });
    else if (!(await sayFromCorner(bench, name)))
      onPlace({ ...place, way, distance: bench.opened.peek()?.job.units === 'mm' ? '230 mm' : '9 in' });
  };
  const words = {
    share: say.job.atShare, distance: say.job.atDistance, corner: say.job.atCorner, opening: say.job.atOpening,
  };
  return (
    <>
      <label class="part"><span>{say.job.where}</span>
        <select value={place.way} onChange={(event) => void choose(event.currentTarget.value as Way)}>
          {ways.map((way) => <option value={way} key={way}>{words[way]}</option>)}
        </select>
      </label>
      {place.way === 'share' &&
        <PlacePart key="share" name={name} label={say.job.share} value={place.share} wrong={wrong} isLength={false}
          toml={(share) => toml({ ...place, share })} />}
      {place.way === 'distance' &&
        <>
          <PlacePart key="distance" name={name} label={say.job.distance} value={place.distance} wrong={wrong} isLength
            toml={(distance) => toml({ ...place, distance })} />
          <label class="part"><span>{say.job.fromCorner}</span>
            <select value={place.corner}
              onChange={(event) => onPlace({ ...place, corner: event.currentTarget.value })}>
              {[...new Set([...beside(side, sides), place.corner])].map((one) =>
                <option value={one} key={one}>{one}</option>)}
            </select>
          </label>
        </>}
    </>
  );
}

/** An end of a bumper: ["front", "50%"], ["front", "9 in", "left"], ["front", "corner"]. */
export function EndEditor({ value, wrong, sides }: EditorGiven & { sides: string[] }) {
  const { bench } = useContext(FieldsContext);
  const read = readToml(value.value);
  const parts = Array.isArray(read) ? read : [];
  const side = typeof parts[0] === 'string' ? parts[0] : sides[0] ?? '';
  const place = placeOf(parts.slice(1), sides, side);
  const toml = (to: string, at: Place) => writeToml([to, ...partsOf(at)]);
  return (
    <div class="parts">
      <label class="part"><span>{say.job.side}</span>
        <select value={side} onChange={(event) => {
          const to = event.currentTarget.value;
          const corners = beside(to, sides);
          const corner = corners.includes(place.corner) ? place.corner : corners[0] ?? '';
          void typeInto(bench, value.key, toml(to, { ...place, corner }));
        }}>
          {[...new Set([...sides, side])].map((one) => <option value={one} key={one}>{one}</option>)}
        </select>
      </label>
      <Where name={value.key} place={place} sides={sides} side={side} wrong={wrong}
        ways={['share', 'distance', 'corner', 'opening']} toml={(at) => toml(side, at)} />
    </div>
  );
}

/** A place on the side that another key of its table names: "50%", ["9 in", "front"]. */
export function PlaceEditor({ value, wrong, sides }: EditorGiven & { sides: string[] }) {
  const { bench } = useContext(FieldsContext);
  const beginning = value.key.slice(0, value.key.lastIndexOf('.'));
  const side = bench.fields.value.find((one) => one.key === `${beginning}.side`)?.shown ?? '';
  const read = readToml(value.value);
  const place = placeOf(Array.isArray(read) ? read : [read], sides, side);
  return (
    <div class="parts">
      <Where name={value.key} place={place} sides={sides} side={side} wrong={wrong} ways={['share', 'distance']}
        toml={(at) => {
          const parts = partsOf(at);
          return writeToml(parts.length === 1 ? parts[0]! : parts);
        }} />
    </div>
  );
}
