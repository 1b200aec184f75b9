import { Chord, Note } from 'tonal';
import { nameChord, nameChordAfresh, type ChordContext } from '../../src/music/chord/nameChord';
import { likeliest } from '../../src/music/chord/candidates';
import { compareChordName } from '../../src/music/chord/compareChord';
import { readChordName } from '../../src/music/chord/readChordName';
import { fretsOf, GRIPS } from '../domain/music/chord/shapes';
import { midiOf, parseNoteName } from '../../src/music/noteName';

/** Nanoseconds a call over all inputs, the median of some rounds. */
function nanoseconds<T>(inputs: readonly T[], rounds: number, call: (input: T) => unknown): number {
  const times: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const start = performance.now();
    for (const input of inputs) call(input);
    times.push(((performance.now() - start) * 1e6) / inputs.length);
  }
  times.sort((a, b) => a - b);
  return times[Math.floor(rounds / 2)] ?? NaN;
}

/**
 * Prints what naming costs with and without memo, against tonal's Chord.detect on the same grips in the same run.
 * Aim (facts of this project): with memo 300 times, its ranking without memo 8 times as fast as
 * Chord.detect.
 */
export async function benchChordNaming(): Promise<void> {
  const grips = GRIPS.map(({ tuning, shape }) => {
    const open = tuning.split(' ').map((text) => {
      const note = parseNoteName(text);
      return note ? midiOf(note) : NaN;
    });
    return fretsOf(shape).flatMap((fret, i) => (fret === undefined ? [] : [(open[i] ?? NaN) + fret]));
  });
  const texts = grips.map((midis) => [...midis].sort((a, b) => a - b).map((midi) => Note.fromMidi(midi)));
  const context: ChordContext = { tuningNames: [] };

  const begin = performance.now();
  nameChord(grips[0] ?? [], context);
  const firstName = performance.now() - begin;

  const detect = nanoseconds(texts, 15, (notes) => Chord.detect(notes));
  const sets = grips.map((midis) => midis.reduce((mask, midi) => mask | (1 << (midi % 12)), 0));
  const ranking = nanoseconds(sets, 15, (mask) => likeliest(mask, 31 - Math.clz32(mask), false, () => 0));
  const plain = nanoseconds(grips, 15, (midis) => nameChordAfresh(midis, context));
  nanoseconds(grips, 50, (midis) => nameChord(midis, context));
  const memo = nanoseconds(grips, 201, (midis) => nameChord(midis, context));
  const names = grips.flatMap((midis) =>
    nameChord(midis, context)
      .names.slice(0, 1)
      .map(({ name }) => ({ name, midis })),
  );
  const read = nanoseconds(names, 15, ({ name }) => readChordName(name));
  const compared = nanoseconds(names, 15, ({ name, midis }) => compareChordName(name, midis, context));

  const line = (what: string, ns: number, remark = '') =>
    console.log(`${what.padEnd(34)}${ns.toFixed(0).padStart(8)} ns ${remark}`);
  console.log(`chord naming, ${grips.length} grips; first name after ${firstName.toFixed(2)} ms`);
  line('tonal Chord.detect', detect);
  line('ranking alone, no memo', ranking, `${(detect / ranking).toFixed(1)} times as fast`);
  line('nameChord without memo', plain, `${(detect / plain).toFixed(1)} times as fast`);
  line('nameChord with memo', memo, `${(detect / memo).toFixed(0)} times as fast`);
  line('readChordName', read);
  line('read and compare', compared);
}

export default benchChordNaming;
