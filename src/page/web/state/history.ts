// What was edited, step by step.

/** Steps of one kind are one where no more time than this lies between them, in milliseconds. */
const kBurst = 1500;
/** In one field people stop to think before a value is whole. */
const kFieldBurst = 5000;
const kMostSteps = 2000;

interface Step {
  text: string;
  kind: string;
  at: number;
}

/** Whether steps of a kind are ever one: typing, and what is done with arrow keys or by dragging. */
function merges(kind: string): boolean {
  return /^(typing|field:|drag:)/.test(kind);
}

export class History {
  private steps: Step[];
  private now = 0;

  constructor(first: string) {
    this.steps = [{ text: first, kind: 'begin', at: 0 }];
  }

  get text(): string {
    return this.steps[this.now]!.text;
  }
  get canUndo(): boolean {
    return this.now > 0;
  }
  /** The kind of the step that undo would take back. */
  get lastKind(): string {
    return this.steps[this.now]!.kind;
  }
  get canRedo(): boolean {
    return this.now + 1 < this.steps.length;
  }

  add(text: string, kind: string, at: number): void {
    const last = this.steps[this.now]!;
    if (text === last.text) return;
    const one = this.now > 0 && kind === last.kind && merges(kind) && !this.canRedo &&
      (kind.startsWith('drag:') || at - last.at < (kind.startsWith('field:') ? kFieldBurst : kBurst));
    this.steps.length = this.now + 1;
    if (one && text === this.steps[this.now - 1]!.text) this.steps.length -= 1; // back to where it began
    else if (one) this.steps[this.now] = { text, kind, at };
    else this.steps.push({ text, kind, at });
    if (this.steps.length > kMostSteps) this.steps.splice(0, this.steps.length - kMostSteps);
    this.now = this.steps.length - 1;
  }

  /** Takes the last step back for good, where it is of this kind. */
  drop(kind: string): void {
    if (this.now === 0 || this.steps[this.now]!.kind !== kind) return;
    this.steps.length = this.now;
    this.now -= 1;
  }

  undo(): void {
    if (this.canUndo) this.now -= 1;
  }
  redo(): void {
    if (this.canRedo) this.now += 1;
  }
}
