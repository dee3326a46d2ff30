// The job at work: fields and text, the linked pictures, and the tabs beside them.
import { useSignal } from '@preact/signals';
import { useLayoutEffect } from 'preact/hooks';
import { Buy } from '../buy/buy';
import { FieldsContext } from '../fields/context';
import { Fields } from '../fields/fields';
import { Pictures, WhoCanRead } from '../pictures';
import { Print } from '../print/print';
import { Rules } from '../rules/rules';
import { openField } from '../state/show';
import { TextEditor } from '../text/editor';
import { say } from '../words/en';
import type { PageGiven } from './app';

type Left = 'fields' | 'text';
type Right = 'rules' | 'print' | 'buy';

export function Workbench(given: PageGiven) {
  const { bench, lit, choices, files, words, back, maker, nonce } = given;
  const cut = useSignal(false);
  const right = useSignal<Right>('rules');
  // A first file that is broken has nothing else to show.
  const left = useSignal<Left | null>(null);
  const broken = bench.opened.value === null && bench.faults.value.length > 0;
  const shown: Left = left.value ?? (broken ? 'text' : 'fields');
  // Where one lies below the other, what is wrong lies first; whoever mends it stays where they type.
  useLayoutEffect(() => {
    const at = document.activeElement;
    if (broken || !at?.closest('.narrow .job')) return;
    (at.querySelector('.cm-activeLine') ?? at).scrollIntoView({ block: 'center' });
  }, [broken]);
  return (
    <main class={`workbench${cut.value ? ' with-cut' : ''}${broken ? ' broken' : ''}`} aria-busy={bench.busy}>
      <section class="job" aria-label={say.page.job}>
        <Choose label={say.job.views} names={{ fields: say.job.fields, text: say.job.text }} onChoose={(name) => (left.value = name)} shown={shown} />
        {shown === 'fields'
          ? <FieldsContext.Provider value={{ bench, lit, words, choices, files, apart: (step) => maker.with(step) }}>
            <Fields words={words} />
          </FieldsContext.Provider>
          : <TextEditor bench={bench} lit={lit} nonce={nonce} />}
      </section>
      <div class="pane plan"><Pictures bench={bench} place="plan" /></div>
      <div class="pane cover"><Pictures bench={bench} place="cover" /></div>
      {cut.value && <div class="pane cut"><Pictures bench={bench} place="cut-through" /></div>}
      <button type="button" class="show-cut" aria-pressed={cut.value} onClick={() => (cut.value = !cut.value)}>
        {say.pictures.showCut}</button>
      <div class="pane reading"><WhoCanRead bench={bench} /></div>
      <div class="beside">
        <Choose label={say.page.beside} names={{ rules: say.rules.name, print: say.print.name, buy: say.buy.name }}
          onChoose={(name) => (right.value = name)} shown={right.value} />
        <section class="tab" aria-label={{ rules: say.rules.name, print: say.print.name, buy: say.buy.name }[right.value]} tabIndex={0}>
          {right.value === 'rules' &&
            <Rules bench={bench} words={words} showText={() => (left.value = 'text')}
              showFields={() => (left.value = 'fields')} seePrint={() => (right.value = 'print')} />}
          {right.value === 'print' &&
            <Print bench={bench} words={words} back={back} maker={maker} seeRules={() => (right.value = 'rules')}
              seeField={(key) => {
                left.value = 'fields';
                openField.value = key;
              }} />}
          {right.value === 'buy' && <Buy bench={bench} back={back} />}
        </section>
      </div>
    </main>
  );
}

/** Buttons of which one is pressed. */
function Choose<Name extends string>({ label, names, onChoose, shown }: {
  label: string; names: Record<Name, string>; onChoose: (name: Name) => void; shown: Name;
}) {
  return (
    <div class="choose" role="group" aria-label={label}>
      {(Object.keys(names) as Name[]).map((name) => (
        <button type="button" key={name} aria-pressed={name === shown} onClick={() => onChoose(name)}>
          {names[name]}</button>
      ))}
    </div>
  );
}
