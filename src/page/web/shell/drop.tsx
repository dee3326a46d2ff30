// A file may be dropped anywhere on the page.
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { say } from '../words/en';
import type { Incoming } from './incoming';

export function DropHere({ incoming }: { incoming: Incoming }) {
  const over = useSignal(false);
  useEffect(() => {
    const has = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false;
    const onOver = (event: DragEvent) => {
      if (!has(event)) return;
      event.preventDefault();
      over.value = true;
    };
    const onLeave = (event: DragEvent) => {
      if (event.relatedTarget === null) over.value = false;
    };
    const onDrop = (event: DragEvent) => {
      over.value = false;
      if (!has(event)) return;
      event.preventDefault();
      void incoming.take([...(event.dataTransfer?.files ?? [])]);
    };
    // A field that takes the file itself lets nothing through to here.
    const onAnyDrop = () => (over.value = false);
    document.addEventListener('dragover', onOver);
    document.addEventListener('dragleave', onLeave);
    document.addEventListener('drop', onDrop);
    document.addEventListener('drop', onAnyDrop, true);
    return () => {
      document.removeEventListener('dragover', onOver);
      document.removeEventListener('dragleave', onLeave);
      document.removeEventListener('drop', onDrop);
      document.removeEventListener('drop', onAnyDrop, true);
    };
  }, []);
  return over.value ? <div class="drop-here" aria-hidden="true"><p>{say.start.drop}</p></div> : null;
}
