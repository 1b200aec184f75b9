import type { StringChoice } from './strings';

/** A shape as the search holds it. */
export interface FoundShape {
  /** By string, low-placed first; undefined is not played. */
  readonly choices: readonly (StringChoice | undefined)[];
  readonly sounding: number;
  readonly leftOut: number;
  /** Pitch class of the lowest pitch. */
  readonly bass: number;
  readonly innerMuted: number;
  /** Whether the lowest pitch is the one asked for: the bass behind a slash, else the root. */
  readonly rooted: boolean;
  /** Fret of the index finger from the nut. */
  readonly position: number;
  readonly cost: number;
  /** Sum of the frets; of equal costs the lower one comes first. */
  readonly tie: number;
}

/** The best shapes of a window, as many as are wanted. */
export class FoundShapes {
  private readonly best: FoundShape[] = [];

  /** @param ceiling what costs as much or more is of no use */
  constructor(
    private readonly most: number,
    private readonly ceiling: number,
  ) {}

  /** Nothing that costs as much or more is kept any more. */
  get worst(): number {
    const last = this.best.length < this.most ? undefined : this.best.at(-1);
    return last ? Math.min(last.cost, this.ceiling) : this.ceiling;
  }

  get list(): readonly FoundShape[] {
    return this.best;
  }

  add(shape: FoundShape): void {
    if (this.most === Infinity) {
      this.best.push(shape);
      return;
    }
    let at = this.best.length;
    while (at > 0 && (this.best[at - 1]?.cost ?? 0) > shape.cost) at--;
    this.best.splice(at, 0, shape);
    if (this.best.length > this.most) this.best.pop();
  }
}
