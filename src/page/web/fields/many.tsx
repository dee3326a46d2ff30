// Tables that there may be many of: a line each, its fields below it when it is open.
import { useComputed, useSignal } from '@preact/signals';
import { useContext, useEffect, useMemo, useRef } from 'preact/hooks';
import type { FieldValue } from 'swathe';
import { notMetOf } from '../rules/not_met';
import { late } from '../state/late';
import { say } from '../words/en';
import { addTable } from './add_table';
import { FieldsContext } from './context';
import { idOf } from './field';
import { Keys, MoreButton, toggle } from './group';
import type { GroupGiven } from './group';
import { removeOne } from './remove_one';
import { RuleSign } from './rule_sign';
import { subjectsOf } from './subjects';
import { countOf, inSight, keyOf } from './tables';
import { listShown, readToml } from './toml_value';

/** What takes longer is said to be under way, in milliseconds. */
const kLong = 1000;

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

export function Many({ group, many, known, values, open }: GroupGiven & { many: [number, number] }) {
  const given = useContext(FieldsContext);
  const { bench } = given;
  const { path } = group;
  const trouble = useSignal('');
  const adding = useSignal(0); // so many were asked for and are not there yet
  const isAdding = useComputed(() => adding.value > 0);
  const slow = useMemo(() => late(() => isAdding.value, kLong), []);
  useEffect(() => slow.stop, []);
  const removing = useRef(false);
  const count = countOf(path, bench.fields.value);
  const title = say.groups[path] ?? path;
  const one = say.one[path] ?? path;
  async function add(): Promise<void> {
    adding.value += 1;
    trouble.value = '';
    const added = await addTable(path, given);
    adding.value -= 1;
    if ('why' in added) trouble.value = added.why;
    else open.value = new Set(open.value).add(`${path}.${added.number}`);
  }
  async function remove(number: number): Promise<void> {
    if (removing.current) return; // the second press on what goes
    removing.current = true;
    trouble.value = await removeOne(path, number, given) ? '' : say.job.notABlock;
    removing.current = false;
  }
  // Of what nobody has, nothing is shown but how to begin with it.
  return (
    <section class="group" aria-label={title}>
      <h2>
        <span>{title}</span>
        <span class="caution" role="status">{slow.value && say.job.adding}</span>
        {count < many[1] &&
          <button type="button" class="more" onClick={() => void add()}>{say.add[path] ?? one}</button>}
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
              <span>{called}{!shown && <RuleSign words={notMetOf(name, bench.findings.value)} />}</span>{' '}
              <span class="summary">{summary(path, number, values)}</span>
            </button>
            {(shown || wrong) &&
              <div class="item-body">
                <Keys group={group} known={known} values={values} number={number} more={more} />
                <p class="item-tools">
                  {rest && <MoreButton title={called} more={more} hidden={[]} onToggle={() => toggle(open, `more ${name}`)} />}
                  {count > many[0] &&
                    <button type="button" class="more" aria-label={say.job.removeOf(called)} onClick={() => void remove(number)}>{say.job.remove}</button>}
                </p>
              </div>}
          </div>
        );
      })}
      {trouble.value !== '' && <p class="fault" role="alert">{trouble.value}</p>}
    </section>
  );
}
