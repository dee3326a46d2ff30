// What this is, what to take care of, and the licenses of all that is in it.
import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { unpacked } from '../core';
import { say } from '../words/en';

export function About({ version, onClose }: { version: string; onClose: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  const licenses = useSignal<string | null>(null);
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog ref={dialog} class="about" aria-labelledby="about-heading" onClose={onClose}>
      <header>
        <h2 id="about-heading">{say.about.heading}</h2>
        <button type="button" onClick={() => dialog.current?.close()}>{say.about.close}</button>
      </header>
      <p>{say.about.what}</p>
      <p>{say.about.version(version)}</p>
      <h3>{say.about.cautions}</h3>
      <ul>{say.about.caution.map((one) => <li key={one}>{one}</li>)}</ul>
      <h3>{say.about.licenses}</h3>
      {licenses.value === null
        ? <button type="button" onClick={() => void unpacked('licenses').then((text) => (licenses.value = new TextDecoder().decode(text)))}>
          {say.about.showLicenses}</button>
        : <pre tabIndex={0} role="group" aria-label={say.about.licenses}>{licenses.value}</pre>}
    </dialog>
  );
}
