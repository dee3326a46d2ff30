// Jobs kept in this browser, by name and date; opened only when asked.
import type { Desk } from '../state/desk';
import { say } from '../words/en';
import { dateOf, nameOf } from './kept_names';

export function Kept({ desk }: { desk: Desk }) {
  const { kept } = desk;
  const forgotten = [...kept.forgotten.value.keys()].map((id) => kept.wasForgotten(id)).filter((one) => one !== null);
  const known = [...kept.jobs.value, ...forgotten];
  return (
    <section class={known.length > 0 ? 'beginning kept some' : 'beginning kept'} aria-labelledby="start-kept">
      <h2 id="start-kept">{say.start.kept}</h2>
      {kept.state.value === 'refused'
        ? <p>{say.states.refused}</p>
        : kept.jobs.value.length === 0
          ? <p>{say.start.keptNone}</p>
          : <p>{say.start.keptWhy}</p>}
      <ul>
        {kept.jobs.value.map((job) => {
          const { title, which, all } = nameOf(job, known);
          const when = kept.isOnlyHere(job.id) ? say.start.onlyHere : dateOf(job);
          return (
            <li key={job.id}>
              <button type="button" class="open" id={`open-${job.id}`} aria-label={say.start.open(all)} onClick={() => void desk.openKept(job.id)}>
                <b>{title}</b> {which}</button>
              <span>{which !== '' && job.number !== '' && job.number !== title && `${job.number}, `}{when}</span>
              <button type="button" class="plain" aria-label={say.start.forgetOf(all)} data-then={`#keep-${job.id}`}
                onClick={() => desk.forgetKept(job.id)}>{say.start.forget}</button>
            </li>
          );
        })}
      </ul>
      <div role="status">
        {forgotten.map((job) => {
          const { all } = nameOf(job, known);
          return (
            <p class="forgotten" key={job.id}>{say.start.forgotten(all)}{' '}
              <button type="button" class="mend" id={`keep-${job.id}`} data-then={`#open-${job.id}`} aria-label={say.start.rememberOf(all)}
                onClick={() => desk.remember(job.id)}>{say.start.remember}</button></p>
          );
        })}
      </div>
    </section>
  );
}
