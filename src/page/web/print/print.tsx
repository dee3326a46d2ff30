// The tab "Print": what there is to print, or why nothing is; what came of it; sheets shown small.
import { useSignal, useSignalEffect } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import { Overtaken } from 'swathe';
import type { PrintFile, Ways, Words } from 'swathe';
import type { Back } from '../state/back';
import { late } from '../state/late';
import { until } from '../state/until';
import { why } from '../state/why';
import type { WorkBench } from '../state/make_bench';
import { fillTab, openTab, saveFile } from '../state/save';
import { say } from '../words/en';
import { Foot } from './foot';
import type { Maker } from './make';
import { Offered } from './offered';
import { useOff } from './off';
import { Reason } from './reason';
import { SheetsDialog } from './sheets';
import { waysOf } from './ways';

/** How long a file waits for the job to be worked out, in milliseconds. */
const kPatience = 10_000;

export interface PrintGiven {
  bench: WorkBench;
  words: Words;
  back: Back;
  maker: Maker;
  seeRules: () => void;
  seeField: (key: string) => void;
}

export function Print({ bench, words, back, maker, seeRules, seeField }: PrintGiven) {
  const ways = useSignal<Ways | null>(null);
  const seen = useSignal<{ title: string; files: readonly PrintFile[] } | null>(null);
  const isOld = () => bench.stale.value || bench.opened.value?.version !== back.version.value;
  const isFaulty = () => bench.told.value.length > 0 || bench.toldHalf.value.size > 0;
  const old = useOff(isOld), off = useOff(isFaulty);
  const counts = useMemo(() => late(isOld), [bench, back]);
  useEffect(() => counts.stop, [counts]);
  useSignalEffect(() => {
    if (back.version.value === 0) return;
    waysOf(back.core, back.version.value).then((found) => {
      ways.value = found;
    }, (error) => {
      if (!(error instanceof Overtaken)) bench.trouble.value = why(error);
    });
  });

  /** Told of the job that is on the bench now, even when another one is there by then. */
  function teller(): (words: string) => void {
    const job = bench.jobs;
    return (words) => (maker.told.value = { job, words });
  }

  /** What was changed last is in the job, and the core behind has it: whether it could be worked out. */
  async function isReady(): Promise<boolean> {
    await bench.quiet();
    await until(() => !isOld() || bench.faults.value.length > 0 || bench.half.faults.value.size > 0, kPatience);
    return !isOld();
  }

  async function pdf(name: string, how: 'open' | 'save'): Promise<void> {
    // In the click itself, or the browser takes it for an advertisement.
    const tab = how === 'open' ? openTab(say.print.making(name)) : null;
    const tell = teller();
    tell('');
    try {
      if (!(await isReady())) {
        tab?.close();
        tell(say.print.notPrinted);
        return;
      }
      const made = await maker.file(back, name);
      if (typeof made === 'string') {
        tab?.close();
        tell(made === 'stopped' ? say.print.stopped : say.print.overtaken(name));
        return;
      }
      if (tab) fillTab(tab, name, made);
      else saveFile(name, made);
      if (how === 'open' && !tab) tell(say.print.blocked(name));
    } catch (error) {
      tab?.close();
      tell(say.print.failed(why(error)));
    }
  }

  async function zip(): Promise<void> {
    const name = `${bench.file.peek().replace(/\.toml$/i, '')}.zip`;
    const tell = teller();
    tell('');
    try {
      await bench.quiet();
      const bytes = await maker.zip(bench.text.peek(), bench.file.peek(), name);
      if (bytes) saveFile(name, bytes);
      else tell(say.print.stopped);
    } catch (error) {
      tell(say.print.failed(why(error)));
    }
  }

  const offered = bench.opened.value !== null || bench.faults.value.length === 0;
  return (
    <div class={old && ways.value ? 'print old' : 'print'}>
      <Reason bench={bench} words={words} seeRules={seeRules} seeField={seeField} />
      {!offered ? null
        : ways.value
          ? <Offered bench={bench} words={words} ways={ways.value} maker={maker} old={old} off={off}
              see={(title, files) => (seen.value = { title, files })} pdf={pdf} zip={zip} />
          : <p class="caution">{say.print.counting}</p>}
      {offered && <Foot bench={bench} maker={maker} counts={counts.value && !isFaulty() && ways.value !== null} />}
      {seen.value &&
        <SheetsDialog core={back.core} title={seen.value.title} files={seen.value.files} pdf={pdf}
          onClose={() => (seen.value = null)}><Foot bench={bench} maker={maker} /></SheetsDialog>}
    </div>
  );
}
