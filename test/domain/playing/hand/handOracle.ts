/**
 * Brute force over every placement, fingering, hand position and choice of what rings on, written from the table of
 * shared/facts/hand-model.md (§1.1, §2, §6) alone. It imports nothing of src, so a mistake there is not repeated here.
 */
export interface OracleNote {
  readonly id: number;
  /** Whole number. */
  readonly midi: number;
  readonly onset: number;
  readonly end: number;
  readonly joinedTo: number | undefined;
  readonly stopped: boolean;
}

export interface OracleHand {
  /** MIDI numbers, low-placed string first. */
  readonly opens: readonly number[];
  readonly frets: number;
  readonly length: number;
  readonly slide: boolean;
  readonly thumb: boolean;
  readonly openStrings: boolean;
  readonly secondsPerQuarter: number;
}

interface Held {
  readonly note: number;
  readonly s: number;
  readonly fret: number;
  /** 0 open, 1–4, 5 the thumb. */
  readonly finger: number;
}

/** What the hand does at one moment. */
export interface Option {
  readonly held: readonly Held[];
  readonly leftOut: readonly number[];
  readonly at: number;
  readonly cost: number;
}

/** Millimetres between fingers. */
const LIMIT: Readonly<Record<string, number>> = { 12: 75, 13: 105, 14: 130, 23: 70, 24: 100, 34: 70 };

export class Oracle {
  readonly onsets: readonly number[];
  /** All that the hand can do, moment by moment. */
  readonly options: readonly (readonly Option[])[];

  constructor(
    readonly notes: readonly OracleNote[],
    readonly hand: OracleHand,
  ) {
    this.onsets = [...new Set(notes.map((n) => n.onset))].sort((a, b) => a - b);
    this.options = this.onsets.map((_, m) => this.optionsAt(m));
  }

  private x(fret: number): number {
    return this.hand.length - this.hand.length / Math.pow(2, fret / 12);
  }

  private followerOf(i: number): number {
    return this.notes.findIndex((n, f) => n.joinedTo === this.notes[i]?.id && this.placeable(f));
  }

  /** Whether a note can sound anywhere at all; only such notes count as voices of a moment. */
  private placeable(i: number): boolean {
    const n = this.notes[i];
    if (!n) return false;
    const source = this.notes.findIndex((one) => one.id === n.joinedTo);
    const least = n.stopped || !this.hand.openStrings ? 1 : 0;
    const found = this.hand.opens.some((open) => n.midi - open >= least && n.midi - open <= this.hand.frets);
    return found && (source < 0 || this.placeable(source));
  }

  /** Earlier notes that may or must still sound at a moment. */
  private carried(m: number): number[] {
    const now = this.onsets[m] ?? 0;
    return this.notes.flatMap((n, i) => {
      if (n.onset >= now || !this.placeable(i)) return [];
      const follower = this.notes[this.followerOf(i)];
      // A pitch that is struck again ends the note that sounded it.
      const again = this.notes.some(
        (o, f) => o.midi === n.midi && o.onset > n.onset && o.onset <= now && this.placeable(f),
      );
      return (follower ? follower.onset > now : n.end > now && !again) ? [i] : [];
    });
  }

  private optionsAt(m: number): Option[] {
    const now = this.onsets[m] ?? 0;
    const own = this.notes.flatMap((n, i) => (n.onset === now ? [i] : []));
    const carried = this.carried(m);
    const all: Option[] = [];
    const walk = (rest: readonly number[], held: readonly Held[], leftOut: readonly number[]): void => {
      const [i] = rest;
      if (i === undefined) return this.fingered(held, leftOut, own, carried, all);
      const n = this.notes[i];
      if (!n) return;
      this.hand.opens.forEach((open, s) => {
        const fret = n.midi - open;
        const least = n.stopped || !this.hand.openStrings ? 1 : 0;
        if (fret < least || fret > this.hand.frets || held.some((one) => one.s === s)) return;
        walk(rest.slice(1), [...held, { note: i, s, fret, finger: 0 }], leftOut);
      });
      walk(rest.slice(1), held, own.includes(i) ? [...leftOut, i] : leftOut);
    };
    walk([...carried, ...own], [], []);
    return all.sort((a, b) => a.leftOut.length - b.leftOut.length || a.cost - b.cost);
  }

