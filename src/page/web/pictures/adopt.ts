// The core's SVG as elements of the page. It is parsed as XML and gone through name by name: what a
// picture has no use for is refused as a whole, so that no text of a job can come to be more than
// text.
import type { Point, PictureMap } from './map';

/** Something in a picture that can be moved along a side of the frame; lengths in millimeters. */
export interface Handle {
  /** Its subjects as the picture has them, "bumper.A.end bumper.B.start". */
  subject: string;
  kind: string;
  /** Of the frame, along which it moves, and the neighbor at whose corner its distance begins. */
  side: string;
  corner: string;
  mm: number;
  least: number;
  most: number;
  /** Pixels of the element. */
  at: Point;
  /** Unit; the distance grows along it. */
  way: Point;
  mmPerPx: number;
}

/** Words of a picture, for those who go through it by keyboard. Pixels of the element. */
export interface Said {
  subject: string;
  text: string;
  middle: Point;
  length: number;
  /** Degrees, clockwise. */
  turn: number;
}

/** Bearings and distances on the round chart: pixels from its middle, and what they mean. */
export interface Rings {
  center: Point;
  radii: { px: number; mm: number }[];
}

/** All marks that show the same. */
export interface Marks {
  subjects: readonly string[];
  elements: SVGElement[];
}

export interface Adopted {
  svg: SVGElement;
  kind: string;
  title: string;
  map: PictureMap | null;
  rings: Rings | null;
  handles: Handle[];
  said: Said[];
  /** By the text of their subjects. */
  marks: Map<string, Marks>;
}

/** The attribute that says which parts of the model a mark shows. */
export const kSubject = 'data-subject';

const kElements = new Set(['svg', 'title', 'desc', 'g', 'path', 'text', 'circle']);
const kAttributes = new Set([
  'xmlns', 'class', 'width', 'height', 'viewBox', 'role', 'aria-label', 'd', 'x', 'y', 'cx', 'cy', 'r',
  'transform', 'fill', 'fill-opacity', 'fill-rule', 'stroke', 'stroke-opacity', 'stroke-width',
  'stroke-dasharray', 'stroke-linecap', 'stroke-linejoin', 'font-family', 'font-size', 'font-variant',
  'font-weight', 'text-anchor', 'textLength', 'lengthAdjust', 'pointer-events',
]);
const kData = /^data-[a-z-]+$/;

/** A picture whose text is not what the core writes. */
export class NoPicture extends Error {}

/** `width`: of the element that is to show it, in pixels. */
export function adopted(text: string, width: number): Adopted {
  const parsed = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
  checkAll(parsed);
  const svg = document.adoptNode(parsed) as unknown as SVGElement;
  const number = (of: Element, name: string) => Number(of.getAttribute(name) ?? 0);
  const scale = width / number(svg, 'width');
  svg.setAttribute('width', String(width));
  svg.setAttribute('height', String(scale * number(svg, 'height')));
  const title = svg.querySelector('title');
  const name = title?.textContent ?? '';
  title?.remove(); // it would come up wherever the pointer rests

  const handles: Handle[] = [];
  for (const circle of svg.querySelectorAll('.handles > circle')) {
    const said = (name: string) => circle.getAttribute(`data-${name}`) ?? '';
    handles.push({
      subject: circle.getAttribute(kSubject) ?? '',
      kind: (circle.getAttribute('class') ?? '').replace(/^handle /, ''),
      side: said('side'),
      corner: said('corner'),
      mm: Number(said('mm')),
      least: Number(said('least')),
      most: Number(said('most')),
      at: { x: scale * number(circle, 'cx'), y: scale * number(circle, 'cy') },
      way: pointOf(said('way')),
      mmPerPx: Number(said('mm-per-px')) / scale,
    });
  }
  svg.querySelector('.handles')?.remove(); // they are elements of the page's own
  const marks = marksOf(svg);
  for (const handle of handles)
    if (isMark(handle))
      for (const element of marks.get(handle.subject)?.elements ?? []) element.classList.add('movable');

  return {
    svg,
    kind: (svg.getAttribute('class') ?? '').replace(/^screen /, ''),
    title: name,
    map: mapOf(svg, scale),
    rings: ringsOf(svg, scale),
    handles,
    said: [...svg.querySelectorAll('.words > text')].map((words) => saidBy(words, svg, scale)),
    marks,
  };
}

/** Whether the marks that show it can be taken hold of, too: those of an opening are a side's. */
export function isMark(handle: Handle): boolean {
  return handle.kind !== 'opening';
}

function checkAll(root: Element) {
  for (const element of [root, ...root.querySelectorAll('*')]) {
    if (element.namespaceURI !== 'http://www.w3.org/2000/svg' || !kElements.has(element.localName))
      throw new NoPicture(`an element "${element.localName}"`);
    for (const { name, value } of element.attributes)
      if (!(kAttributes.has(name) || kData.test(name)) || /url\(|script:/i.test(value))
        throw new NoPicture(`an attribute "${name}"`);
  }
  if (root.localName !== 'svg') throw new NoPicture(`"${root.localName}"`);
}

function pointOf(text: string): Point {
  const [x = 0, y = 0] = text.split(' ').map(Number);
  return { x, y };
}

function mapOf(svg: Element, scale: number): PictureMap | null {
  const mmPerPx = Number(svg.getAttribute('data-mm-per-px') ?? 0);
  if (!(mmPerPx > 0)) return null;
  const origin = pointOf(svg.getAttribute('data-origin') ?? '');
  return {
    mmPerPx: mmPerPx / scale,
    origin: { x: scale * origin.x, y: scale * origin.y },
    mirrored: svg.hasAttribute('data-mirrored'),
  };
}

function ringsOf(svg: Element, scale: number): Rings | null {
  const radii = svg.getAttribute('data-radii');
  if (!radii) return null;
  const center = pointOf(svg.getAttribute('data-center') ?? '');
  return {
    center: { x: scale * center.x, y: scale * center.y },
    radii: radii.split(' ').map((pair) => {
      const [px = 0, mm = 0] = pair.split(':').map(Number);
      return { px: scale * px, mm };
    }),
  };
}

function saidBy(words: Element, svg: Element, scale: number): Said {
  const number = (name: string) => Number(words.getAttribute(name) ?? 0);
  const length = number('textLength');
  const anchor = words.getAttribute('text-anchor');
  const along = anchor === 'middle' ? 0 : (anchor === 'end' ? -0.5 : 0.5) * length;
  const turn = Number(/rotate\((\S+)/.exec(words.getAttribute('transform') ?? '')?.[1] ?? 0);
  const textSize = Number(svg.querySelector('.words')?.getAttribute('font-size') ?? 13);
  const up = 0.35 * textSize;
  const cos = Math.cos((turn * Math.PI) / 180);
  const sin = Math.sin((turn * Math.PI) / 180);
  return {
    subject: words.getAttribute(kSubject) ?? '',
    text: words.textContent ?? '',
    middle: {
      x: scale * (number('x') + along * cos + up * sin),
      y: scale * (number('y') + along * sin - up * cos),
    },
    length: scale * length,
    turn,
  };
}

function marksOf(svg: Element): Map<string, Marks> {
  const marks = new Map<string, Marks>();
  for (const element of svg.querySelectorAll<SVGElement>(`[${kSubject}]`)) {
    const text = element.getAttribute(kSubject) ?? '';
    const there = marks.get(text);
    if (there) there.elements.push(element);
    else marks.set(text, { subjects: text.split(' '), elements: [element] });
  }
  return marks;
}
