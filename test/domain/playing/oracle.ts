/**
 * Brute force over every placement and every way of the hand, written from the documented formula alone. It imports
 * nothing of src/playing, so a mistake there is not repeated here.
 */
export interface OracleNote {
  readonly id: number;
  readonly midi: number | undefined;
  readonly moment: number;
  readonly string: number;
  readonly joinedTo: number | undefined;
  readonly stopped: boolean;
}

export interface OracleBoard {
  /** MIDI numbers, low-placed string first; whole numbers. */
  readonly opens: readonly number[];
  /** Frets of the whole neck. */
  readonly frets: number;
  readonly length: number;
  readonly reach: number;
  readonly slide: boolean;
  /** Fret of a full capo, or 0. */
  readonly capo: number;
}

export interface OracleAnswer {
  readonly leftOut: number;
  readonly outerLost: number;
  readonly classesLost: number;
  /** Millimetres. */
  readonly cost: number;
  readonly fretSum: number;
  readonly strangers: number;
}

/** travel, height, stretch, relaxed: as in the table of named constants. */
export interface Weights {
  readonly travel: number;
  readonly height: number;
  readonly stretch: number;
  readonly relaxed: number;
}

type Spot = { readonly s: number; readonly fret: number; readonly stroke: boolean } | undefined;

export function bruteForce(notes: readonly OracleNote[], board: OracleBoard, weights: Weights): OracleAnswer {
  const moments = Math.max(...notes.map((n) => n.moment)) + 1;
  const x = (fret: number): number =>
    Math.round(board.length * (1 - Math.pow(0.5, (fret + board.capo) / 12)) * 1000) / 1000;
  const top = board.frets - board.capo;
  const byId = new Map(notes.map((n, i) => [n.id, i]));
  const spots: Spot[] = [];
  let best: OracleAnswer | undefined;

  const sourceOf = (i: number): number | undefined => {
    const wanted = notes[i]?.joinedTo;
    return wanted === undefined ? undefined : byId.get(wanted);
  };

  const legal = (): boolean => {
    for (let m = 0; m < moments; m++) {
      const sounding: { s: number; fret: number }[] = [];
      notes.forEach((n, i) => {
        const spot = spots[i];
        if (!spot) return;
        const held = notes.some((f, j) => sourceOf(j) === i && spots[j] && n.moment < m && f.moment > m);
        if (n.moment === m || held) sounding.push({ s: spot.s, fret: spot.stroke ? 0 : spot.fret });
      });
      if (new Set(sounding.map((one) => one.s)).size < sounding.length) return false;
      const down = sounding.map((one) => one.fret).filter((fret) => fret > 0);
      if (down.length > 0 && board.slide && Math.min(...down) !== Math.max(...down)) return false;
      if (down.length > 0 && x(Math.max(...down)) - x(Math.min(...down)) > board.reach + 1e-9) return false;
    }
    return notes.every((_, i) => {
      const source = sourceOf(i);
      if (source === undefined || !spots[i]) return true;
      return spots[source] !== undefined && spots[source].s === spots[i].s;
    });
  };

  const loss = (): [number, number, number] => {
    let outer = 0;
    let classes = 0;
    for (let m = 0; m < moments; m++) {
      const here = notes
        .map((n, i) => ({ n, kept: spots[i] !== undefined }))
        .filter(({ n }) => n.moment === m);
      const pitched = here.flatMap(({ n, kept }) => (n.midi === undefined ? [] : [{ midi: n.midi, kept }]));
      const keeps = (test: (midi: number) => boolean): boolean => pitched.some((p) => p.kept && test(p.midi));
      const all = pitched.map((p) => p.midi);
      if (all.length > 0) {
        if (!keeps((midi) => midi === Math.min(...all))) outer++;
        if (!keeps((midi) => midi === Math.max(...all))) outer++;
      }
      for (const one of new Set(all.map((midi) => midi % 12)))
        if (!keeps((midi) => midi % 12 === one)) classes++;
    }
    return [spots.filter((spot) => spot === undefined).length, outer, classes];
  };

  /** The best way of the hand for the spots chosen, tried position by position. */
  const handCost = (limit: number): number => {
    let least = limit;
    const go = (m: number, previous: number | undefined, sum: number): void => {
      if (sum >= least) return;
      if (m === moments) {
        least = sum;
        return;
      }
      const down: number[] = [];
      notes.forEach((n, i) => {
        const spot = spots[i];
        if (!spot || spot.stroke || spot.fret === 0) return;
        const held = notes.some((f, j) => sourceOf(j) === i && spots[j] && n.moment < m && f.moment > m);
        if (n.moment === m || held) down.push(spot.fret);
      });
      const low = down.length > 0 ? Math.min(...down) : top;
      for (let h = board.slide && down.length > 0 ? low : 1; h <= Math.max(1, low); h++) {
        let here = 0;
        if (down.length > 0) {
          const span = x(Math.max(...down)) - x(h);
          if (h !== low && span > board.reach + 1e-9) continue;
          if (!board.slide && span > weights.relaxed) here = weights.stretch * (span - weights.relaxed);
        }
        const travel = previous === undefined ? 0 : weights.travel * Math.abs(x(h) - x(previous));
        go(m + 1, h, sum + here + travel);
      }
    };
    let heights = 0;
    for (const spot of spots)
      if (spot && !spot.stroke && spot.fret > 0) heights += weights.height * (x(spot.fret) - x(0));
    go(0, undefined, heights);
    return least;
  };

  const judge = (): void => {
    if (!legal()) return;
    const [leftOut, outerLost, classesLost] = loss();
    const order = best
      ? leftOut - best.leftOut || outerLost - best.outerLost || classesLost - best.classesLost
      : -1;
    if (order > 0) return;
    // A thousandth above the best still lets equals through to the tie-break; rounding of terms is finer than that.
    const limit = order < 0 || !best ? Infinity : best.cost + 0.0005;
    const cost = handCost(limit);
    if (cost >= limit) return;
    const fretSum = spots.reduce((sum, spot) => sum + (spot?.fret ?? 0), 0);
    const strangers = spots.filter(
      (spot, i) => spot && board.opens.length - spot.s !== notes[i]?.string,
    ).length;
    const found = { leftOut, outerLost, classesLost, cost, fretSum, strangers };
    const equal = order === 0 && best !== undefined && cost > best.cost - 0.0005;
    if (equal && best && (fretSum - best.fretSum || strangers - best.strangers) >= 0) return;
    best = found;
  };

  const choose = (i: number): void => {
    const n = notes[i];
    if (!n) return judge();
    for (let s = 0; s < board.opens.length; s++) {
      const number = board.opens.length - s;
      const fret = n.midi === undefined ? 0 : n.midi - (board.opens[s] ?? NaN) - board.capo;
      if (!(fret >= (n.stopped ? 1 : 0) && fret <= top)) continue;
      if (n.midi === undefined && n.string <= board.opens.length && number !== n.string) continue;
      if (notes.some((other, j) => j < i && other.moment === n.moment && spots[j]?.s === s)) continue;
      spots[i] = { s, fret, stroke: n.midi === undefined };
      choose(i + 1);
    }
    spots[i] = undefined;
    // Leaving out more than the best answer so far cannot win.
    const out = spots.slice(0, i + 1).filter((spot) => spot === undefined).length;
    if (!best || out <= best.leftOut) choose(i + 1);
  };

  choose(0);
  if (!best) throw new Error('Leaving every note out is always an answer.');
  return best;
}
