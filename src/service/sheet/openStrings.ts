import { formatNoteList } from '../../instrument/noteList';
import { stringNumber, type Tuning } from '../../instrument/tuning';
import { stepsToNext } from '../../instrument/tuningFrets';
import type { ChordName, ChordNaming } from '../../music/chord/nameChord';
import { frequencyOf } from '../../music/frequency';
import { degreeInKey } from '../../music/key';
import { formatNoteName, formatPitchName } from '../../music/noteName';
import { listed } from '../hover/text';
import { openStringsOf } from '../tuningAnswer';
import type { SheetOpenStrings, SheetString } from './sheetAnswer';

/** What the open strings make: an everyday chord, or none. */
export function openStringsAnswer(tuning: Tuning): SheetOpenStrings {
  const naming = openStringsOf(tuning);
  const [first, ...others] = isChord(naming) ? naming.names : [];
  const notes = naming.notes.map(formatPitchName);
  const alternatives = others.map(({ name }) => name);
  const also = alternatives.length > 0 ? `; also ${listed(alternatives)}` : '';
  const said = first && first.words !== '' ? ` (${first.words})` : '';
  return {
    chord: first?.name ?? null,
    alternatives,
    notes,
    words: first
      ? `The open strings make ${first.name}${said}${also}`
      : `The open strings make no everyday chord: ${notes.join(' ')}`,
  };
}

/** Whether what sounds is told as a chord, and not as a note, an interval or nothing. */
export function isChord({ kind }: ChordNaming): boolean {
  return kind === 'chord' || kind === 'power';
}

/** The chord of the open strings, the likeliest name; undefined where they make none. */
export function openChord(tuning: Tuning): ChordName | undefined {
  const naming = openStringsOf(tuning);
  return isChord(naming) ? naming.names[0] : undefined;
}

/** The strings one by one, low string first, without a capo. */
export function stringRows(tuning: Tuning, referencePitch: number): readonly SheetString[] {
  const root = openChord(tuning)?.root;
  const next = stepsToNext(tuning);
  return tuning.strings.map((string, index) => ({
    number: stringNumber(tuning, index),
    note: formatNoteList([string]),
    pitches: string.pitches.map(({ name, midi }) => ({
      note: formatNoteName(name),
      midi,
      frequency: Math.round(frequencyOf(midi, referencePitch) * 100) / 100,
    })),
    role: root ? degreeInKey({ tonic: root, mode: 'major' }, string.pitches[0].midi).words : null,
    firstFret: string.firstFret,
    toNext: next[index] ?? null,
  }));
}
