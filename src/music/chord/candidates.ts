import { readingsOf, upperReading, type Reading } from './typeTable';

/** Where the bass of a named chord lies: at the root, at another tone of it, or outside it. */
export type BassPlace = 'root' | 'inversion' | 'unsaid' | 'foreign' | 'no root';

/** A reading of a sounding set under one root, with its cost: the lower, the likelier a player says it. */
export interface Candidate {
  readonly root: number;
  readonly reading: Reading;
  readonly bass: BassPlace;
  readonly cost: number;
}

/** How a key takes part where two names cost the same: 2 for its tonic, 1 for a note of it, else 0. */
export type RootPreference = (root: number) => number;

/** A tone of the chord in the bass: between a root position of one everyday type and the next. */
const INVERSION = 4;
/** A foreign bass: dearer than a seventh in root position, cheaper than that seventh's inversion. */
const SLASH = 6;
const OTHER_THIRD = 2;
/** A bass that only sounds lowest, in a re-entrant tuning. */
const WEAK = 1;
const WEAK_SLASH = 3;
const NO_ROOT = 40;
const NO_ROOT_FROM = 4;
/** A chord whose root is only thought is worth a word when it is an everyday one: ranks to the plain ninths. */
const NO_ROOT_MOST = 6;
/** Names this much dearer than the first are not shown, and a first one dearer than MAX is none. */
const CUT = 8;
const MAX = 15;
const SHOWN = 4;

/** Turns a set so that `root` becomes bit 0. */
export function relativeTo(mask: number, root: number): number {
  return ((mask >> root) | (mask << (12 - root))) & 0xfff;
}

/**
 * The likeliest readings of a set of three or more pitch classes, best first, at most four; none when even the
 * first is far-fetched.
 * @param mask bit n is the pitch class n
 * @param bass pitch class of the lowest pitch
 * @param weak whether the bass only sounds lowest in a re-entrant tuning
 */
export function likeliest(mask: number, bass: number, weak: boolean, prefer: RootPreference): Candidate[] {
  const found: Candidate[] = [];
  const upper = mask & ~(1 << bass);
  for (let root = 0; root < 12; root++) {
    if (!(mask & (1 << root))) continue;
    for (const reading of readingsOf(relativeTo(mask, root))) {
      if (root === bass) found.push({ root, reading, bass: 'root', cost: reading.cost });
      else if (!weak) found.push({ root, reading, bass: 'inversion', cost: reading.cost + INVERSION });
      else {
        found.push({ root, reading, bass: 'unsaid', cost: reading.cost + WEAK });
        found.push({ root, reading, bass: 'inversion', cost: reading.cost + WEAK + INVERSION });
      }
    }
    if (root === bass) continue;
    const reading = upperReading(relativeTo(upper, root));
    if (!reading) continue;
    const cost =
      reading.cost + SLASH + (weak ? WEAK_SLASH : 0) + otherThird(reading, (bass - root + 12) % 12);
    found.push({ root, reading, bass: 'foreign', cost });
  }
  const order = (a: Candidate, b: Candidate) =>
    a.cost - b.cost ||
    prefer(b.root) - prefer(a.root) ||
    Number(b.root === bass) - Number(a.root === bass) ||
    length(a) - length(b) ||
    ((a.root - bass + 12) % 12) - ((b.root - bass + 12) % 12);
  found.sort(order);
  const first = found[0];
  if (first && first.cost > MAX) found.length = 0;
  const shown = found.filter(({ cost }, i) => i < SHOWN && cost <= (first?.cost ?? 0) + CUT);
  if (shown.length < SHOWN && (first?.cost ?? Infinity) >= NO_ROOT_FROM) {
    const [rootless] = withoutRoot(mask).sort(order);
    if (rootless && rootless.cost <= NO_ROOT + NO_ROOT_MOST) shown.push(rootless);
  }
  return shown;
}

/** Length of what is printed after the root. */
function length({ reading, bass }: Candidate): number {
  return reading.type.symbol.length + (bass === 'inversion' || bass === 'foreign' ? 2 : 0);
}

/** A major chord over its minor third, or the other way round. */
function otherThird({ type }: Reading, interval: number): number {
  const [first] = type.degrees;
  return first?.number === 3 && interval === 7 - first.halfSteps ? OTHER_THIRD : 0;
}

function withoutRoot(mask: number): Candidate[] {
  const found: Candidate[] = [];
  for (let root = 0; root < 12; root++) {
    if (mask & (1 << root)) continue;
    for (const reading of readingsOf(relativeTo(mask, root) | 1)) {
      found.push({ root, reading, bass: 'no root', cost: reading.cost + NO_ROOT });
    }
  }
  return found;
}
