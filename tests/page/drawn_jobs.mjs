// Jobs drawn from the example, as tests/support/suite.py draws them: a frame and a number of their
// own each.
import { exampleText } from './suite.mjs';

/** Marsaglia, "Xorshift RNGs", Journal of Statistical Software 8 (2003): 13, 17, 5. */
export function drawing(seed) {
  let state = seed >>> 0 || 1;
  return (count) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % count;
  };
}

export function drawnText(draw) {
  let text = exampleText();
  const change = (old, anew) => {
    if (!text.includes(old)) throw new Error(`the example has changed: ${old}`);
    text = text.replace(old, anew);
  };
  change('number = "20486"', `number = "${10 + draw(99990)}"`);
  change('width = "28 in"', `width = "${(112 + draw(9)) / 4} in"`);
  change('depth = "30 in"', `depth = "${(112 + draw(17)) / 4} in"`);
  return text;
}

export function drawnJobs(count, seed = Number(process.env.SWATHE_SEED ?? 20486)) {
  const draw = drawing(seed);
  console.log(`    drawn with SWATHE_SEED=${seed}`);
  return Array.from({ length: count }, (_, k) => (
    { name: `new-${k + 1}.toml`, text: Buffer.from(drawnText(draw)), files: new Map() }));
}
