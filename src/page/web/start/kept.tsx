// Jobs kept in this browser, by name and date; opened only when asked.
import type { KeptJob } from '../state/kept';
import type { Desk } from '../state/desk';
import { say } from '../words/en';

function nameOf(job: KeptJob): string {
  return job.title !== '' ? job.title : job.number !== '' ? job.number : job.file;
}

function dateOf(job: KeptJob): string {
  const date = new Date(job.saved);
  return Number.isNaN(date.getTime()) ? '' : date.toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });
}

export function Kept({ desk }: { desk: Desk }) {
  const { kept } = desk;
  const forgotten = [...kept.forgotten.value.keys()].map((id) => kept.wasForgotten(id)).filter((one) => one !== null);
  return (
    <section class={kept.jobs.value.length + forgotten.length > 0 ? 'beginning kept some' : 'beginning kept'} aria-labelledby="start-kept">
      <h2 id="start-kept">{say.start.kept}</h2>
      {kept.state.value === 'refused'
        ? <p>{say.states.refused}</p>
        : kept.jobs.value.length === 0
          ? <p>{say.start.keptNone}</p>
          : <p>{say.start.keptWhy}</p>}
      <ul>
        {kept.jobs.value.map((job) => (
          <li key={job.id}>
            <button type="button" class="open" id={`open-${job.id}`} aria-label={say.start.open(nameOf(job))} onClick={() => void desk.openKept(job.id)}>
              <b>{nameOf(job)}</b></button>
            <span>{kept.isOnlyHere(job.id) ? say.start.onlyHere : dateOf(job)}</span>
            <button type="button" class="plain" aria-label={say.start.forgetOf(nameOf(job))} data-then={`#keep-${job.id}`}
              onClick={() => desk.forgetKept(job.id)}>{say.start.forget}</button>
          </li>
        ))}
      </ul>
      <div role="status">
        {forgotten.map((job) => (
          <p class="forgotten" key={job.id}>{say.start.forgotten(nameOf(job))}{' '}
            <button type="button" class="mend" id={`keep-${job.id}`} data-then={`#open-${job.id}`} aria-label={say.start.rememberOf(nameOf(job))}
              onClick={() => desk.remember(job.id)}>{say.start.remember}</button></p>
        ))}
      </div>
    </section>
  );
}
