// The bar above: which job it is, and what can be done with it as a whole.
import { say } from '../words/en';
import { copy } from '../state/save';
import { linkTo } from '../state/share';
import type { PageGiven } from './app';
import { saveJob } from './save_job';

/** From a server the page has an address that others can open too. */
const fromServer = location.protocol === 'http:' || location.protocol === 'https:';

export function Tools({ bench, desk, incoming, choose, about }: PageGiven & { choose: () => void; about: () => void }) {
  const { starting } = desk;
  const here = bench.begun.value && desk.id.value !== null;
  const title = bench.fields.value.find((one) => one.key === 'job.title' && one.given)?.shown ||
    (bench.opened.value ? say.page.noTitle : '');
  async function share(): Promise<void> {
    await bench.quiet();
    const text = bench.text.peek();
    const shared = fromServer ? await linkTo(location.href, text) : text;
    if (shared === null) incoming.told.value = say.tools.linkTooLong;
    else if (!(await copy(shared))) incoming.told.value = say.tools.notCopied;
    else {
      const said = fromServer ? say.tools.linkCopied : say.tools.textCopied;
      const files = await bench.core.namedFiles(text).catch(() => []);
      incoming.told.value = files.length === 0 ? said : `${said} ${say.tools.filesStay(files.join(', '))}`;
    }
  }
  return (
    <header class="tools" role="banner">
      <p class="brand">{say.page.name}</p>
      {!starting.value && here
        ? <h1 class="job-name"><b>{title}</b> <span>{bench.file.value}</span></h1>
        : <p class="job-name" />}
      <div class="buttons" role="group" aria-label={say.page.tools}>
        {starting.value
          ? here && <button type="button" onClick={() => (starting.value = false)}>{say.tools.back}</button>
          : <button type="button" onClick={() => desk.start()}>{say.tools.new}</button>}
        <button type="button" onClick={choose}>{say.tools.open}</button>
        {!starting.value && <>
          <button type="button" onClick={() => void saveJob(bench, incoming)}>{say.tools.save}</button>
          <button type="button" onClick={() => void share()}>{fromServer ? say.tools.copyLink : say.tools.copyText}</button>
          <Step name={say.tools.undo} can={bench.canUndo.value} onClick={() => bench.undo()} />
          <Step name={say.tools.redo} can={bench.canRedo.value} onClick={() => bench.redo()} />
          <button type="button" data-then=".start .main" onClick={() => desk.forget()}>{say.tools.forget}</button>
        </>}
        <button type="button" class="plain" onClick={about}>{say.page.about}</button>
      </div>
    </header>
  );
}

function Step({ name, can, onClick }: { name: string; can: boolean; onClick: () => void }) {
  // Not the disabled attribute: focus would be lost with it.
  return <button type="button" aria-disabled={!can} onClick={() => can && onClick()}>{name}</button>;
}
