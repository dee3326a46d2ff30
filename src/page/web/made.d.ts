// What make.mjs gives the page.

/** What the core says of keys, choices and kinds, asked when the page was made. */
declare module 'facts' {
  import type { Choices, Words } from 'swathe';
  export const words: Words;
  export const choices: Choices;
  /** Each kind's picture from above, an SVG element. */
  export const kinds: Record<string, string>;
}
declare module 'swathe-worker' {
  export function serve(port: unknown): void;
}
