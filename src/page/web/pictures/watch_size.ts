// A picture is drawn for the size of the element that shows it.
import type { Picture } from './picture';

/** Until what comes back is called. */
export function watchSize(element: HTMLElement, picture: Picture): () => void {
  const watch = new ResizeObserver(([entry]) => {
    if (!entry) return;
    const { width, height } = entry.contentRect;
    const now = picture.size.peek();
    if (now?.width !== width || now.height !== height) picture.size.value = { width, height };
  });
  watch.observe(element);
  return () => watch.disconnect();
}
