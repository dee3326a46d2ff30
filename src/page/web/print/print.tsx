// What there is to print: the test page, then a way for the pattern, the numerals, the book; and all
// of it in one archive.
import { useSignal, useSignalEffect } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import { Overtaken } from 'swathe';
import type { PrintFile, Ways, Words } from 'swathe';
import type { Back } from '../state/back';
import { late } from '../state/late';
import { why } from '../state/why';
import type { WorkBench } from '../state/make_bench';
import { fillTab, openTab, saveFile } from '../state/save';
import { say } from '../words/en';
import { unbroken } from '../words/lengths';
import { All } from './all';
import { Foot } from './foot';
import type { Maker } from './make';
import { Measured } from './measured';
import { Reason } from './reason';
import { SheetsDialog } from './sheets';
import { waysOf } from './ways';

const kTestPage = 'test-page.pdf';

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

  async function pdf(name: string, how: 'open' | 'save'): Promise<void> {
    // In the click itself, or the browser takes it for an advertisement.
    const tab = how === 'open' ? openTab(say.print.making(name)) : null;
    const tell = teller();
    tell('');
    try {
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
      const bytes = await maker.zip(bench.text.peek(), bench.file.peek(), name);
      if (bytes) saveFile(name, bytes);
      else tell(say.print.stopped);
    } catch (error) {
      tell(say.print.failed(why(error)));
    }
  }

  const reason = <Reason bench={bench} words={words} seeRules={seeRules} seeField={seeField} />;
  if (!bench.opened.value && bench.faults.value.length > 0) return reason;
  if (!ways.value) return <><p class="caution">{say.print.counting}</p><Foot bench={bench} maker={maker} /></>;
  const { first, ways: patterns, numerals, book, notes } = ways.value;
  const broken = bench.findings.value.some((one) => one.verdict === 'fail');
  const old = isOld();
  const way = patterns.find((one) => one.kind === maker.way.value) ?? patterns[0];
  const see = (title: string, files: readonly PrintFile[]) => (seen.value = { title, files });
  const given = { pdf, old };
  const faulty = bench.told.value.length > 0 || bench.toldHalf.value.size > 0;
  return (
    <div class={old ? 'print old' : 'print'}>
      {reason}
      {broken && <p class="caution strong">{say.print.broken}</p>}
      <section aria-label={say.print.first}>
        <h2>{say.print.first}</h2>
        <button type="button" disabled={old} onClick={() => void pdf(kTestPage, 'open')}>{say.print.testPage}</button>
        <p class="small">{say.print.testWhy}</p>
        <Measured bench={bench} words={words} />
        <Files files={first} {...given} />
      </section>
      <section aria-label={say.print.pattern}>
        <h2>{say.print.pattern}</h2>
        <fieldset class="choices">
          <legend>{say.print.patternWhy}</legend>
          {patterns.map((one) => (
            <label key={one.kind} class={one.kind === way?.kind ? 'chosen' : undefined}>
              <input type="radio" name="way" value={one.kind} aria-label={one.words} checked={one.kind === way?.kind}
                onChange={() => (maker.way.value = one.kind)} />
              <span><b>{one.words}</b><i>{unbroken(one.sheets)}</i></span>
            </label>
          ))}
        </fieldset>
        {way &&
          <>
            <button type="button" disabled={old} onClick={() => see(say.print.seeOf[way.kind] ?? way.words, way.files)}>
              {say.print.see(say.print.seeOf[way.kind] ?? way.words)}</button>
            <Files files={way.files} {...given} />
          </>}
      </section>
      <section aria-label={say.print.numerals}>
        <h2>{say.print.numerals}</h2>
        {numerals.length === 0
          ? <p class="small">{say.print.noNumerals}</p>
          : <>
            <button type="button" disabled={old} onClick={() => see(say.print.numerals.toLowerCase(), numerals)}>
              {say.print.see(say.print.numerals.toLowerCase())}</button>
            <Files files={numerals} {...given} />
          </>}
      </section>
      <section aria-label={say.print.book}>
        <h2>{say.print.book}</h2>
        <button type="button" disabled={old} onClick={() => see(say.print.book.toLowerCase(), book)}>
          {say.print.see(say.print.book.toLowerCase())}</button>
        <Files files={book} {...given} />
      </section>
      {notes.map((note) => <p class="small" key={note}>{unbroken(note)}</p>)}
      <All making={maker.making.value} old={bench.stale.value} zip={() => void zip()} />
      <Foot bench={bench} maker={maker} counts={counts.value && !faulty} />
      {seen.value &&
        <SheetsDialog core={back.core} title={seen.value.title} files={seen.value.files} pdf={pdf}
          onClose={() => (seen.value = null)}><Foot bench={bench} maker={maker} /></SheetsDialog>}
    </div>
  );
}

function Files({ files, pdf, old }: {
  files: readonly PrintFile[]; pdf: (name: string, how: 'open' | 'save') => void; old: boolean;
}) {
  return (
    <ul class="files">
      {files.map((file) => (
        <li key={file.name}>
          <span class="name">{file.name}</span>
          <span class="count">{say.print.sheets(file.pages)}</span>
          <button type="button" class="plain" disabled={old} aria-label={say.print.openPdf(file.name)}
            onClick={() => pdf(file.name, 'open')}>{say.print.open}</button>
          <button type="button" class="plain" disabled={old} aria-label={say.print.savePdf(file.name)}
            onClick={() => pdf(file.name, 'save')}>{say.print.save}</button>
        </li>
      ))}
    </ul>
  );
}
