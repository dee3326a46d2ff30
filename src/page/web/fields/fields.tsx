// All fields of the job, by table: a dozen in sight, the others under "More".
import { useComputed, useSignal, useSignalEffect } from '@preact/signals';
import type { Signal } from '@preact/signals';
import { useContext, useMemo } from 'preact/hooks';
import type { FieldValue, KeyWords, Words } from 'swathe';
import { say } from '../words/en';
import { FieldsContext } from './context';
import { Field, idOf } from './field';
import { notMetOf } from '../rules/not_met';
import { openField } from '../state/show';
import { addChanges } from './new_table';
import { withoutTable } from './remove_table';
import { RuleSign } from './rule_sign';
import { countOf, groupsOf, inSight, keyOf, tableOf } from './tables';
import type { Group } from './tables';
import { subjectsOf } from './subjects';
import { listShown, readToml } from './toml_value';

type Open = Signal<ReadonlySet<string>>;

function toggle(open: Open, name: string): void {
  const next = new Set(open.value);
  if (!next.delete(name)) next.add(name);
  open.value = next;
}

export function Fields({ words }: { words: Words }) {
  const { bench, lit } = useContext(FieldsContext);
  const groups = useMemo(() => groupsOf(words), [words]);
  const known = useMemo(() => new Map(words.keys.map((key) => [key.key, key])), [words]);
  const open: Open = useSignal<ReadonlySet<string>>(new Set());
  const values = useComputed(() => new Map(bench.fields.value.map((one) => [one.key, one])));

  // What is selected in a picture is shown here: its table is opened.
  useSignalEffect(() => {
    const keys = [...lit.selected.value];
    if (keys.length === 0 || document.activeElement?.closest('.fields')) return;
    const next = new Set(open.peek());
    for (const key of keys) {
      const table = /^(.*\.\d+)\./.exec(key)?.[1];
      if (table) next.add(table);
      const path = key.replace(/\.\d+(?=\.)/g, '');
      if (!inSight(path, bench.fields.peek())) next.add(`more ${table ?? path.slice(0, path.lastIndexOf('.'))}`);
    }
    if (next.size !== open.peek().size) open.value = next;
    setTimeout(() => {
      if (document.activeElement?.closest('.fields')) return; // led to one of them
      document.querySelector('.fields .field.selected')?.scrollIntoView({ block: 'nearest' });
    }, 30);
  });

  useSignalEffect(() => {
    const key = openField.value;
    if (key === null) return;
    openField.value = null;
    const next = new Set(open.peek());
    const table = /^(.*\.\d+)\./.exec(key)?.[1];
    if (table) next.add(table);
    const path = key.replace(/\.\d+(?=\.)/g, '');
    if (!inSight(path, bench.fields.peek())) next.add(`more ${table ?? tableOf(path)}`);
    open.value = next;
    setTimeout(() => {
      const field = document.querySelector(`.fields [data-key="${CSS.escape(key)}"]`);
      const place = field?.querySelector<HTMLElement>('input, select') ?? document.getElementById(idOf(key));
      (field ?? place)?.scrollIntoView({ block: 'nearest' });
      place?.focus({ preventScroll: true });
    }, 30);
  });

  return (
    <div class="fields">
      {groups.map((group) => group.many
        ? <Many group={group} many={group.many} known={known} values={values.value} open={open} key={group.path} />
        : <One group={group} known={known} values={values.value} open={open} key={group.path} />)}
    </div>
  );
}

interface Given {
  group: Group;
  known: ReadonlyMap<string, KeyWords>;
  values: ReadonlyMap<string, FieldValue>;
  open: Open;
}

function One({ group, known, values, open }: Given) {
  const { bench } = useContext(FieldsContext);
  const more = open.value.has(`more ${group.path}`);
  const title = say.groups[group.path] ?? group.path;
  const rest = group.keys.some((key) => values.has(key) && !inSight(key, bench.fields.value));
  return (
    <section class="group" aria-label={title}>
      <h2>
        <span>{title}</span>
        {rest && <MoreButton title={title} more={more} hidden={more ? [] : group.keys} onToggle={() => toggle(open, `more ${group.path}`)} />}
      </h2>
      <Keys group={group} known={known} values={values} number={null} more={more} />
    </section>
  );
}

