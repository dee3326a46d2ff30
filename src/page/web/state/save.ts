// Bytes that leave the page: as a file, in a tab, on the clipboard.

/** How long a browser has to take a file, in milliseconds. */
const kTaken = 60_000;
/** How often it is looked whether a tab was closed, in milliseconds. */
const kLook = 5_000;

function addressOf(bytes: Uint8Array | string, name: string): string {
  return URL.createObjectURL(new Blob([bytes as BlobPart], { type: kindOf(name) }));
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
  link.href = addressOf(bytes, name);
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(link.href), kTaken);
}

/** A tab opened in the click itself, which is filled later; nothing where the browser blocks it. */
export function openTab(words: string): Window | null {
  const tab = window.open('', '_blank');
  if (!tab) return null;
  tab.document.title = words;
  tab.document.body.textContent = words;
  return tab;
}

/** What the tab shows can be loaded again until it is closed. */
export function fillTab(tab: Window, name: string, bytes: Uint8Array): void {
  const address = addressOf(bytes, name);
  tab.location.replace(address);
  const look = setInterval(() => {
    if (!tab.closed) return;
    clearInterval(look);
    URL.revokeObjectURL(address);
  }, kLook);
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
