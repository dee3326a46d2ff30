// What is held and moved in a picture: by one hand only, and at one place at a time.
import { signal, type Signal } from '@preact/signals';
import type { Bench } from '../state/bench';
import type { Grips } from './gestures';
import { select } from './links';
import { laid, type Point } from './map';
import { Move } from './move';
import type { Picture } from './picture';

/** A handle that is moved just now. */
export interface Hold {
  moves: Move;
  /** Where it was, and how many pixels one of what was drawn takes. */
  from: Point;
  scale: number;
  /** Null where it is moved by key. A signal of its own: what follows the pointer is little. */
  pointer: Signal<Point | null>;
  /** It was let go of, and pictures do not show it yet. */
  ending: boolean;
}

/** Where a handle that is held lies when its distance is `mm`. */
export function placeAt({ moves: { handle }, from, scale }: Hold, mm: number): Point {
  const px = (scale * (mm - handle.mm)) / handle.mmPerPx;
  return { x: from.x + px * handle.way.x, y: from.y + px * handle.way.y };
}

/** `focus`: gives the handle of a subject the keyboard. */
export function gripsOf(
  bench: Bench,
  picture: Picture,
  hold: Signal<Hold | null>,
  focus: (subject: string) => void,
): Grips {
  return {
    focus,
    // Of a job at fault nothing is moved: what is half typed would be lost.
    handleOf: (subject) =>
      bench.faults.peek().length > 0
        ? undefined
        : picture.drawn.peek()?.handles.find((handle) => handle.subject === subject),
    take: (handle, at) => {
      const lie = picture.lie.peek();
      const before = hold.peek();
      const isSame = before?.moves.handle.subject === handle.subject;
      // It is there already where the picture shows it only soon.
      const mm = isSame ? before.moves.mm.peek() : handle.mm;
      const from = isSame ? placeAt(before, mm) : laid(lie, handle.at);
      const units = bench.opened.peek()?.job.units ?? 'in';
      picture.hold();
      const moves = new Move(bench, { ...handle, mm }, units, () => settled(picture));
      hold.value = { moves, from, scale: lie.scale, pointer: signal<Point | null>(at), ending: false };
      select(bench, handle.subject);
      return moves;
    },
    follow: (at) => {
      const held = hold.peek();
      if (held) held.pointer.value = at;
    },
    letGo: async (keep) => {
      const held = hold.peek();
      if (!held || held.ending) return;
      hold.value = { ...held, ending: true };
      await (keep ? held.moves.drop() : held.moves.takeBack());
      if (hold.peek()?.moves !== held.moves) return; // taken hold of again
      picture.letGo();
      await settled(picture);
      if (hold.peek()?.moves === held.moves) hold.value = null;
    },
  };
}

/** Waits for the picture, but not for ever: the pointer goes on. */
async function settled(picture: Picture): Promise<void> {
  const kLongest = 400; // ms
  await Promise.race([picture.idle(), new Promise((done) => setTimeout(done, kLongest))]);
}
