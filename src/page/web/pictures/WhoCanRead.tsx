// Who can read the number: the machine square on from its four sides, each with what somebody there
// reads, and the way to look at it from anywhere.
import { useSignal } from '@preact/signals';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { PlaceVerdict } from 'swathe';
import type { Bench } from '../state/bench';
import { loadLabelFont } from './labels';
import { point, subjectAt } from './links';
import { Newest } from './newest';
import { Picture } from './picture';
import { WalkRound } from './WalkRound';
import { bearingOf, kWays, type Way } from './ways';
import { useNow } from './use_now';
import { View } from './View';
import { say } from '../words/en';

const words = say.pictures;

/** A region of the page, with its heading. It takes the size that it is given. */
export function WhoCanRead({ bench }: { bench: Bench }) {
  const verdicts = useSignal<readonly PlaceVerdict[]>([]);
  const open = useSignal<Way | null>(null);
  const opener = useRef<HTMLElement | null>(null);

  const asking = useMemo(
    () => new Newest(() => bench.core.verdicts(), (answer: PlaceVerdict[]) => void (verdicts.value = answer)),
    [bench],
  );
  useNow(() => {
    // While something is dragged it may wait; and always until the larger pictures were asked for.
    if (bench.opened.value && !bench.dragging.value) queueMicrotask(() => asking.want(undefined));
  });
  useEffect(() => {
    void loadLabelFont(bench.core);
    return () => asking.close();
  }, [asking]);

  const start = (way: Way, from: HTMLElement) => {
    opener.current = from;
    open.value = way;
  };
  const there = bench.opened.value !== null;
  const nameless = bench.opened.value?.job.number === '';
  return (
    <section class="picture who" aria-label={words.who}>
      <header>
        <h2>{words.who}</h2>
        <div class="controls">
          <button
            type="button"
            aria-haspopup="dialog"
            aria-disabled={!there}
            onClick={(event) => there && start('front', event.currentTarget)}
          >
            {words.walkRound}
          </button>
        </div>
      </header>
      {nameless && <p class="nameless">{words.noNumber}</p>}
      {there ? (
        <div class={`ways${bench.dimmed.value ? ' dimmed' : ''}`}>
          {kWays.map((way) => (
            <FromOneSide
              key={way}
              bench={bench}
              way={way}
              verdict={nameless ? undefined : verdicts.value.find((one) => one.way === way)}
              onOpen={(from) => start(way, from)}
            />
          ))}
        </div>
      ) : (
        <p class="none">{bench.faults.value.length === 0 ? words.coming : words.noJob}</p>
      )}
      {open.value && (
        <WalkRound
          bench={bench}
          bearing={bearingOf(open.value)}
          onClose={() => {
            open.value = null;
            opener.current?.focus();
          }}
        />
      )}
    </section>
  );
}

function FromOneSide(props: {
  bench: Bench;
  way: Way;
  verdict: PlaceVerdict | undefined;
  onOpen: (from: HTMLElement) => void;
}) {
  const { bench, way, verdict } = props;
  const picture = useMemo(
    () =>
      new Picture(bench, (size) =>
        bench.core.view({ bearing: bearingOf(way) }, { ...size, key: way }),
      ),
    [bench, way],
  );
  useEffect(() => () => picture.close(), [picture]);
  useNow(() => {
    void picture.size.value;
    if (bench.opened.value && !bench.dragging.value) queueMicrotask(() => picture.again());
  });
  const state = !verdict ? '' : verdict.reads === 'number' ? ' read' : ' unread';
  const name = words.way[way];
  return (
    <button
      type="button"
      class={`way${state}`}
      aria-haspopup="dialog"
      aria-label={verdict ? words.seenFrom(name, verdict.words) : name}
      onClick={(event) => props.onOpen(event.currentTarget)}
      onPointerMove={(event) => point(bench, subjectAt(event.target))}
      onPointerLeave={() => point(bench, '')}
    >
      <View bench={bench} picture={picture} />
      <span class="said">
        <strong>
          {state === ' unread' && <span class="sign" aria-hidden="true">! </span>}
          {name}
        </strong>{' '}
        <span class="verdict">{verdict?.words}</span>
      </span>
    </button>
  );
}
