// A job's text behind the "#" of a link, compressed; and back.

/** Longer links are cut off on their way by programs that people send them with. */
const kMostLink = 16000;
/** A job's text is shorter; what unpacks to more is no job. */
const kMostText = 400_000;
const kMark = '#job=';

async function through(bytes: Uint8Array, stream: CompressionStream | DecompressionStream, most: number) {
  const parts: Uint8Array[] = [];
  let size = 0;
  const reader = new Blob([bytes as BlobPart]).stream()
    .pipeThrough(stream as ReadableWritablePair<Uint8Array, Uint8Array>).getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    size += value.length;
    if (size > most) {
      await reader.cancel();
      throw new RangeError('too much');
    }
    parts.push(value);
  }
  return new Uint8Array(await new Blob(parts as BlobPart[]).arrayBuffer());
}

function toUrl(bytes: Uint8Array): string {
  let signs = '';
  for (const byte of bytes) signs += String.fromCharCode(byte);
  return btoa(signs).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

function fromUrl(signs: string): Uint8Array {
  const plain = atob(signs.replaceAll('-', '+').replaceAll('_', '/'));
  return Uint8Array.from(plain, (sign) => sign.charCodeAt(0));
}

/** The link to a page at `place` that opens this text; nothing where it would be too long. */
export async function linkTo(place: string, text: string): Promise<string | null> {
  const packed = await through(new TextEncoder().encode(text), new CompressionStream('deflate-raw'), kMostText);
  const link = place.replace(/#.*$/, '') + kMark + toUrl(packed);
  return link.length > kMostLink ? null : link;
}

export type Shared = { came: 'none' } | { came: 'text'; text: string } | { came: 'broken' | 'too long' };

/** What a link's hash holds. */
export async function sharedIn(hash: string): Promise<Shared> {
  if (!hash.startsWith(kMark)) return { came: 'none' };
  if (hash.length > 4 * kMostLink) return { came: 'too long' };
  try {
    const text = await through(fromUrl(hash.slice(kMark.length)), new DecompressionStream('deflate-raw'), kMostText);
    return { came: 'text', text: new TextDecoder('utf-8', { fatal: true }).decode(text) };
  } catch (error) {
    return { came: error instanceof RangeError ? 'too long' : 'broken' };
  }
}
