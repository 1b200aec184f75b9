/**
 * Brute force over every sequence of shapes with fingers on them, written from the table of shared/facts/hand-model.md
 * (§1.1, §6) alone: it imports nothing of src, so that a mistake there is not repeated here. No capo, no thumb.
 */
export interface OracleNeck {
  /** How many strings. */
  readonly strings: number;
  readonly frets: number;
  /** Millimetres, nut to bridge. */
  readonly length: number;
}

/** A shape with its fingers: string index, fret, finger (0 open). */
interface Held {
  readonly s: number;
  readonly fret: number;
  readonly finger: number;
}

export interface OracleOption {
  readonly shape: number;
  readonly held: readonly Held[];
  readonly at: number;
  readonly cost: number;
}

export interface OracleShape {
  readonly frets: readonly (number | null)[];
  readonly extra: number;
}

const LIMIT: Readonly<Record<string, number>> = { 12: 75, 13: 105, 14: 130, 23: 70, 24: 100, 34: 70 };
/** A shape against a move, as the search is documented to weigh them. */
const SHAPE_WEIGHT = 2;
const BARRE = [0, 1.5, 3.3, 3.3, 4.5];

export class ProgressionOracle {
  constructor(private readonly neck: OracleNeck) {}

  private x(fret: number): number {
    return this.neck.length - this.neck.length / Math.pow(2, fret / 12);
  }

  /** Every way to hold every shape. */
  options(shapes: readonly OracleShape[]): OracleOption[] {
    return shapes.flatMap(({ frets, extra }, shape) => {
      const sounding = frets.flatMap((fret, s) => (fret === null ? [] : [{ s, fret }]));
      const down = sounding.filter(({ fret }) => fret > 0);
      const all: OracleOption[] = [];
      const give = (fingers: readonly number[], at: number): void => {
        const held = sounding.map((one) => ({ ...one, finger: fingers[down.indexOf(one)] ?? 0 }));
        all.push({ shape, held, at, cost: SHAPE_WEIGHT * (extra + this.shapeCost(held, at)) });
      };
      if (sounding.length === 0) return [];
      if (down.length === 0) for (let at = 1; at <= this.neck.frets; at++) give([], at);
      else
        for (let code = 0; code < 4 ** down.length; code++) {
          const fingers = down.map((_, i) => (Math.floor(code / 4 ** i) % 4) + 1);
          if (!this.canHold(sounding, down, fingers)) continue;
          const least = Math.min(...fingers);
          give(fingers, Math.max(1, (down[fingers.indexOf(least)]?.fret ?? 1) - least + 1));
        }
      return all;
    });
  }

  private canHold(
    sounding: readonly { s: number; fret: number }[],
    down: readonly { s: number; fret: number }[],
    fingers: readonly number[],
  ): boolean {
    for (const [a, d] of down.entries())
      for (const [b, e] of down.entries()) {
        const [f = 0, g = 0] = [fingers[a], fingers[b]];
        if (f === g && d.fret !== e.fret) return false;
        if (f < g && d.fret > e.fret) return false;
        if (f < g && this.x(e.fret) - this.x(d.fret) > (LIMIT[`${f}${g}`] ?? 0) + 1e-6) return false;
        if (f !== g || d.s >= e.s) continue;
        for (const other of sounding) {
          if (other.s <= d.s || other.s >= e.s) continue;
          const at = down.findIndex((one) => one.s === other.s);
          if (other.fret < d.fret || (other.fret === d.fret && fingers[at] !== f)) return false;
        }
      }
    return true;
  }

  private shapeCost(held: readonly Held[], at: number): number {
    let cost = 0.55 * (at - 1) + 0.5 * held.filter(({ fret }) => fret === 0).length * Math.max(0, at - 3);
    const of = (finger: number): readonly Held[] => held.filter((one) => one.finger === finger);
    const used = [1, 2, 3, 4].filter((finger) => of(finger).length > 0);
    used.forEach((finger, i) => {
      const bar = of(finger);
      const strings = bar.map(({ s }) => s);
      const fret = bar[0]?.fret ?? 0;
      const next = used[i + 1];
      if (next !== undefined) {
        const fretNext = of(next)[0]?.fret ?? 0;
        cost += 0.08 * Math.max(0, this.x(fretNext) - this.x(fret) - 22 * (next - finger));
        cost += Math.max(0, fretNext - fret - (next - finger));
        cost += 2 * Math.max(0, next - finger - 1 - Math.max(0, fretNext - fret - 1));
        const others = of(next).map(({ s }) => s);
        const apart = Math.max(
          Math.min(...others) - Math.max(...strings),
          Math.min(...strings) - Math.max(...others),
        );
        cost += 0.5 * Math.max(0, apart - 3);
      }
      if (bar.length > 1) {
        cost += (BARRE[finger] ?? 0) + 0.6 * (bar.length - 2);
        const top = Math.max(...strings);
        if (finger > 1 && held.some((one) => one.s === top + 1 && one.fret < fret)) cost += 1.5;
        for (let s = Math.min(...strings); s < top; s++) if (!held.some((one) => one.s === s)) cost += 1.5;
      }
    });
    for (const a of held)
      for (const b of held)
        if (a.finger > 0 && b.finger > 0 && a.fret === b.fret && a.s < b.s && a.finger > b.finger)
          cost += 4.5;
    cost += 0.3 * used.length + (used.includes(3) ? 0.6 : 0) + (used.includes(4) ? 1 : 0);
    if (used.length > 0 && !used.includes(1)) cost += 1.2;
    const strings = held.map(({ s }) => s);
    for (let s = Math.min(...strings); s < Math.max(...strings); s++) if (!strings.includes(s)) cost += 2;
    return cost;
  }

  private move(from: OracleOption, to: OracleOption, seconds: number): number {
    let cost = 0;
    if (from.at !== to.at) {
      cost += (0.01 * Math.abs(this.x(from.at) - this.x(to.at)) * 0.25) / Math.max(0.06, seconds);
      cost += from.held.some(({ fret }) => fret > 0) ? 1 : 0.1;
    }
    for (let finger = 1; finger <= 4; finger++) {
      const now = to.held.filter((one) => one.finger === finger);
      const old = from.held.filter((one) => one.finger === finger);
      if (now.length === 0) continue;
      if (old.length === 0) cost += 0.3;
      else if (!now.some((one) => old.some((was) => was.s === one.s && was.fret === one.fret))) cost += 0.7;
    }
    const [a, b] = [from.held.map(({ s }) => s), to.held.map(({ s }) => s)];
    return cost + 0.15 * Math.max(0, Math.min(...b) - Math.max(...a), Math.min(...a) - Math.max(...b));
  }

  /** The least sum over all sequences; undefined where a chord cannot be held. */
  least(
    chords: readonly { readonly shapes: readonly OracleShape[]; readonly seconds: number }[],
  ): number | undefined {
    const options = chords.map(({ shapes }) => this.options(shapes));
    if (options.some((all) => all.length === 0)) return undefined;
    let least = Infinity;
    const go = (at: number, before: OracleOption | undefined, sum: number): void => {
      if (at === chords.length) {
        least = Math.min(least, sum);
        return;
      }
      for (const option of options[at] ?? [])
        go(
          at + 1,
          option,
          sum + option.cost + (before ? this.move(before, option, chords[at]?.seconds ?? 0) : 0),
        );
    };
    go(0, undefined, 0);
    return least;
  }
}
