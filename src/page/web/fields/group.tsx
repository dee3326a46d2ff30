// The fields of one table of the job.
import type { Signal } from '@preact/signals';
import { useContext } from 'preact/hooks';
import type { FieldValue, KeyWords } from 'swathe';
import { notMetOf } from '../rules/not_met';
import { say } from '../words/en';
import { FieldsContext } from './context';
import { Field } from './field';
import { RuleSign } from './rule_sign';
import { inSight, keyOf } from './tables';
import type { Group } from './tables';

/** Tables that are open, by name, and those of which more is shown: "more bumper.2". */
export type Open = Signal<ReadonlySet<string>>;

export function toggle(open: Open, name: string): void {
  const next = new Set(open.value);
  if (!next.delete(name)) next.add(name);
  open.value = next;
}

export interface GroupGiven {
  group: Group;
  known: ReadonlyMap<string, KeyWords>;
  values: ReadonlyMap<string, FieldValue>;
  open: Open;
}

export function One({ group, known, values, open }: GroupGiven) {
  const { bench } = useContext(FieldsContext);
  const more = open.value.has(`more ${group.path}`);
  const title = say.groups[group.path] ?? group.path;
  const rest = group.keys.some((key) => values.has(key) && !inSight(key, bench.fields.value));
  return (
    <section class="group" aria-label={title}>
      <h2>
        <span>{title}</span>
        {rest && <MoreButton title={title} more={more} hidden={more ? [] : group.keys}
          onToggle={() => toggle(open, `more ${group.path}`)} />}
      </h2>
      <Keys group={group} known={known} values={values} number={null} more={more} />
    </section>
  );
}

/** `hidden`: keys of which it shows those that are not in sight. */
export function MoreButton({ title, more, hidden, onToggle }: {
  title: string; more: boolean; hidden: readonly string[]; onToggle: () => void;
}) {
  const { bench } = useContext(FieldsContext);
  const notMet = hidden.filter((key) => !inSight(key, bench.fields.value))
    .flatMap((key) => notMetOf(key, bench.findings.value));
  return (
    <button type="button" class="more" aria-expanded={more}
      aria-label={more ? say.job.lessOf(title) : say.job.moreOf(title)} onClick={onToggle}>
      {more ? say.job.less : say.job.more}<RuleSign words={notMet} /></button>
  );
}

export function Keys({ group, known, values, number, more }: Omit<GroupGiven, 'open'> & { number: number | null; more: boolean }) {
  const { bench } = useContext(FieldsContext);
  return (
    <>
      {group.keys.map((path) => {
        const key = keyOf(path, number);
        const value = values.get(key), words = known.get(path);
        if (!value || !words) return null;
        const wrong = bench.half.faults.value.has(key) || bench.told.value.some((fault) => fault.key === key);
        if (!more && !wrong && !inSight(path, bench.fields.value)) return null;
        return <Field words={words} value={value} key={key} />;
      })}
    </>
  );
}
