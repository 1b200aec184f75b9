/** Work is handed back to the caller after this long; a little under the 10 ms that callers count on. */
const SLICE_MS = 8;

/** Tells when a slice of work is over. */
export class Slices {
  private start = Date.now();

  /** Whether it is time to hand back; asking starts the next slice when it is. */
  over(): boolean {
    const now = Date.now();
    if (now - this.start < SLICE_MS) return false;
    this.start = now;
    return true;
  }

  /** The caller had its turn. */
  again(): void {
    this.start = Date.now();
  }
}
