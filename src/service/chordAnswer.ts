import { GUITAR } from '../instrument/instruments';
import { readTuning } from '../instrument/tuningValue';
import { nameChord, type ChordContext } from '../music/chord/nameChord';
import { readKey } from '../music/key';
import { midiOf, parseNoteName } from '../music/noteName';
import { tuningContext } from '../notation/chordContext';
import type { Settings } from './records';
import type { ChordAnswer, ServiceError } from './serviceApi';

/**
 * Names for notes that sound together, given low string first, such as `D2 A2 D3`; the likeliest first. A key and a
 * tuning (of a guitar) decide spelling and bass.
 */
export function chord(
  notes: readonly string[],
  key: string | undefined,
  tuning: string | undefined,
  settings: Settings,
): ChordAnswer | ServiceError {
  const midis: number[] = [];
  for (const text of notes) {
    const note = parseNoteName(text.trim());
    if (!note) return { error: noNote(text) };
    midis.push(midiOf(note));
  }
  if (midis.length === 0) return { error: 'Write the sounding notes, low string first, such as D2 A2 D3.' };
  const context = contextOf(key, tuning, settings);
  if ('error' in context) return context;
  const naming = nameChord(midis, context);
  return {
    kind: naming.kind,
    names: naming.names.map(({ name, tones, omitted }) => ({ name, tones, omitted })),
  };
}

function noNote(text: string): string {
  return `“${text}” is no note with an octave: write a letter A–G, # or b where needed, and the octave, such as F#3.`;
}

function contextOf(
  key: string | undefined,
  tuning: string | undefined,
  settings: Settings,
): ChordContext | ServiceError {
  const readTheKey = key === undefined ? undefined : readKey(key);
  if (readTheKey && !readTheKey.ok) return { error: readTheKey.error.message };
  const options = { instrument: GUITAR, userTunings: settings.tunings };
  const readTheTuning = tuning === undefined ? undefined : readTuning(tuning, options);
  if (readTheTuning && !readTheTuning.ok) return { error: readTheTuning.error.message };
  const base = readTheTuning ? tuningContext(readTheTuning.value) : {};
  return readTheKey ? { ...base, key: readTheKey.value } : base;
}
