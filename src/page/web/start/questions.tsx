// What "swathe new" asks, one question after the other, with a picture of the bumpers so far.
import { useSignal, useSignalEffect } from '@preact/signals';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import { Overtaken } from 'swathe';
import type { Question, Swathe } from 'swathe';
import { adopted } from '../pictures/adopt';
import { loadLabelFont } from '../pictures/labels';
import type { Desk } from '../state/desk';
import { why } from '../state/why';
import { say } from '../words/en';

export function Questions({ start, desk, onLeave }: {
  /** A core of its own: the page's has the job on the bench open. */
  start: () => Swathe;
  desk: Desk;
  onLeave: () => void;
}) {
  const core = useMemo(start, []);
  useEffect(() => {
    loadLabelFont(core).catch(() => {});
    return () => core.close();
  }, []);
  const answers = useSignal<readonly string[]>(Array(7).fill(''));
  const at = useSignal(0);
  const questions = useSignal<readonly Question[]>([]);
  const text = useSignal('');
  const faults = useSignal<ReadonlyMap<number, string>>(new Map());
  const trouble = useSignal(''); // of the core
  const field = useRef<HTMLInputElement>(null);
  const looked = useRef<readonly string[] | null>(null); // the answers that faults and text are of
  const waits = useRef(false); // whoever is quick goes on as soon as the answer has been looked at

  // Each answer may change what is asked next, and gives a job of its own.
  useSignalEffect(() => {
    const given = answers.value;
    let newest = true;
    void (async () => {
      try {
        const [asked, job] = await Promise.all([core.questions([...given]), core.newJob([...given])]);
        if (!newest) return;
        trouble.value = '';
        questions.value = asked;
        faults.value = new Map(job.ok ? [] : job.faults.map((fault) => [fault.line - 1, fault.sentence]));
        if (job.ok) text.value = job.value.text;
        looked.current = given;
        if (waits.current) next();
      } catch (error) {
        if (newest && !(error instanceof Overtaken)) trouble.value = why(error);
      }
    })();
    return () => {
      newest = false;
    };
  });
  const question = questions.value[at.value];
  useEffect(() => field.current?.focus(), [at.value, question === undefined]);
  const last = at.value === questions.value.length - 1;
  const wrong = faults.value.get(at.value);
  function answer(typed: string): void {
    waits.current = false;
    answers.value = answers.value.map((one, k) => (k === at.value ? typed : one));
  }
  function next(): void {
    waits.current = looked.current !== answers.peek();
    const here = at.peek(), found = faults.peek();
    if (waits.current || found.has(here)) return;
    if (here < questions.peek().length - 1) {
      at.value = here + 1;
      return;
    }
    const [first] = found.keys();
    if (first !== undefined) at.value = first;
    else if (text.peek() !== '') desk.openText(text.peek(), 'job.toml');
  }
  const broken = trouble.value === '' ? null : (
    <p class="fault" role="alert">{say.start.noQuestion(trouble.value)}{' '}
      <button type="button" onClick={() => (answers.value = [...answers.peek()])}>{say.states.again}</button></p>);
  if (!question) return (
    <div class="questions">
      {broken ?? <p>{say.page.loading}</p>}
      <p class="tools"><button type="button" onClick={onLeave}>{say.start.cancel}</button></p>
    </div>);
  return (
    <form class="questions" onSubmit={(event) => {
      event.preventDefault();
      next();
    }}>
      <p class="count">{say.start.question(at.value + 1, questions.value.length)}</p>
      <label for="answer"><h1>{question.asks}</h1></label>
      <input id="answer" ref={field} type="text" autocomplete="off" value={answers.value[at.value] ?? ''}
        aria-invalid={wrong !== undefined} aria-describedby="answer-hints"
        onInput={(event) => answer(event.currentTarget.value)} />
      <div id="answer-hints">
        {wrong !== undefined && <p class="fault" role="alert">{wrong}</p>}
        {broken}
        <p>{say.start.example(question.example)}</p>
        {question.usual !== '' && <p>{say.start.usual(question.usual)}</p>}
      </div>
      <p class="tools">
        <button type="button" onClick={() => (at.value === 0 ? onLeave() : (at.value -= 1))}>{at.value === 0 ? say.start.cancel : say.start.previous}</button>
        <button type="submit" class="main">{last ? say.start.finish : say.start.next}</button>
      </p>
      <SoFar core={core} text={text.value} />
    </form>
  );
}

function SoFar({ core, text }: { core: Swathe; text: string }) {
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (text === '') return;
    let newest = true;
    void (async () => {
      try {
        const opened = await core.open(text, { advice: false });
        if (!opened.ok || !newest) return;
        const svg = await core.plan({ width: 420, height: 360, key: 'questions' });
        if (newest) place.current?.replaceChildren(adopted(svg, 420).svg);
      } catch {
        // A newer answer overtook it.
      }
    })();
    return () => {
      newest = false;
    };
  }, [text]);
  return (
    <figure class="so-far">
      <figcaption>{say.start.soFar}</figcaption>
      <div ref={place} />
    </figure>
  );
}
