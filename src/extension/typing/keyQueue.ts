/** Does one thing after the other, in the order in which they came. One that fails does not hold up the next. */
export class KeyQueue {
  private last: Promise<void> = Promise.resolve();
  private waiting = 0;

  constructor(private readonly failed: (error: unknown) => void) {}

  /** How many are not done yet. */
  get pending(): number {
    return this.waiting;
  }

  /** @returns when its own turn is over */
  push(work: () => Promise<void>): Promise<void> {
    this.waiting++;
    this.last = this.last
      .then(work)
      .catch(this.failed)
      .finally(() => this.waiting--);
    return this.last;
  }
}
