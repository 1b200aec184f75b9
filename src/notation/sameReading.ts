import { equal, type Fraction } from '../music/fraction';
import type { NoteReading, PlacedMark, SystemReading, Technique } from './reading';

/**
 * Whether two readings of a system say the same: every note on its string and fret with its pitches, techniques, onset
 * and end, every stop, every bar with its signs and its length (exact fractions of quarter notes), every repeat, and
 * every mark of every row with its time. Where things stand on the page does not count. What holds between the two is
 * what a formatter must never change.
 * @example sameReading(new Document('G|0-|').systems[0].reading, new Document('G |0-|').systems[0].reading) // true
 */
export function sameReading(one: SystemReading, other: SystemReading): boolean {
  return (
    sameSound(one, other) &&
    one.timing === other.timing &&
    inPairs(one.rows, other.rows, (a, b) => a.row === b.row && inPairs(a.marks, b.marks, sameMark))
  );
}

/**
 * Whether two readings of a system sound the same at the same times, whatever the rows above and between them say.
 * @example sameSound(new Document('G|0-|').systems[0].reading, new Document('G|2-|').systems[0].reading) // false
 */
export function sameSound(one: SystemReading, other: SystemReading): boolean {
  return (
    equal(one.length, other.length) &&
    inPairs(one.notes, other.notes, sameNote) &&
    inPairs(one.stops, other.stops, (a, b) => a.string === b.string && equal(a.onset, b.onset)) &&
    inPairs(
      one.bars,
      other.bars,
      (a, b) =>
        equal(a.onset, b.onset) &&
        equal(a.length, b.length) &&
        a.pickup === b.pickup &&
        sameSign(a.openSign, b.openSign) &&
        sameSign(a.closeSign, b.closeSign),
    ) &&
    inPairs(
      one.repeats,
      other.repeats,
      (a, b) => a.firstBar === b.firstBar && a.lastBar === b.lastBar && a.times === b.times,
    )
  );
}

/** The last bar of a system may go without its sign, which says no more than that it ends there. */
function sameSign(a: string, b: string): boolean {
  return (a === '' ? '|' : a) === (b === '' ? '|' : b);
}

function sameNote(a: NoteReading, b: NoteReading): boolean {
  return (
    a.kind === b.kind &&
    a.string === b.string &&
    a.fret === b.fret &&
    a.touched === b.touched &&
    a.ghost === b.ghost &&
    a.bar === b.bar &&
    a.joinedFrom === b.joinedFrom &&
    equal(a.onset, b.onset) &&
    sameTime(a.ends, b.ends) &&
    inPairs(a.pitches, b.pitches, (x, y) => x.midi === y.midi) &&
    inPairs(a.techniques, b.techniques, sameTechnique)
  );
}

function sameTechnique(a: Technique, b: Technique): boolean {
  return (
    a.kind === b.kind &&
    a.sign === b.sign &&
    a.to === b.to &&
    a.toFret === b.toFret &&
    sameTime(a.onset, b.onset)
  );
}

function sameMark(a: PlacedMark, b: PlacedMark): boolean {
  return a.text === b.text && equal(a.onset, b.onset);
}

function sameTime(a: Fraction | undefined, b: Fraction | undefined): boolean {
  return a === undefined || b === undefined ? a === b : equal(a, b);
}

function inPairs<T>(one: readonly T[], other: readonly T[], same: (a: T, b: T) => boolean): boolean {
  if (one.length !== other.length) return false;
  return one.every((item, i) => {
    const match = other[i];
    return match !== undefined && same(item, match);
  });
}
