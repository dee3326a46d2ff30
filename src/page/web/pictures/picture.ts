// One picture on the page: what was drawn last, how large its element is, which part of the model
// is wanted, and so how what was drawn lies on it until it is drawn anew.
import { batch, computed, signal } from '@preact/signals';
import type { PictureSize } from 'swathe';
import { adopted, type Adopted } from './adopt';
import { asDrawn, isWithin, kept, lieOf, moved, windowOf, zoomed } from './map';
import type { Lie, PictureMap, Point, Size } from './map';
import { Newest } from './newest';
import type { Bench } from '../state/bench';
import { late } from '../state/late';
import { why } from '../state/why';

/** How much larger than all of it a picture may be. */
const kMostZoom = 40;
/** The core draws nothing smaller; it is drawn so large and shown smaller. */
const kLeastPx = 160;
/** Of words, in parts of the page's text size: 13 of 16 pixels. */
const kText = 13 / 16;

interface Question {
  size: Size;
  map: PictureMap | null;
  text: number;
}

export interface Drawn extends Adopted {
  size: Size;
  /** It shows all there is. */
  whole: boolean;
}

export class Picture {
  /** The last good one. */
  readonly drawn = signal<Drawn | null>(null);
  /** The last that showed all there is. */
  readonly all = signal<Drawn | null>(null);
  readonly failed = signal(false);
  /** It was asked for and is not there yet. */
  readonly waiting = signal(false);
  /** The same, where that takes so long that it is to be seen. */
  readonly isLate = late(() => this.waiting.value);
  /** Of the element that shows it, pixels; null before it is laid out. */
  readonly size = signal<Size | null>(null);
  /** The part that is wanted; null for all of it. */
  readonly zoom = signal<PictureMap | null>(null);
  /** Kept still while something is dragged. */
  readonly held = signal<PictureMap | null>(null);
  /** Pixels by which what is drawn is moved, so that what is dragged stays under the pointer. */
  readonly shift = signal<Point>({ x: 0, y: 0 });

  readonly wanted = computed(() => this.held.value ?? this.zoom.value);

  readonly lie = computed<Lie>(() => {
    const drawn = this.drawn.value;
    const wanted = this.wanted.value ?? this.#whole.value;
    const lie = drawn?.map && wanted ? lieOf(drawn.map, wanted) : asDrawn;
    const shift = this.shift.value;
    return { ...lie, x: lie.x + shift.x, y: lie.y + shift.y };
  });

  /** How all of it lies on the element. */
  readonly #whole = signal<PictureMap | null>(null);
  readonly #newest: Newest<Question, Adopted>;

  constructor(bench: Bench, ask: (size: PictureSize) => Promise<string>) {
    const draw = async (question: Question) =>
      adopted(await ask(asked(question)), question.size.width);
    this.#newest = new Newest(
      (question) => bench.together.ask(draw(question)),
      (drawn, question) => this.#show(drawn, question),
      (error) => {
        this.failed.value = true;
        this.waiting.value = false;
        bench.trouble.value = why(error);
      },
    );
  }

  /** Draws it anew, for what is wanted now. */
  again(): void {
    const size = this.size.peek();
    if (!size || size.width < 1 || size.height < 1) return;
    this.waiting.value = true;
    this.#newest.want({ size, map: this.wanted.peek(), text: kText * rootTextSize() });
  }

  /** Resolves when all that was asked for is shown. */
  idle(): Promise<void> {
    return this.#newest.idle();
  }

  close(): void {
    this.isLate.stop();
    this.#newest.close();
  }

  #show(drawn: Adopted, question: Question): void {
    batch(() => {
      if (!question.map) this.#whole.value = drawn.map;
      this.failed.value = false;
      this.waiting.value = false;
      this.drawn.value = { ...drawn, size: question.size, whole: question.map === null };
      if (!question.map) this.all.value = this.drawn.value;
    });
  }

  // --- what part of it is wanted ----------------------------------------------------------------

  get isWhole(): boolean {
    return this.zoom.value === null;
  }

  showAll(): void {
    this.zoom.value = null;
  }

  /** Other model, other millimeters: what was wanted of the one before means nothing. */
  forget(): void {
    batch(() => {
      this.zoom.value = null;
      this.#whole.value = null;
      this.all.value = null;
      this.shift.value = { x: 0, y: 0 };
    });
  }

  /** So many times as large, about a place of the element, or its middle. */
  zoomBy(times: number, at?: Point): void {
    const size = this.size.peek();
    const whole = this.#whole.peek();
    if (!size || !whole) return;
    const now = this.wanted.peek() ?? whole;
    const most = whole.mmPerPx / kMostZoom;
    const mmPerPx = Math.max(now.mmPerPx / times, most);
    const middle = { x: size.width / 2, y: size.height / 2 };
    const to = zoomed(now, now.mmPerPx / mmPerPx, at ?? middle);
    this.zoom.value = to.mmPerPx < 0.999 * whole.mmPerPx ? kept(to, whole, size) : null;
  }

  panBy(by: Point): void {
    const size = this.size.peek();
    const whole = this.#whole.peek();
    const now = this.zoom.peek();
    if (size && whole && now) this.zoom.value = kept(moved(now, by), whole, size);
  }

  /** Moves a place of the element to its middle, where it is not in sight. */
  bringIn(at: Point): void {
    const size = this.size.peek();
    if (!size || isWithin(at, size)) return;
    this.panBy({ x: size.width / 2 - at.x, y: size.height / 2 - at.y });
  }

  /** Keeps it still: what is drawn anew lies as what is drawn now. */
  hold(): void {
    this.held.value = this.zoom.peek() ?? this.drawn.peek()?.map ?? null;
  }
  letGo(): void {
    batch(() => {
      this.held.value = null;
      this.shift.value = { x: 0, y: 0 };
    });
  }
}

function asked({ size, map, text }: Question): PictureSize {
  const times = Math.max(1, kLeastPx / Math.min(size.width, size.height));
  return {
    width: times * size.width,
    height: times * size.height,
    text: times * text,
    ...(map ? { window: windowOf(map, size) } : {}),
  };
}

function rootTextSize(): number {
  return Number.parseFloat(getComputedStyle(document.documentElement).fontSize) || 16;
}
