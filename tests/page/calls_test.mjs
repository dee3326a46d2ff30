// Hundreds of calls in a row on changing jobs: memory stays flat, and what comes last is right.
//
// SWATHE_PAGE_LONG: 10,000 calls.
import { Swathe, byCommand, check, difference, done, examples, exampleText, jobOf, kExample, kLong } from './suite.mjs';
import { drawing, drawnText } from './drawn_jobs.mjs';

const kCalls = kLong ? 10000 : 500;
const kMiB = 2 ** 20;
const swathe = new Swathe();
const draw = drawing(1);
const texts = [exampleText(), ...examples().map((path) => jobOf(path).text),
  ...Array.from({ length: 20 }, () => drawnText(draw)), exampleText().replace('width', 'widht')];

let calls = 0, refused = 0;
/** So many calls, the same ones from the same seed. */
async function callFrom(seed, count) {
  const draw = drawing(seed);
  const last = calls + count;
  while (calls < last) {
    const opened = await swathe.open(texts[draw(texts.length)], { advice: draw(2) === 0 });
    calls += 1;
    if (!opened.ok) {
      refused += 1;
      continue;
    }
    await swathe.findings();
    const sheets = await swathe.sheets();
    const { stem } = sheets[draw(sheets.length)];
    await swathe.pageSvg(stem);
    await swathe.set(exampleText(), 'frame.width', `${20 + draw(10)} in`);
    calls += 4;
  }
}
// What the second half asks for is what the first one did: whatever it takes more was lost.
const kSeed = Number(process.env.SWATHE_SEED ?? 1);
await callFrom(kSeed, kCalls / 2);
const settled = swathe.memory;
await callFrom(kSeed, kCalls / 2);
console.log(`    ${calls} calls, ${refused} jobs refused, ${(swathe.memory / kMiB).toFixed(1)} MiB at the most`);
check(`${kCalls} calls on changing jobs, the second half in no more memory than the first`,
  swathe.memory <= settled, `${settled} then ${swathe.memory}`);
check('in at most 64 MiB', swathe.memory <= 64 * kMiB, swathe.memory);
check('by one instance', swathe.ended === 0);

const example = jobOf(kExample);
await swathe.open(example.text, { file: example.name });
const files = new Map((await swathe.files()).map(({ name, bytes }) => [name, Buffer.from(bytes)]));
const told = difference(files, (await byCommand(example)).files);
check('after them the example is as the command has it', told === '', told);
console.log(`    ${(swathe.memory / kMiB).toFixed(1)} MiB with all its files`);
swathe.close();
done();
