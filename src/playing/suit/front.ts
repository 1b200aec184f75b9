import { candidateOf, compareCandidates, type Candidate } from './order';

/**
 * The best so far: of all, and for each number of strings changed. All strings tuned alike with the passage transposed
 * alike is one way to play: of such a family the best of all keeps one member, the nearest.
 */
export class Front {
  private readonly kept: Candidate[] = [];
  private readonly byChanged: (Candidate | undefined)[] = [];

  /** @param keep how many of the best of all are kept */
  constructor(private readonly keep: number) {}

  get best(): readonly Candidate[] {
    return this.kept;
  }

  /** The best for each number of strings changed that has one. */
  get byStringsChanged(): readonly Candidate[] {
    return this.byChanged.filter((candidate) => candidate !== undefined);
  }

  /** A family dearer than this cannot change anything here. */
  bar(family: readonly Member[]): number {
    let bar = this.kept.length < this.keep ? Infinity : (this.kept.at(-1)?.cost ?? Infinity);
    for (const { changed } of family) bar = Math.max(bar, this.byChanged[changed]?.cost ?? Infinity);
    return bar;
  }

  /** Takes in a family of known cost. */
  take(family: readonly Member[], cost: number): void {
    const candidates = family.map(({ steps, halfSteps }) => candidateOf(steps, halfSteps, cost));
    for (const candidate of candidates) {
      const old = this.byChanged[candidate.stringsChanged];
      if (!old || compareCandidates(candidate, old) < 0) this.byChanged[candidate.stringsChanged] = candidate;
    }
    const [nearest] = candidates.sort(compareCandidates);
    if (!nearest) return;
    const at = this.kept.findIndex((other) => compareCandidates(nearest, other) < 0);
    this.kept.splice(at < 0 ? this.kept.length : at, 0, nearest);
    if (this.kept.length > this.keep) this.kept.pop();
  }
}

/** A retuning with the transposition that makes it one of a family. */
export interface Member {
  readonly steps: readonly number[];
  readonly halfSteps: number;
  /** Strings changed. */
  readonly changed: number;
}
