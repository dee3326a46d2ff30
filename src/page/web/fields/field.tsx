// One key of the job as a field: its label, its value to be changed, what it read as, what is wrong.
import type { FieldValue, Fault, KeyWords } from 'swathe';
import { useContext } from 'preact/hooks';
import { notMetOf } from '../rules/not_met';
import { wasLedTo } from '../state/show';
import { say } from '../words/en';
import { inLabels, mendWords } from '../words/labels';
import { unbroken } from '../words/lengths';
import { FieldsContext } from './context';
import { Editor } from './editors';
import { RuleSign } from './rule_sign';
import { subjectsOf } from './subjects';
import { useHalfTyped } from './use_field';

/** Faults that are said at this key: its own, and those of parts of it. */
function faultsOf(key: string, faults: readonly Fault[]): Fault[] {
  return faults.filter((fault) => fault.key === key || fault.key?.startsWith(`${key}.`));
}

export function idOf(key: string): string {
  return `field-${key.replaceAll('.', '-')}`;
}

export function Field({ words, value }: { words: KeyWords; value: FieldValue }) {
  const { bench, lit, words: all } = useContext(FieldsContext);
  const { key } = value;
  const id = idOf(key);
  const half = useHalfTyped(bench, key);
  const faults = half ?? faultsOf(key, bench.told.value);
  const subjects = () => subjectsOf(key, bench.fields.peek());
  const notMet = notMetOf(key, bench.findings.value);
  const classes = ['field'];
  if (lit.selected.value.has(key)) classes.push('selected');
  else if (lit.pointed.value.has(key)) classes.push('lit');
  if (faults.length > 0) classes.push('at-fault');
  if (notMet.length > 0) classes.push('rule-not-met');
  if (!value.given) classes.push('usual');
  if (wide.has(words.form.kind)) classes.push('wide');
  const notice = bench.notices.value.find((one) => one.key === key);
  const describedBy = [faults.length > 0 ? `${id}-fault` : '', notMet.length > 0 ? `${id}-rule` : '', `${id}-meaning`]
    .filter((one) => one !== '').join(' ');
  const label = <>{words.label}<RuleSign words={notMet} /></>;
  const group = grouped.has(words.form.kind);
  return (
    <div class={classes.join(' ')} data-key={key}
      onPointerEnter={() => (bench.pointed.value = subjects())}
      onPointerLeave={() => (bench.pointed.value = [])}
      onFocusIn={() => {
        if (!wasLedTo(key)) bench.selected.value = subjects();
      }}
      {...(group ? { role: 'group', 'aria-labelledby': `${id}-label`, 'aria-describedby': describedBy } : {})}>
      {group
        ? <span class="label" id={`${id}-label`}>{label}</span>
        : <label for={id} class="label">{label}</label>}
      <div class="value">
        <Editor id={id} words={words} value={value} describedBy={describedBy} wrong={faults.length > 0} />
        {value.given && words.given !== 'needed' &&
          <button type="button" class="out" title={say.job.given} aria-label={`${words.label}: ${say.job.given}`}
            onClick={() => {
              bench.half.end([key]);
              void bench.remove([key]);
            }}>×</button>}
      </div>
      {notMet.length > 0 && <p class="not-met" id={`${id}-rule`}>{notMet.join(' ')}</p>}
      <p class="meaning" id={`${id}-meaning`}>{words.meaning}</p>
      {faults.length > 0 &&
        <div class="fault" id={`${id}-fault`} role="alert">
          {faults.map((fault, k) => (
            <p key={k}>
              {fault.key ? unbroken(inLabels(fault.sentence, all, fault.key, true)) : say.job.textFirst(fault.line)}
              {fault.mend.length > 0 && ' '}
              {fault.mend.length > 0 &&
                <button type="button" class="mend" onClick={() => {
                  bench.half.end([key]);
                  void bench.set(fault.mend);
                }}>{mendWords(fault.mend, all, key)}</button>}
            </p>
          ))}
        </div>}
      {notice && faults.length === 0 && <p class="notice">{unbroken(inLabels(notice.sentence, all, key, true))}</p>}
    </div>
  );
}

/** Kinds whose controls take the whole width, below the label. */
const wide: ReadonlySet<string> = new Set(['end', 'side-place', 'colors']);
/** Kinds whose fields are of several controls. */
const grouped: ReadonlySet<string> = new Set(['end', 'side-place', 'sides', 'colors', 'color']);
