// What fingers, mouse and wheel do on a picture: take hold of what can be moved, choose a part, move
// the ground, and make it larger or smaller.
import type { Bench } from '../state/bench';
import { isMark, type Handle } from './adopt';
import { point, select, subjectAt } from './links';
import { dot, minus, type Point } from './map';
import type { Move } from './move';
import type { Picture } from './picture';

/** Pixels that a press may stray and still choose. */
const kStill = 4;
/** Pixels of a wheel that make it twice as large, and of a line that it turns by. */
const kTwice = 280;
const kLine = 20;

export interface Grips {
  /** The handle of a subject, where it has one. */
  handleOf(subject: string): Handle | undefined;
  /** Arrow keys move it from now on. */
  focus(subject: string): void;
  /** Takes hold of it. */
  take(handle: Handle, at: Point): Move;
  /** Where the pointer is, for the figure beside it. */
  follow(at: Point): void;
  /** Lets go of it: the job keeps it where it is, or has it back where it was. */
  letGo(keep: boolean): Promise<void>;
}

interface Press {
  pointer: number;
  start: Point;
  last: Point;
  subject: string;
  handle: Handle | undefined;
  /** Pixels of what is drawn that a pixel on the element is. */
  scale: number;
  moves: Move | null;
  strayed: boolean;
}

function isGrip(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest('.grip') !== null;
}

/** Listens on the element until what comes back is called. */
export function listen(element: HTMLElement, bench: Bench, picture: Picture, grips: Grips): () => void {
  const down = new Map<number, Point>();
  let press: Press | null = null;
  let pinch: { apart: number; middle: Point } | null = null;

  let box = element.getBoundingClientRect();
  const measure = () => {
    box = element.getBoundingClientRect();
  };
  const placeOf = (event: MouseEvent): Point => ({
    x: event.clientX - box.left,
    y: event.clientY - box.top,
  });

  const letGo = (keep: boolean) => {
    if (press?.moves) void grips.letGo(keep);
    press = null;
    element.classList.remove('panning');
  };

  const pinchOf = () => {
    const [a, b] = [...down.values()];
    if (!a || !b) return null;
    return {
      apart: Math.max(1, Math.hypot(a.x - b.x, a.y - b.y)),
      middle: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 },
    };
  };

  const onDown = (event: PointerEvent) => {
    if (event.button !== 0) return;
    measure();
    const at = placeOf(event);
    down.set(event.pointerId, at);
    if (down.size > 1) {
      letGo(false);
      pinch = pinchOf();
      return;
    }
    const subject = subjectAt(event.target);
    const handle = grips.handleOf(subject);
    // A finger on large digits as a rule means the ground; the handle itself can be hit with it.
    const isHold = isGrip(event.target) || (handle && isMark(handle) && event.pointerType !== 'touch');
    press = {
      pointer: event.pointerId,
      start: at,
      last: at,
      subject,
      handle: isHold ? handle : undefined,
      scale: 1 / picture.lie.peek().scale,
      moves: null,
      strayed: false,
    };
    try {
      element.setPointerCapture(event.pointerId);
    } catch {
      // It is gone already.
    }
  };

  const onMove = (event: PointerEvent) => {
    if (!down.has(event.pointerId)) {
      if (event.pointerType !== 'touch') point(bench, subjectAt(event.target));
      return;
    }
    const at = placeOf(event);
    down.set(event.pointerId, at);
    if (pinch) {
      const now = pinchOf();
      if (!now) return;
      picture.panBy(minus(now.middle, pinch.middle));
      picture.zoomBy(now.apart / pinch.apart, now.middle);
      pinch = now;
      return;
    }
    if (!press || press.pointer !== event.pointerId) return;
    if (!press.strayed && Math.hypot(at.x - press.start.x, at.y - press.start.y) < kStill) return;
    if (!press.strayed) {
      press.strayed = true;
      if (press.handle) press.moves = grips.take(press.handle, press.start);
      else element.classList.toggle('panning', !picture.isWhole);
    }
    if (press.moves) {
      const { way, mm, mmPerPx } = press.moves.handle;
      press.moves.to(mm + press.scale * mmPerPx * dot(minus(at, press.start), way), !event.altKey);
      grips.follow(at);
    } else if (!press.handle) {
      picture.panBy(minus(at, press.last));
    }
    press.last = at;
  };

  const onUp = (event: PointerEvent) => {
    if (!down.delete(event.pointerId)) return;
    if (down.size < 2) pinch = null;
    if (!press || press.pointer !== event.pointerId) return;
    if (!press.strayed) select(bench, press.subject);
    if (press.handle) grips.focus(press.subject);
    letGo(true);
  };

  const onCancel = (event: PointerEvent) => {
    if (!down.delete(event.pointerId)) return;
    if (down.size < 2) pinch = null;
    if (press?.pointer === event.pointerId) letGo(false);
  };

  const onLeave = () => {
    if (!press) point(bench, '');
  };

  const onWheel = (event: WheelEvent) => {
    const turned = event.deltaY * (event.deltaMode === 1 ? kLine : event.deltaMode === 2 ? 20 * kLine : 1);
    // All of it is shown: the page may scroll.
    if (turned === 0 || (turned > 0 && picture.isWhole && !event.ctrlKey)) return;
    event.preventDefault();
    measure();
    // A pinch on a touch pad comes as small turns with the control key.
    const times = 2 ** (-turned / (event.ctrlKey ? kTwice / 4 : kTwice));
    picture.zoomBy(times, placeOf(event));
  };

  const onKey = (event: KeyboardEvent) => {
    if (event.key !== 'Escape' || !press?.moves) return;
    event.preventDefault();
    event.stopPropagation();
    letGo(false);
  };

  element.addEventListener('pointerdown', onDown);
  element.addEventListener('pointermove', onMove);
  element.addEventListener('pointerup', onUp);
  element.addEventListener('pointercancel', onCancel);
  element.addEventListener('pointerleave', onLeave);
  element.addEventListener('wheel', onWheel, { passive: false });
  window.addEventListener('keydown', onKey, true);
  return () => {
    letGo(false);
    element.removeEventListener('pointerdown', onDown);
    element.removeEventListener('pointermove', onMove);
    element.removeEventListener('pointerup', onUp);
    element.removeEventListener('pointercancel', onCancel);
    element.removeEventListener('pointerleave', onLeave);
    element.removeEventListener('wheel', onWheel);
    window.removeEventListener('keydown', onKey, true);
  };
}
