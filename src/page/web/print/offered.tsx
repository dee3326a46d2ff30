// What there is to print: the test page, then a way for the pattern, the numerals, the book; and all
// of it in one archive.
import type { PrintFile, Ways, Words } from 'swathe';
import type { WorkBench } from '../state/make_bench';
import { say } from '../words/en';
import { unbroken } from '../words/lengths';
import { All } from './all';
import type { Maker } from './make';
import { Measured } from './measured';

const kTestPage = 'test-page.pdf';

export interface OfferedGiven {
  bench: WorkBench;
  words: Words;
  ways: Ways;
  maker: Maker;
  /** The job has changed since. */
  old: boolean;
  /** It is at fault: nothing can be made. */
  off: boolean;
  /** Shows sheets small. */
  see: (title: string, files: readonly PrintFile[]) => void;
  pdf: (name: string, how: 'open' | 'save') => Promise<void>;
  zip: () => Promise<void>;
}

export function Offered({ bench, words, ways, maker, old, off, see, pdf, zip }: OfferedGiven) {
  const { first, ways: patterns, numerals, book, notes } = ways;
  const broken = bench.findings.value.some((one) => one.verdict === 'fail');
  const way = patterns.find((one) => one.kind === maker.way.value) ?? patterns[0];
  const given = { pdf, off };
  return (
    <>
      {broken && <p class="caution strong">{say.print.broken}</p>}
      <section aria-label={say.print.first}>
        <h2>{say.print.first}</h2>
        <button type="button" disabled={off} onClick={() => void pdf(kTestPage, 'open')}>{say.print.testPage}</button>
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
      <All making={maker.making.value} off={off} zip={() => void zip()} />
    </>
  );
}

function Files({ files, pdf, off }: {
  files: readonly PrintFile[]; pdf: (name: string, how: 'open' | 'save') => Promise<void>; off: boolean;
}) {
  return (
    <ul class="files">
      {files.map((file) => (
        <li key={file.name}>
          <span class="name">{file.name}</span>
          <span class="count">{say.print.sheets(file.pages)}</span>
          <button type="button" class="plain" disabled={off} aria-label={say.print.openPdf(file.name)}
            onClick={() => void pdf(file.name, 'open')}>{say.print.open}</button>
          <button type="button" class="plain" disabled={off} aria-label={say.print.savePdf(file.name)}
            onClick={() => void pdf(file.name, 'save')}>{say.print.save}</button>
        </li>
      ))}
    </ul>
  );
}
