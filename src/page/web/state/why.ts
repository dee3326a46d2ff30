import { say } from '../words/en';

/** Why something stopped, in plain words; less what the module says of itself. */
export function why(error: unknown): string {
  const words = (error instanceof Error ? error.message : String(error))
    .replace(/^the core ended: /, '').replace(/; it is begun anew.*$/, '');
  for (const [pattern, plain] of kPlain) if (pattern.test(words)) return words.replace(pattern, plain);
  return words;
}

/** What the module and browsers call it, and what it is called here. */
const kPlain: readonly [RegExp, string][] = [
  [/^it went too deep$/, say.why.tooDeep],
  [/^there was not enough memory for it$/, say.why.noMemory],
  [/^it broke off \((.*)\)$/, say.why.mistake],
  [/^it found a mistake of its own: (.*)$/, say.why.mistake],
  [/^its worker could not be started$/, say.why.noWorker],
  [/^the core's worker cannot be started: .*$/, say.why.noWorker],
  [/^the core cannot be loaded: (.*)$/, say.why.notLoaded],
];
