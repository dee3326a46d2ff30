/** That a rule is not met, beside what it hangs on; what it asks is in a description, or among the rules. */
export function RuleSign({ words }: { words: readonly string[] }) {
  if (words.length === 0) return null;
  return <span class="rule-sign" aria-hidden="true" title={words.join('\n')}>!</span>;
}
