// All fields of the job, by table: a dozen in sight, the others under "More".
import { useComputed, useSignal, useSignalEffect } from '@preact/signals';
import { useContext, useEffect, useMemo } from 'preact/hooks';
import type { Words } from 'swathe';
import { openField } from '../state/show';
import { FieldsContext } from './context';
import { idOf } from './field';
import { One } from './group';
import type { Open } from './group';
import { Many } from './many';
import { holdWhilePressed } from './press';
import { groupsOf, inSight, tableOf } from './tables';

export function Fields({ words }: { words: Words }) {
  const { bench, lit } = useContext(FieldsContext);
  const groups = useMemo(() => groupsOf(words), [words]);
  const known = useMemo(() => new Map(words.keys.map((key) => [key.key, key])), [words]);
  const open: Open = useSignal<ReadonlySet<string>>(new Set());
  const values = useComputed(() => new Map(bench.fields.value.map((one) => [one.key, one])));

  useEffect(holdWhilePressed, []);

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
