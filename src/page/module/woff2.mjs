// WOFF2 fonts become TrueType or OpenType before the core sees them: it has no Brotli.

const kSignature = [0x77, 0x4f, 0x46, 0x32]; // "wOF2"

/**
 * The font that a WOFF2 file holds; any other bytes as they are, and a WOFF2 file that is damaged,
 * which the core then refuses in its own words.
 * @param {Uint8Array} bytes
 */
export async function decoded(bytes) {
  if (!kSignature.every((sign, k) => bytes[k] === sign)) return bytes;
  const { default: decode } = await import('./woff2-decoder.mjs');
  try {
    return await decode(bytes);
  } catch {
    return bytes;
  }
}
