/** Why something broke off, less what the module says of itself. */
export function why(error: unknown): string {
  const words = error instanceof Error ? error.message : String(error);
  return words.replace(/^the core ended: /, '').replace(/; it is begun anew.*$/, '');
}
