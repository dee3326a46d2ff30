// An effect that runs as soon as a signal that it reads changes. useSignalEffect waits for the next
// frame, which is a frame too late for what is dragged or typed.
import { effect } from '@preact/signals';
import { useLayoutEffect, useRef } from 'preact/hooks';

export function useNow(react: () => void): void {
  const newest = useRef(react);
  newest.current = react;
  useLayoutEffect(() => effect(() => newest.current()), []);
}
