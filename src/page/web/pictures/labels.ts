// The font that the core measures labels with, given to the page.
import type { Swathe } from 'swathe';

/** As pictures name it. */
const kFont = 'Swathe Labels';

let loading: Promise<void> | null = null;

/** Words fit in any other font, too: nothing waits for it. */
export function loadLabelFont(core: Swathe): Promise<void> {
  loading ??= core
    .labelFont()
    .then(async (bytes) => {
      const font = new FontFace(kFont, new Uint8Array(bytes).buffer);
      document.fonts.add(await font.load());
    })
    .catch(() => {
      loading = null;
    });
  return loading;
}
