// Sheets shown small, before they are printed.
import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { Overtaken } from 'swathe';
import type { PrintFile, Swathe } from 'swathe';
import { why } from '../state/why';
import { say } from '../words/en';
import { unbroken } from '../words/lengths';

interface SmallSheet {
  file: string;
  name: string;
  number: number;
  of: number;
  width: number;
  height: number;
  /** Empty until it is drawn. */
  address: string;
}

export function SheetsDialog({ core, title, files, pdf, onClose, children }: {
  core: Swathe;
  title: string;
  files: readonly PrintFile[];
  pdf: (name: string, how: 'open' | 'save') => void;
  onClose: () => void;
  /** What is told below. */
  children: ComponentChildren;
}) {
  const dialog = useRef<HTMLDialogElement>(null);
  const sheets = useSignal<readonly SmallSheet[]>([]);
  const trouble = useSignal('');

  useEffect(() => {
    dialog.current?.showModal();
    let open = true;
    const addresses: string[] = [];
    void (async () => {
      try {
        for (const file of files) {
          const pages = await core.pages(stemOf(file.name));
          if (!open) return;
          sheets.value = [...sheets.value, ...pages.map((page, k) => ({
            file: file.name, name: page.name, number: k + 1, of: pages.length,
            width: page.width_mm, height: page.height_mm, address: '',
          }))];
        }
        for (const sheet of sheets.value) {
          const svg = await core.pageSvg(stemOf(sheet.file), sheet.number - 1);
          if (!open) return;
          const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
          addresses.push(address);
          sheets.value = sheets.value.map((one) =>
            one.file === sheet.file && one.number === sheet.number ? { ...one, address } : one);
        }
      } catch (error) {
        if (!(error instanceof Overtaken)) trouble.value = say.print.failed(why(error));
      }
    })();
    return () => {
      open = false;
      addresses.forEach((address) => URL.revokeObjectURL(address));
    };
  }, []);

  const heading = say.print.see(title);
  const all = files.reduce((sum, file) => sum + file.pages, 0);
  const drawn = sheets.value.filter((one) => one.address !== '').length;
  return (
    <dialog ref={dialog} class="sheets" aria-label={heading} onClose={onClose}>
      <header>
        <h2>{heading}</h2>
        {drawn < all && trouble.value === '' && <span class="count">{say.print.drawn(drawn, all)}</span>}
        <button type="button" onClick={() => dialog.current?.close()}>{say.print.close}</button>
      </header>
      {trouble.value !== '' && <p class="fault" role="alert">{trouble.value}</p>}
      <div class="sheets-body" tabIndex={0} role="group" aria-label={heading}>
        {files.map((file) => (
          <section key={file.name}>
            <h3>{file.name} <span class="count">{say.print.sheets(file.pages)}, {unbroken(file.paper)}</span>
              <button type="button" class="plain" aria-label={say.print.openPdf(file.name)}
                onClick={() => pdf(file.name, 'open')}>{say.print.open}</button>
              <button type="button" class="plain" aria-label={say.print.savePdf(file.name)}
                onClick={() => pdf(file.name, 'save')}>{say.print.save}</button>
            </h3>
            <ol>
              {sheets.value.filter((one) => one.file === file.name).map((one) => (
                <li key={one.number}>
                  {one.address === ''
                    ? <svg viewBox={`0 0 ${one.width} ${one.height}`} aria-hidden="true" />
                    : <img src={one.address} alt={one.name} />}
                  <span>{say.print.page(one.number, one.of)}</span>
                </li>
              ))}
            </ol>
          </section>
        ))}
      </div>
      {children}
    </dialog>
  );
}

function stemOf(name: string): string {
  return name.replace(/\.[^.]*$/, '');
}
