import { useSignal, useSignalEffect } from '@preact/signals';
import { whenReleased } from '../fields/press';

/** Whether buttons are off; they do not go off under a finger. */
export function useOff(isOff: () => boolean): boolean {
  const off = useSignal(isOff());
  useSignalEffect(() => {
    if (!isOff()) off.value = false;
    else whenReleased(() => (off.value = isOff()));
  });
  return off.value;
}