  /** Adds every way to finger some places, with every position of the hand. */
  private fingered(
    held: readonly Held[],
    leftOut: readonly number[],
    own: readonly number[],
    carried: readonly number[],
    all: Option[],
  ): void {
    const down = held.filter((one) => one.fret > 0);
    const voices = own.filter((i) => this.placeable(i));
    const add = (fingers: readonly number[], at: number, reach: boolean): void => {
      const full = held.map((one) => ({ ...one, finger: fingers[down.indexOf(one)] ?? 0 }));
      const cost = this.gripCost(full, voices, voices.length + carried.length, at) + (reach ? 0.7 : 0);
      all.push({ held: full, leftOut, at, cost });
    };
    if (down.length === 0) {
      for (let at = 1; at <= this.hand.frets; at++) add([], at, false);
      return;
    }
    if (this.hand.slide) {
      const low = Math.min(...down.map((d) => d.s));
      const high = Math.max(...down.map((d) => d.s));
      if (new Set(down.map((d) => d.fret)).size > 1) return;
      if (held.some((h) => h.fret === 0 && h.s > low && h.s < high)) return;
      add(
        down.map(() => 1),
        down[0]?.fret ?? 1,
        false,
      );
      return;
    }
    const most = this.hand.thumb ? 5 : 4;
    for (let code = 0; code < most ** down.length; code++) {
      const fingers = down.map((_, i) => (Math.floor(code / most ** i) % most) + 1);
      if (!this.canHold(held, down, fingers)) continue;
      const least = Math.min(...fingers.filter((f) => f < 5));
      const fret = down[fingers.indexOf(least)]?.fret ?? 1;
      add(fingers, Math.max(1, fret - least + 1), false);
      if (down.length > 1) continue;
      if (least === 1 && fret < this.hand.frets) add(fingers, fret + 1, true);
      if (least === 4 && fret > 4) add(fingers, fret - 4, true);
    }
  }

  private canHold(held: readonly Held[], down: readonly Held[], fingers: readonly number[]): boolean {
    for (let a = 0; a < down.length; a++) {
      for (let b = 0; b < down.length; b++) {
        const [d, e, f, g] = [down[a], down[b], fingers[a] ?? 0, fingers[b] ?? 0];
        if (!d || !e || f === 5 || g === 5) continue;
        if (f === g && d.fret !== e.fret) return false;
        if (f < g && (d.fret > e.fret || this.x(e.fret) - this.x(d.fret) > (LIMIT[`${f}${g}`] ?? 0) + 1e-6))
          return false;
        if (f !== g || d.s >= e.s) continue;
        // A barre from d to e.
        for (const other of held) {
          const finger = fingers[down.indexOf(other)];
          // A barre of four strings takes the next one at its fret as well.
          const beside = e.s - d.s >= 3 && (other.s === d.s - 1 || other.s === e.s + 1);
          if (beside && other.fret === d.fret && finger !== f && finger !== 5) return false;
          if (other.s <= d.s || other.s >= e.s) continue;
          if (other.fret < d.fret || (other.fret === d.fret && finger !== f)) return false;
        }
      }
    }
    const thumbs = down.filter((_, i) => fingers[i] === 5);
    if (thumbs.length === 0) return true;
    const least = Math.min(...fingers.filter((f) => f < 5));
    const lowest = down[fingers.indexOf(least)];
    return (
      thumbs.length === 1 &&
      thumbs[0]?.s === 0 &&
      lowest !== undefined &&
      Math.abs(lowest.fret - thumbs[0].fret) <= 2
    );
  }

