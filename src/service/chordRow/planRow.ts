import { add, compare, type Fraction } from '../../music/fraction';
import type { BarReading, PlacedMark } from '../../notation/reading';
import { beatsBetween, namedSpans } from './namedSpans';
import { soundsBetween, verdictBetween, type Ear } from './spanName';

/** A name of the row as it is to be. */
export interface PlannedName {
  readonly time: Fraction;
  readonly name: string;
  /** The player's own mark that it is, or that it takes the place of. */
  readonly mark: PlacedMark | undefined;
}

/** What a row is to say, and what a player should know of it. */
export interface RowPlan {
  readonly names: readonly PlannedName[];
  /** Own names that disagree with what sounds and stay. */
  readonly disagreeing: readonly PlacedMark[];
  /** Indices of bars in which something sounds that has no everyday name. */
  readonly unnamed: readonly number[];
}

/**
 * Plans a system's row of chords. Own names stay where they agree with what sounds, from their mark to the next or to
 * where something else sounds; there, and where no name is, the likeliest one is put.
 */
export function planRow(ear: Ear, marks: readonly PlacedMark[], replace: boolean): RowPlan {
  const names: PlannedName[] = [];
  const disagreeing: PlacedMark[] = [];
  const unnamed = new Set<number>();

  const put = (index: number, bar: BarReading, from: Fraction, to: Fraction, mark?: PlacedMark): void => {
    let own = mark;
    const spans = namedSpans(ear, bar, from, to);
    for (const span of spans) {
      // A bar with changes is named from its start, so that it can be read by itself.
      const opens = spans.length > 1 && span.from === bar.onset;
      const holding = names.at(-1)?.name;
      if (span.name === undefined) {
        const fits = holding !== undefined && verdictBetween(ear, holding, span.from, span.to) === 'agrees';
        if (!fits && soundsBetween(ear, span.from, span.to)) unnamed.add(index);
      } else if (span.name !== holding || own || opens) {
        names.push({ time: span.from, name: span.name, mark: own });
        own = undefined;
      }
    }
  };

  ear.system.reading.bars.forEach((bar, index) => {
    const end = add(bar.onset, bar.length);
    const inBar = marks.filter(({ onset }) => compare(onset, bar.onset) >= 0 && compare(onset, end) < 0);
    const first = inBar[0]?.onset ?? end;
    if (compare(bar.onset, first) < 0 && !goesOn(ear, names.at(-1), bar.onset, first))
      put(index, bar, bar.onset, first);
    inBar.forEach((mark, i) => {
      const to = inBar[i + 1]?.onset ?? end;
      const until = agreesUntil(ear, bar, mark, to);
      if (until) {
        names.push({ time: mark.onset, name: mark.text, mark });
        if (compare(until, to) < 0) put(index, bar, until, to);
        return;
      }
      const spans = replace ? namedSpans(ear, bar, mark.onset, to) : [];
      // Only with a name for its own column: a mark is not taken away.
      if (spans[0]?.name !== undefined) {
        put(index, bar, mark.onset, to, mark);
        return;
      }
      disagreeing.push(mark);
      names.push({ time: mark.onset, name: mark.text, mark });
    });
  });
  return { names, disagreeing, unnamed: [...unnamed] };
}

/** Whether the name that holds when a bar begins holds for more of it. */
function goesOn(ear: Ear, holding: PlannedName | undefined, from: Fraction, to: Fraction): boolean {
  if (!holding?.mark) return false;
  const verdict = verdictBetween(ear, holding.name, from, to);
  return verdict === 'agrees' || verdict === 'omits';
}

/**
 * Until when a player's own name is right: to the end of its stretch, or to a beat from which something else sounds.
 * A name that cannot be read is left to its own check. Undefined where it is not right from its column on.
 */
function agreesUntil(ear: Ear, bar: BarReading, mark: PlacedMark, to: Fraction): Fraction | undefined {
  const verdict = (from: Fraction, until: Fraction): ReturnType<typeof verdictBetween> =>
    verdictBetween(ear, mark.text, from, until);
  const whole = verdict(mark.onset, to);
  if (whole !== 'disagrees' && whole !== 'adds') return to;
  const beats = beatsBetween(ear, bar, mark.onset, to).slice(1, -1);
  const change = beats.findLast(
    (beat) => verdict(mark.onset, beat) === 'agrees' && verdict(beat, to) === 'disagrees',
  );
  return change ?? (whole === 'adds' ? to : undefined);
}
