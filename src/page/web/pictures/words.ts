// What the pictures say beside what the core sets into them.

export const words = {
  region: { plan: 'From above', cover: 'Cover', 'cut-through': 'Cut-through' },
  bumpers: 'Cover of which bumper',
  bumper: (name: string) => `Cover ${name}`,
  asPrinted: 'as printed',
  zoomIn: 'Larger',
  zoomOut: 'Smaller',
  showAll: 'Show all',
  coming: 'The picture is being made.',
  noJob: 'The picture comes as soon as the job can be read.',
  failed: 'This picture could not be made.',
  parts: (picture: string) => `Parts in this picture: ${picture}`,
  movesBy: (step: string, snap: string) =>
    `Arrow keys along the side move it by ${step}, Page Up and Page Down by ${snap}. ` +
    'The other arrow keys go on to the next part. Enter chooses it.',

  bracket: (number: string) => `bracket ${number}`,
  gap: (bumper: string, next: string) => `gap between ${bumper} and ${next}`,
  end: (bumper: string, side: string) => `end of ${bumper} on ${side}`,
  opening: (side: string) => `opening on ${side}`,
  numeral: (side: string) => `number on ${side}`,
  fromCorner: (figure: string, corner: string) => `${figure} from the corner with ${corner}`,
  middleFromCorner: (figure: string, corner: string) =>
    `middle ${figure} from the corner with ${corner}`,
  moving: (name: string, place: string) => `${name}: ${place}`,
  cannot: 'It cannot be here. Let go, and it goes back to where it can.',
  atFault: (what: string) => `Not as the rules ask. ${what}`,

  who: 'Who can read it',
  way: { front: 'Front', left: 'Left', back: 'Back', right: 'Right' },
  seenFrom: (way: string, verdict: string) => `${way}: ${verdict}`,
  walkRound: 'Walk round',
  close: 'Close',
  standing: 'Where you stand',
  ahead: 'Straight ahead',
  behind: 'Straight behind',
  toLeft: (degrees: number) => `${degrees}° round to the machine’s left`,
  toRight: (degrees: number) => `${degrees}° round to the machine’s right`,
  stands: (round: string, away: string) => `${round}, ${away} away`,
  drag: 'Drag the eye round the machine, or use the arrow keys.',
  canBeRead: (number: string) => `${number} can be read`,
  another: 'looks like another number',
  cannotBeRead: 'cannot be read',
  away: 'How far away',
  high: 'How high your eyes are',
  color: 'Covers',
} as const;