  private gripCost(held: readonly Held[], own: readonly number[], voices: number, at: number): number {
    const line = voices < 4;
    const openOnes = held.filter((h) => h.fret === 0).length;
    let sum = line ? 0.02 * (at - 1) : 0.5 * 0.55 * (at - 1);
    sum += (line ? 0.2 : 0.25) * openOnes * Math.max(0, at - 3);
    if (!this.hand.slide) {
      const used = [1, 2, 3, 4].filter((f) => held.some((h) => h.finger === f));
      const of = (f: number): Held[] => held.filter((h) => h.finger === f);
      let shape = 0;
      used.forEach((f, i) => {
        const g = used[i + 1];
        const bar = of(f);
        const strings = bar.map((h) => h.s);
        const fret = bar[0]?.fret ?? 0;
        if (g !== undefined) {
          const next = of(g);
          const fretNext = next[0]?.fret ?? 0;
          shape += 0.08 * Math.max(0, this.x(fretNext) - this.x(fret) - 22 * (g - f));
          shape += Math.max(0, fretNext - fret - (g - f));
          shape += 2 * Math.max(0, g - f - 1 - Math.max(0, fretNext - fret - 1));
          const gap = Math.max(
            Math.min(...next.map((h) => h.s)) - Math.max(...strings),
            Math.min(...strings) - Math.max(...next.map((h) => h.s)),
          );
          if (!line) shape += 0.5 * Math.max(0, gap - 1 - 2);
        }
        if (bar.length > 1) {
          shape += [0, 1.5, 3.3, 3.3, 4.5][f] ?? 0;
          shape += 0.6 * (bar.length - 2);
          if (f > 1 && held.some((h) => h.s === Math.max(...strings) + 1 && h.fret < fret)) shape += 1.5;
          for (let s = Math.min(...strings); s < Math.max(...strings); s++)
            if (!held.some((h) => h.s === s)) shape += 1.5;
        }
      });
      for (const a of held)
        for (const b of held) {
          const fingers = a.finger > 0 && b.finger > 0 && a.finger < 5 && b.finger < 5;
          if (fingers && a.fret === b.fret && a.s < b.s && a.finger > b.finger) shape += 4.5;
        }
      if (line) sum += 0.5 * shape + (used.includes(3) ? 0.1 : 0) + (used.includes(4) ? 0.3 : 0);
      else {
        const all = used.length + (held.some((h) => h.finger === 5) ? 1 : 0);
        shape += 0.3 * all + (used.includes(3) ? 0.6 : 0) + (used.includes(4) ? 1 : 0);
        if (all > 0 && !used.includes(1)) shape += 1.2;
        sum += 0.5 * shape;
      }
    }
    if (own.length >= 4) {
      const struck = held.filter((h) => own.includes(h.note)).map((h) => h.s);
      for (let s = Math.min(...struck); s < Math.max(...struck); s++)
        if (!held.some((h) => h.s === s)) sum += 0.5 * 2;
    }
    return sum;
  }

  /** The cost of going from one option to the next, or undefined where that cannot be. */
  move(m: number, from: Option, to: Option): number | undefined {
    let sum = 0;
    const was = (i: number): Held | undefined => from.held.find((h) => h.note === i);
    const is = (i: number): Held | undefined => to.held.find((h) => h.note === i);
    for (const i of this.carried(m)) {
      const [before, after] = [was(i), is(i)];
      const follower = this.followerOf(i);
      if (after && (before?.s !== after.s || before.fret !== after.fret || before.finger !== after.finger))
        return undefined;
      if (!after && before && follower < 0) sum += 3;
    }
    const ownOf = (option: Option, onset: number | undefined): number[] =>
      option.held.filter((h) => this.notes[h.note]?.onset === onset).map((h) => h.s);
    for (const h of to.held) {
      const joined = this.notes[h.note]?.joinedTo;
      if (joined === undefined || this.notes[h.note]?.onset !== this.onsets[m]) continue;
      const source = was(this.notes.findIndex((n) => n.id === joined));
      if (source?.s !== h.s) return undefined;
    }
    if (from.at !== to.at) {
      const seconds = ((this.onsets[m] ?? 0) - (this.onsets[m - 1] ?? 0)) * this.hand.secondsPerQuarter;
      sum += (0.01 * Math.abs(this.x(from.at) - this.x(to.at)) * 0.25) / Math.max(0.06, seconds);
      if (!this.hand.slide) sum += from.held.some((h) => h.fret > 0) ? 1 : 0.1;
    }
    if (!this.hand.slide)
      for (let f = 1; f <= 5; f++) {
        const now = to.held.filter((h) => h.finger === f);
        const old = from.held.filter((h) => h.finger === f);
        if (now.length === 0) continue;
        if (old.length === 0) sum += 0.3;
        else if (!now.some((h) => old.some((o) => o.s === h.s && o.fret === h.fret))) sum += 0.7;
      }
    const [a, b] = [ownOf(from, this.onsets[m - 1]), ownOf(to, this.onsets[m])];
    if (a.length > 0 && b.length > 0)
      sum += 0.15 * Math.max(0, Math.min(...b) - Math.max(...a), Math.min(...a) - Math.max(...b));
    return sum;
  }

  /** Whether an option drops a note that a join holds although what is joined to it will sound; told by the whole way. */
  private brokenJoin(way: readonly Option[]): boolean {
    return this.notes.some((n, i) => {
      const f = this.followerOf(i);
      const follower = this.notes[f];
      if (!follower || !way.some((option) => option.held.some((h) => h.note === f))) return false;
      return way.some((option, m) => {
        const now = this.onsets[m] ?? 0;
        return now >= n.onset && now < follower.onset && !option.held.some((h) => h.note === i);
      });
    });
  }

