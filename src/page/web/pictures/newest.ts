// One question asked again and again: one request at a time, and of those that wait the newest.

export class Newest<Question, Answer> {
  #ask: (question: Question) => Promise<Answer>;
  #answered: (answer: Answer, question: Question) => void;
  #failed: (error: unknown) => void;
  #next: { question: Question } | null = null;
  #running: Promise<void> = Promise.resolve();
  #isBusy = false;
  #closed = false;

  constructor(
    ask: (question: Question) => Promise<Answer>,
    answered: (answer: Answer, question: Question) => void,
    failed: (error: unknown) => void = () => {},
  ) {
    this.#ask = ask;
    this.#answered = answered;
    this.#failed = failed;
  }

  want(question: Question): void {
    this.#next = { question };
    if (this.#isBusy) return;
    this.#isBusy = true;
    this.#running = this.#run();
  }

  /** Resolves when nothing is wanted any more. */
  async idle(): Promise<void> {
    while (this.#isBusy) await this.#running;
  }

  close(): void {
    this.#closed = true;
    this.#next = null;
  }

  async #run(): Promise<void> {
    while (this.#next) {
      const { question } = this.#next;
      this.#next = null;
      try {
        const answer = await this.#ask(question);
        if (!this.#closed) this.#answered(answer, question);
      } catch (error) {
        if (!this.#closed && !isOvertaken(error)) this.#failed(error);
      }
    }
    this.#isBusy = false;
  }
}

/** A newer request, or another job, made it useless: whoever asked asks again. */
function isOvertaken(error: unknown): boolean {
  return error instanceof Error && error.name === 'Overtaken';
}
