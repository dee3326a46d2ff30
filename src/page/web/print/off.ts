import { useSignal, useSignalEffect } from '@preact/signals';
import { whenReleased } from '../fields/press';

/** Whether buttons are off: not so under a finger. What is pressed then waits for the job. */
export function useOff(isOff: () => boolean): boolean {
  const off = useSignal(isOff());
  useSignalEffect(() => {
    if (!isOff()) off.value = false;
    else whenReleased(() => (off.value = isOff()));
  });
  return off.value;
}