  /** Least notes left out, then what is lost of voices and pitch classes, then the least sum. */
  least(): { readonly loss: readonly [number, number, number]; readonly cost: number } {
    let best: { loss: readonly [number, number, number]; cost: number } | undefined;
    const way: Option[] = [];
    const go = (m: number, sum: number, out: number): void => {
      if (best && (out > best.loss[0] || (out === best.loss[0] && sum > best.cost && isZero(best.loss))))
        return;
      if (m === this.onsets.length) {
        if (this.brokenJoin(way)) return;
        const loss = this.lossOf(way);
        const order = best ? compare(loss, best.loss) || sum - best.cost : -1;
        if (order < 0) best = { loss, cost: sum };
        return;
      }
      const before = way[m - 1];
      for (const option of this.options[m] ?? []) {
        const move = before ? this.move(m, before, option) : 0;
        if (move === undefined) continue;
        way.push(option);
        go(m + 1, sum + move + option.cost, out + option.leftOut.length);
        way.pop();
      }
    };
    go(0, 0, 0);
    if (!best) throw new Error('Leaving every note out is always an answer.');
    return best;
  }

  /**
   * Group by group the easiest hardest step, then the least sum; only where nothing has to be left out. Steps at the
   * least that any two options there allow are set aside.
   */
  easiest(groups: readonly number[]): { readonly hardest: readonly number[]; readonly cost: number } {
    const whole = this.options.map((all) => all.filter((option) => option.leftOut.length === 0));
    const floor = whole.map((all, m) => {
      const steps = all.map((to) =>
        m === 0
          ? to.cost
          : Math.min(
              Infinity,
              ...(whole[m - 1] ?? []).map((from) => (this.move(m, from, to) ?? Infinity) + to.cost),
            ),
      );
      return Math.min(...steps);
    });
    const names = [...new Set(groups)];
    let best: { hardest: readonly number[]; cost: number } | undefined;
    const go = (m: number, before: Option | undefined, hardest: readonly number[], sum: number): void => {
      const worse = best ? prefix(hardest, best.hardest, names.indexOf(groups[m - 1] ?? 0) + 1) : -1;
      if (worse > 0 || (best && worse === 0 && m === this.onsets.length && sum >= best.cost)) return;
      if (m === this.onsets.length) {
        best = { hardest, cost: sum };
        return;
      }
      for (const option of whole[m] ?? []) {
        const move = before ? this.move(m, before, option) : 0;
        if (move === undefined) continue;
        const step = move + option.cost;
        const counted = step > (floor[m] ?? 0) + 1e-7 ? step : 0;
        const which = names.indexOf(groups[m] ?? 0);
        const next = hardest.map((one, i) => (i === which ? Math.max(one, counted) : one));
        go(m + 1, option, next, sum + step);
      }
    };
    go(
      0,
      undefined,
      names.map(() => 0),
      0,
    );
    if (!best) throw new Error('Every note has a place.');
    return best;
  }

  private lossOf(way: readonly Option[]): readonly [number, number, number] {
    let [count, outer, classes] = [0, 0, 0];
    way.forEach((option, m) => {
      const own = this.notes.filter((n) => n.onset === this.onsets[m]);
      const kept = own.filter((n) => !option.leftOut.some((i) => this.notes[i] === n)).map((n) => n.midi);
      const all = own.map((n) => n.midi);
      count += own.length - kept.length;
      outer += [Math.min(...all), Math.max(...all)].filter((midi) => !kept.includes(midi)).length;
      classes += new Set(all.map((n) => n % 12).filter((one) => !kept.some((n) => n % 12 === one))).size;
    });
    return [count, outer, classes];
  }
}

function isZero(loss: readonly [number, number, number]): boolean {
  return loss[0] === 0;
}

function compare(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return (a[i] ?? 0) - (b[i] ?? 0);
  return 0;
}

/** Compares the first `count` entries, equal within rounding. */
function prefix(a: readonly number[], b: readonly number[], count: number): number {
  for (let i = 0; i < count; i++) {
    const difference = (a[i] ?? 0) - (b[i] ?? 0);
    if (Math.abs(difference) > 1e-7) return difference;
  }
  return 0;
}
