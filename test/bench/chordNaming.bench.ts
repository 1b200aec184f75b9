import { Chord, Note } from 'tonal';
import { nameChord, nameChordAfresh, type ChordContext } from '../../src/music/chord/nameChord';
import { likeliest } from '../../src/music/chord/candidates';
import { compareChordName } from '../../src/music/chord/compareChord';
import { readChordName } from '../../src/music/chord/readChordName';
import { fretsOf, GRIPS } from '../domain/music/chord/shapes';
import { median, ratios, RUNS, timed, type Row } from './rows';
import { midiOf, parseNoteName } from '../../src/music/noteName';

/** Rounds of a run; the median round counts. */
const ROUNDS = 11;
/** So short that more rounds are needed. */
const MEMO_ROUNDS = 101;

/** Nanoseconds a call over all inputs. */
function nanoseconds<T>(inputs: readonly T[], rounds: number, call: (input: T) => unknown): number {
  const all = (): void => {
    for (const input of inputs) call(input);
  };
  return (median(Array.from({ length: rounds }, () => timed(all))) * 1e6) / inputs.length;
}

/**
 * What naming costs with and without memo, against tonal's Chord.detect on the same grips in the same run. Goals: target
 * G10 of this project's facts about chord names, with memo 300 times, without 8 times as fast.
 */
export function run(report: (row: Row) => void): void {
  const grips = GRIPS.map(({ tuning, shape }) => {
    const open = tuning.split(' ').map((text) => {
      const note = parseNoteName(text);
      return note ? midiOf(note) : NaN;
    });
    return fretsOf(shape).flatMap((fret, i) => (fret === undefined ? [] : [(open[i] ?? NaN) + fret]));
  });
  const texts = grips.map((midis) => [...midis].sort((a, b) => a - b).map((midi) => Note.fromMidi(midi)));
  const sets = grips.map((midis) => midis.reduce((mask, midi) => mask | (1 << (midi % 12)), 0));
  const context: ChordContext = { tuningNames: [] };

  const first = timed(() => nameChord(grips[0] ?? [], context));
  const names = grips.flatMap((midis) =>
    nameChord(midis, context)
      .names.slice(0, 1)
      .map(({ name }) => ({ name, midis })),
  );
  const measured = {
    detect: (): number => nanoseconds(texts, ROUNDS, (notes) => Chord.detect(notes)),
    ranking: (): number =>
      nanoseconds(sets, ROUNDS, (mask) => likeliest(mask, 31 - Math.clz32(mask), false, () => 0)),
    afresh: (): number => nanoseconds(grips, ROUNDS, (midis) => nameChordAfresh(midis, context)),
    memo: (): number => nanoseconds(grips, MEMO_ROUNDS, (midis) => nameChord(midis, context)),
    read: (): number => nanoseconds(names, ROUNDS, ({ name }) => readChordName(name)),
    compare: (): number =>
      nanoseconds(names, ROUNDS, ({ name, midis }) => compareChordName(name, midis, context)),
  };
  const times: Record<keyof typeof measured, number[]> = {
    detect: [],
    ranking: [],
    afresh: [],
    memo: [],
    read: [],
    compare: [],
  };
  const parts = ['detect', 'ranking', 'afresh', 'memo', 'read', 'compare'] as const;
  for (const part of parts) measured[part]();
  for (let round = 0; round < RUNS; round++) for (const part of parts) times[part].push(measured[part]());

  const note = `${grips.length} grips; first name after ${first.toFixed(2)} ms`;
  report({ what: 'tonal Chord.detect', runs: times.detect, unit: 'ns', note });
  report({ what: 'naming with memo', runs: times.memo, unit: 'ns' });
  report({ what: 'naming without memo', runs: times.afresh, unit: 'ns' });
  report({ what: 'ranking alone', runs: times.ranking, unit: 'ns', note: 'no spelling, as detect has none' });
  report({ what: 'reading a written name', runs: times.read, unit: 'ns' });
  report({ what: 'reading and comparing it', runs: times.compare, unit: 'ns' });
  const against = (what: string, own: readonly number[], atLeast?: number): void => {
    const row = { what, runs: ratios(times.detect, own), unit: '×' } as const;
    report(atLeast === undefined ? row : { ...row, goal: { atLeast } });
  };
  against('detect / naming with memo', times.memo, 300);
  // What the goal was set for: the facts measure look-up and ranking without memo, and spelling apart.
  against('detect / ranking alone, no memo', times.ranking, 8);
  against('detect / naming without memo, names spelled', times.afresh);
}
