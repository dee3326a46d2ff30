// The three ways to begin, and what this browser has kept.
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Swathe } from 'swathe';
import type { Desk } from '../state/desk';
import { why } from '../state/why';
import { say } from '../words/en';
import { Kept } from './kept';
import { KindPicture, inOrder } from './kinds';
import { Questions } from './questions';

export interface StartGiven {
  core: Swathe;
  /** Another core. */
  start: () => Swathe;
  desk: Desk;
  kinds: Readonly<Record<string, string>>;
  /** Opens a file chooser. */
  choose: () => void;
}

export function Start({ core, start, desk, kinds, choose }: StartGiven) {
  const asking = useSignal(false);
  const pasted = useSignal('');
  const trouble = useSignal('');
  useEffect(() => desk.kept.look(), []);

  async function begin(kind: string): Promise<void> {
    trouble.value = '';
    try {
      const outcome = await core.jobOfKind(kind);
      if (outcome.ok) desk.openText(outcome.value.text, `${kind}.toml`);
      else trouble.value = outcome.faults.map((fault) => fault.sentence).join(' ');
    } catch (error) {
      trouble.value = say.print.failed(why(error));
    }
  }

  if (asking.value)
    return <main class="start asking"><Questions start={start} desk={desk} onLeave={() => (asking.value = false)} /></main>;
  return (
    <main class="start">
      <header>
        <h1>{say.start.heading}</h1>
        <p>{say.start.lead}</p>
      </header>
      <section class="beginning first" aria-labelledby="start-questions">
        <h2 id="start-questions">{say.start.questions}</h2>
        <p>{say.start.questionsWhy}</p>
        <button type="button" class="main" onClick={() => (asking.value = true)}>{say.start.begin}</button>
      </section>
      <section class="beginning kinds-way" aria-labelledby="start-kinds">
        <h2 id="start-kinds">{say.start.kinds}</h2>
        <p>{say.start.kindsWhy}</p>
        <ul class="kinds">
          {inOrder(Object.keys(kinds)).map((kind) => (
            <li key={kind}>
              <button type="button" onClick={() => void begin(kind)}>
                <KindPicture svg={kinds[kind]!} />
                {say.kinds[kind] ?? kind}
              </button>
            </li>
          ))}
        </ul>
        {trouble.value !== '' && <p class="fault" role="alert">{trouble.value}</p>}
      </section>
      <section class="beginning" aria-labelledby="start-file">
        <h2 id="start-file">{say.start.file}</h2>
        <p>{say.start.fileWhy}</p>
        <button type="button" onClick={choose}>{say.start.choose}</button>
        <textarea rows={3} aria-label={say.start.paste} placeholder={say.start.paste} spellcheck={false}
          value={pasted.value} onInput={(event) => (pasted.value = event.currentTarget.value)} />
        <button type="button" disabled={pasted.value.trim() === ''}
          onClick={() => {
            desk.openText(pasted.value, 'job.toml');
            pasted.value = '';
          }}>{say.start.openPasted}</button>
      </section>
      <Kept desk={desk} />
    </main>
  );
}
