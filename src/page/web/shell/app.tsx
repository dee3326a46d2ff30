// The whole page: its tools above, then the beginnings or the job.
import type { Choices, Swathe, Words } from 'swathe';
import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { About } from '../about/about';
import { Start } from '../start/start';
import type { Desk } from '../state/desk';
import type { GivenFiles } from '../state/files';
import type { WorkBench } from '../state/make_bench';
import type { Back } from '../state/back';
import type { Maker } from '../print/make';
import type { LitKeys } from '../fields/lit';
import { say } from '../words/en';
import { DropHere } from './drop';
import type { Incoming } from './incoming';
import { Notes } from './notes';
import { Tools } from './tools';
import { Workbench } from './workbench';

export interface PageGiven {
  core: Swathe;
  start: () => Swathe;
  bench: WorkBench;
  back: Back;
  maker: Maker;
  desk: Desk;
  files: GivenFiles;
  lit: LitKeys;
  incoming: Incoming;
  words: Words;
  choices: Choices;
  kinds: Readonly<Record<string, string>>;
  nonce: string;
}

export function App(given: PageGiven) {
  const { desk, incoming, core, start, kinds } = given;
  const about = useSignal(false);
  const chooser = useRef<HTMLInputElement>(null);
  const choose = () => chooser.current?.click();
  return (
    <div class={desk.starting.value ? 'page starting' : 'page'}>
      <Tools {...given} choose={choose} about={() => (about.value = true)} />
      <input ref={chooser} type="file" hidden aria-label={say.tools.open}
        onChange={(event) => {
          void incoming.take([...(event.currentTarget.files ?? [])]);
          event.currentTarget.value = '';
        }} />
      <Notes {...given} />
      {desk.starting.value
        ? <Start core={core} start={start} desk={desk} kinds={kinds} choose={choose} />
        : <Workbench {...given} key={desk.id.value} />}
      {about.value && <About version={given.choices.version} onClose={() => (about.value = false)} />}
      <DropHere incoming={incoming} />
    </div>
  );
}