/** `hidden`: keys of which it shows those that are not in sight. */
function MoreButton({ title, more, hidden, onToggle }: {
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

function Keys({ group, known, values, number, more }: Omit<Given, 'open'> & { number: number | null; more: boolean }) {
  const { bench } = useContext(FieldsContext);
  return (
    <>
      {group.keys.map((path) => {
        const key = keyOf(path, number);
        const value = values.get(key), words = known.get(path);
        if (!value || !words) return null;
        const wrong = bench.halfTyped.value.has(key) || bench.told.value.some((fault) => fault.key === key);
        if (!more && !wrong && !inSight(path, bench.fields.value)) return null;
        return <Field words={words} value={value} key={key} />;
      })}
    </>
  );
}

/** One line that says which of many it is: "left, 9 in from front". */
function summary(path: string, number: number, values: ReadonlyMap<string, FieldValue>): string {
  const shown = (key: string) => {
    const value = values.get(`${path}.${number}.${key}`);
    return value ? listShown(readToml(value.value)) || value.shown : '';
  };
  /** Where along its side, and for an end which side that is. */
  const place = (key: string, isEnd: boolean) => {
    const read = readToml(values.get(`${path}.${number}.${key}`)?.value ?? '');
    if (!Array.isArray(read)) return shown(key);
    const [distance, corner] = read.slice(isEnd ? 1 : 0).map(String);
    if (corner === undefined) return shown(key);
    return `${isEnd ? `${read[0]}, ` : ''}${say.job.from(distance!, corner)}`;
  };
  switch (path) {
    case 'bumper':
      return `${place('from', true)} – ${place('to', true)}`;
    case 'bracket':
      return `${shown('side')}, ${place('at', false)}`;
    case 'opening':
      return `${shown('side')}, ${shown('width')}`;
    case 'numerals.place':
      return shown('side');
    default:
      return '';
  }
}

function Many({ group, many, known, values, open }: Given & { many: [number, number] }) {
  const { bench } = useContext(FieldsContext);
  const { path } = group;
  const trouble = useSignal('');
  const count = countOf(path, bench.fields.value);
  const title = say.groups[path] ?? path;
  const one = say.one[path] ?? path;
  // Of what nobody has, nothing is shown but how to begin with it.
  return (
    <section class="group" aria-label={title}>
      <h2>
        <span>{title}</span>
        {count < many[1] &&
          <button type="button" class="more" onClick={() => {
            trouble.value = '';
            const next = count + 1;
            void bench.set(addChanges(path, next, bench)).then((faults) => {
              if (faults.length > 0) trouble.value = faults.map((fault) => fault.sentence).join(' ');
              else open.value = new Set(open.value).add(`${path}.${next}`);
            });
          }}>{say.add[path] ?? one}</button>}
      </h2>
      {Array.from({ length: count }, (_, k) => k + 1).map((number) => {
        const name = `${path}.${number}`;
        const shown = open.value.has(name), more = open.value.has(`more ${name}`);
        const called = path === 'bumper' ? values.get(`${name}.name`)?.shown ?? String(number) : `${one} ${number}`;
        const wrong = bench.told.value.some((fault) => fault.key === name || fault.key?.startsWith(`${name}.`));
        const rest = group.keys.some((key) => values.has(keyOf(key, number)) && !inSight(key, bench.fields.value));
        return (
          <div class={wrong ? 'item at-fault' : 'item'} key={name} role="group" aria-label={called}>
            <button type="button" class="item-name" aria-expanded={shown || wrong} id={idOf(name)}
              onPointerEnter={() => (bench.pointed.value = subjectsOf(name, bench.fields.peek()))}
              onPointerLeave={() => (bench.pointed.value = [])}
              onClick={() => {
                bench.selected.value = shown ? [] : subjectsOf(name, bench.fields.peek());
                toggle(open, name);
              }}>
              <span>{called}{!shown && <RuleSign words={notMetOf(name, bench.findings.value)} />}</span> <span class="summary">{summary(path, number, values)}</span>
            </button>
            {(shown || wrong) &&
              <div class="item-body">
                <Keys group={group} known={known} values={values} number={number} more={more} />
                <p class="item-tools">
                  {rest && <MoreButton title={called} more={more} hidden={[]} onToggle={() => toggle(open, `more ${name}`)} />}
                  {count > many[0] &&
                    <button type="button" class="more" aria-label={say.job.removeOf(called)} onClick={() => {
                      const next = withoutTable(bench.text.peek(), path, number);
                      if (next === null) trouble.value = say.job.notABlock;
                      else {
                        bench.selected.value = [];
                        bench.edit(next, 'remove');
                      }
                    }}>{say.job.remove}</button>}
                </p>
              </div>}
          </div>
        );
      })}
      {trouble.value !== '' && <p class="fault" role="alert">{trouble.value}</p>}
    </section>
  );
}
