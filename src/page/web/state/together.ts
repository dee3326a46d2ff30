/** How long what is there waits for the rest, in milliseconds. */
const kPatience = 60;

/** Answers to what was asked in one go come together, when the last of them is there, so that the
 * page is painted once; but not much later than each alone. */
export class Together {
  #burst: Promise<unknown>[] = [];

  async ask<Answer>(answer: Promise<Answer>): Promise<Answer> {
    const burst = this.#burst;
    burst.push(answer);
    const mine = await answer.finally(() => {
      if (burst === this.#burst) this.#burst = [];
    });
    const patience = new Promise((done) => setTimeout(done, kPatience));
    await Promise.race([Promise.allSettled(burst), patience]);
    return mine;
  }
}
