// Bytes that leave the page: as a file, in a tab, on the clipboard.

/** How long a tab has to take what it was given, in milliseconds. */
const kTaken = 60_000;

function addressOf(bytes: Uint8Array | string, kind: string): string {
  const address = URL.createObjectURL(new Blob([bytes as BlobPart], { type: kind }));
  setTimeout(() => URL.revokeObjectURL(address), kTaken);
  return address;
}

function kindOf(name: string): string {
  if (name.endsWith('.pdf')) return 'application/pdf';
  if (name.endsWith('.zip')) return 'application/zip';
  if (name.endsWith('.svg')) return 'image/svg+xml';
  if (name.endsWith('.json')) return 'application/json';
  return 'application/octet-stream';
}

export function saveFile(name: string, bytes: Uint8Array | string): void {
  const link = document.createElement('a');
  link.href = addressOf(bytes, kindOf(name));
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
}

/** A tab opened in the click itself, which is filled later; nothing where the browser blocks it. */
export function openTab(words: string): Window | null {
  const tab = window.open('', '_blank');
  if (!tab) return null;
  tab.document.title = words;
  tab.document.body.textContent = words;
  return tab;
}

export function fillTab(tab: Window, name: string, bytes: Uint8Array): void {
  tab.location.replace(addressOf(bytes, kindOf(name)));
}

/** Whether it could be done. */
export async function copy(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    const area = document.createElement('textarea');
    area.value = text;
    document.body.append(area);
    area.select();
    const done = document.execCommand('copy');
    area.remove();
    return done;
  }
}
