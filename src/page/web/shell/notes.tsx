// What the page has to say about itself: nothing can be kept, another tab has the job, the core ended.
import { say } from '../words/en';
import type { PageGiven } from './app';

export function Notes({ bench, desk, incoming }: PageGiven) {
  const { trouble } = bench;
  const keeping = desk.kept.state.value;
  const notKept = desk.files.refused.value;
  const here = !desk.starting.value;
  return (
    <div class="notes" role="status">
      {trouble.value !== null &&
        <p class="strong">{say.states.coreFailed(trouble.value)} {say.states.coreAgain}
          <button type="button" onClick={() => bench.again()}>{say.states.again}</button></p>}
      {here && desk.elsewhere.value &&
        <p>{say.states.elsewhere}
          <button type="button" onClick={() => void desk.takeOver()}>{say.states.takeOver}</button></p>}
      {here && keeping === 'refused' && <p>{say.states.refused}</p>}
      {here && keeping === 'full' && <p>{say.states.full}</p>}
      {here && notKept.length > 0 && <p>{say.states.filesNotKept(notKept.join(', '))}</p>}
      {here && bench.missing.value.length > 0 && <p>{say.states.filesNamed(bench.missing.value.join(', '))}</p>}
      {incoming.told.value !== '' &&
        <p>{incoming.told.value}
          <button type="button" class="plain" aria-label={say.states.dismiss} onClick={() => (incoming.told.value = '')}>×</button></p>}
    </div>
  );
}
