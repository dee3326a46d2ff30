// The decoder of WOFF2 makes the functions that it offers from text, which the page's policy forbids.
// Here it gets them as closures that do the same.

/** What stands for it: the places of names are those of the minified text. */
const kFromText = /\(function\(A,I\)\{if\(!\(A instanceof Function\)\)throw TypeError\(`new_ called[^`]*`\);[^}]*\}\);[^}]*\}\)\(Function,m\)\.apply\(null,h\)/g;

/**
 * h: what the text would have been given: [throwBindingError, invoker, fn, runDestructors, retType,
 * ...]; I: the types, of the result, of "this", of the arguments; l: whether what they leave behind
 * is noted on the way; b: whether there is a result.
 */
const kAsClosure = `((invoker, fn, run, result, types, noted, gives) => function (...given) {
  const left = noted ? [] : null;
  const wired = types.map((type, k) => type.toWireType(left, given[k]));
  const came = invoker(fn, ...wired);
  if (noted) run(left);
  else types.forEach((type, k) => { if (type.destructorFunction !== null) type.destructorFunction(wired[k]); });
  return gives ? result.fromWireType(came) : undefined;
})(h[1], h[2], h[3], h[4], I.slice(2), l, b)`;

export function withoutEval(decoder) {
  const found = decoder.match(kFromText)?.length ?? 0;
  if (found !== 1)
    throw new Error(`the decoder of WOFF2 makes functions from text in ${found} places, not in one: see without_eval.mjs`);
  return decoder.replace(kFromText, () => kAsClosure);
}
