// Rules that are not met, in words, and at the keys that they hang on.
import type { Finding } from 'swathe';
import { say } from '../words/en';
import { unbroken } from '../words/lengths';

/** With a capital, as sentences begin. */
export function sentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** What is asked, by a rule or by ourselves. */
export function wantedWords({ rule, required }: Finding): string {
  return (rule === '' ? say.rules.better : say.rules.asked)(unbroken(required));
}

export function notMetWords(finding: Finding): string {
  const what = `${sentence(finding.subject)}: ${unbroken(finding.measured)}`;
  return say.rules.notMet(what, wantedWords(finding));
}

/** What is not met of this key, or of parts of it. */
export function notMetOf(key: string, findings: readonly Finding[]): string[] {
  return findings
    .filter(({ verdict, keys }) => verdict === 'fail' &&
      keys.some((one) => one.key === key || one.key.startsWith(`${key}.`)))
    .map(notMetWords);
}
