/** Answers to what was asked in one go come together, when the last of them is there: the page is
 * painted once. */
export class Together {
  #burst: Promise<unknown>[] = [];

  async ask<Answer>(answer: Promise<Answer>): Promise<Answer> {
    const burst = this.#burst;
    burst.push(answer);
    const mine = await answer;
    if (burst === this.#burst) this.#burst = [];
    await Promise.allSettled(burst);
    return mine;
  }
}
