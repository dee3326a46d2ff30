// What the season's rules come to, with their mends as buttons; and before that, what is wrong.
import { useSignal } from '@preact/signals';
import type { Finding, Words } from 'swathe';
import { goTo, leadTo } from '../state/show';
import type { WorkBench } from '../state/make_bench';
import { covers } from '../pictures/subjects';
import { sentence, wantedWords } from './not_met';
import { say } from '../words/en';
import { inLabels, mendWords } from '../words/labels';
import { unbroken } from '../words/lengths';

const kOrder = ['fail', 'warn', 'unknown', 'pass'] as const;
type Verdict = (typeof kOrder)[number];
/** So many of one verdict are shown at first. */
const kFirst = { fail: Infinity, warn: Infinity, unknown: 3, pass: 0 };
/** Never by color alone. */
const kSign = { fail: '✕', warn: '!', unknown: '?', pass: '✓' };

export interface RulesGiven {
  bench: WorkBench;
  words: Words;
  showText: () => void;
  showFields: () => void;
  seePrint: () => void;
}

export function Rules(given: RulesGiven) {
  const { bench } = given;
  const findings = bench.findings.value;
  const season = bench.opened.value?.job.season;
  return (
    <div class="rules">
      <Faults {...given} />
      {bench.opened.value && <p class="caution">{season ? say.rules.checkedAgainst(season) : say.rules.noSeason}</p>}
      {!bench.opened.value && bench.faults.value.length === 0 && <p class="caution">{say.page.loading}</p>}
      {kOrder.map((verdict) => (
        <Several key={verdict} verdict={verdict} given={given}
          findings={findings.filter((one) => one.verdict === verdict)} />
      ))}
      {bench.opened.value &&
        <button type="button" class="main" onClick={given.seePrint}>{say.rules.seePrint}</button>}
    </div>
  );
}

function Faults({ bench, words, showText }: RulesGiven) {
  const faults = bench.told.value;
  if (faults.length === 0) return null;
  return (
    <div class="faults" role="status">
      <h2>{say.rules.faults(faults.length)}</h2>
      <ul>
        {faults.map((fault, k) => (
          <li key={k}>
            <span class="sign" aria-hidden="true">✕</span>
            <div>
              <p title={fault.sentence}>{unbroken(inLabels(fault.sentence, words, fault.key))}</p>
              <p class="mends">
                <button type="button" class="mend" aria-label={say.rules.goTo(fault.line)} onClick={() => {
                  showText();
                  goTo.value = { line: fault.line, column: fault.column };
                }}>{say.rules.atLine(fault.line)}</button>
                {fault.mend.length > 0 &&
                  <button type="button" class="mend" onClick={() => void bench.set(fault.mend)}>
                    {mendWords(fault.mend, words)}</button>}
              </p>
            </div>
          </li>
        ))}
      </ul>
    </div>
  );
}

function Several({ verdict, findings, given }: { verdict: Verdict; findings: Finding[]; given: RulesGiven }) {
  const all = useSignal(false);
  if (findings.length === 0) return null;
  const first = kFirst[verdict];
  const shown = all.value ? findings : findings.slice(0, first);
  return (
    <section class={`findings ${verdict}`}>
      <h2><span class="sign" aria-hidden="true">{kSign[verdict]}</span> {say.rules[verdict](findings.length)}
        {findings.length > first &&
          <button type="button" class="more" aria-expanded={all.value} aria-label={`${say.rules[verdict](findings.length)}: ${all.value ? say.rules.hide : say.rules.show}`}
            onClick={() => (all.value = !all.value)}>
            {all.value ? say.rules.hide : say.rules.show}</button>}
      </h2>
      <ul>{shown.map((finding, k) => <One finding={finding} given={given} key={`${finding.id} ${k}`} />)}</ul>
    </section>
  );
}

/** At its place in the pictures, and at the field that says it, or that it is a part of. */
function pointAt(finding: Finding, { bench, showFields }: RulesGiven): void {
  bench.selected.value = finding.subjects;
  const first = finding.keys[0]?.key ?? '';
  const field = bench.fields.peek().find(({ key }) => key === first || first.startsWith(`${key}.`));
  if (!field) return;
  showFields();
  leadTo(field.key);
}

/** What only a person can tell, one click away: a choice's words, else the field that asks. */
function Answers({ finding, given }: { finding: Finding; given: RulesGiven }) {
  const { bench, words } = given;
  const key = finding.keys[0]?.key;
  const known = words.keys.find((one) => one.key === key);
  if (!key || !known) return null;
  const now = bench.fields.value.find((one) => one.key === key)?.shown;
  if (known.form.kind === 'choice') return (
    <p class="mends">{known.label}:{' '}
      {known.form.words.filter((word) => word !== now).map((word) => (
        <button type="button" class="mend" key={word} aria-label={say.job.change(known.label, word)}
          onClick={() => void bench.set([{ key, value: `"${word}"` }])}>{word}</button>
      ))}
    </p>);
  return (
    <p class="mends">
      <button type="button" class="mend" onClick={() => pointAt(finding, given)}>{say.rules.fillIn(known.label)}</button>
    </p>);
}

/** Whether it is about one of these parts, all parts of its kind, or a piece of it. */
function isAbout(finding: Finding, parts: readonly string[]): boolean {
  return finding.subjects.some((one) => parts.some((part) => covers(one, part) || covers(part, one)));
}

function One({ finding, given }: { finding: Finding; given: RulesGiven }) {
  const { bench, words } = given;
  const why = words.checks.find((check) => check.id === finding.id);
  const attested = say.rules.attested[finding.attested] ?? '';
  const lit = isAbout(finding, bench.selected.value) || isAbout(finding, bench.pointed.value);
  return (
    <li class={lit ? 'lit' : undefined}
      onPointerEnter={() => (bench.pointed.value = finding.subjects)}
      onPointerLeave={() => (bench.pointed.value = [])}>
      <button type="button" class="finding" onClick={() => pointAt(finding, given)}>
        <b>{sentence(finding.subject)}:</b> {unbroken(inLabels(finding.measured, words))}
        {finding.verdict !== 'pass' && <span class="wanted"> {wantedWords(finding)}</span>}
      </button>
      {finding.verdict !== 'pass' && finding.advice !== '' && <p class="advice">{sentence(unbroken(inLabels(finding.advice, words)))}.</p>}
      {finding.verdict === 'unknown' && <Answers finding={finding} given={given} />}
      {finding.mend.length > 0 &&
        <p class="mends">
          <button type="button" class="mend" onClick={() => void bench.set(finding.mend)}>
            {mendWords(finding.mend, words)}
          </button>
        </p>}
      {why && finding.verdict !== 'pass' &&
        <details><summary>{finding.rule || say.rules.why}</summary><p>{why.asks} {why.why}{attested !== '' && ` (${attested})`}</p></details>}
    </li>
  );
}
