// What this browser keeps for the page, where it lets us.

/** The browser's storage; nothing where it is refused. */
export function storage(): Storage | null {
  try {
    const kept = window.localStorage;
    const probe = 'swathe.probe';
    kept.setItem(probe, '1');
    kept.removeItem(probe);
    return kept;
  } catch (error) {
    // Full is not refused: what is there can be read and forgotten.
    if (isFull(error)) return window.localStorage;
    return null;
  }
}

export function isFull(error: unknown): boolean {
  return error instanceof DOMException &&
    (error.name === 'QuotaExceededError' || error.name === 'NS_ERROR_DOM_QUOTA_REACHED');
}
