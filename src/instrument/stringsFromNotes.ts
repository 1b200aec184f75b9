import { midiOf } from '../music/noteName';
import type { Instrument } from './instrument';
import { readNoteList, type WrittenPitch, type WrittenString } from './noteList';
import { inferOctaves } from './octaves';
import { cleanMidi } from './retune';
import type { OpenPitch, TuningString } from './tuning';

/**
 * The strings that a list of notes gives on an instrument: octaves left out are worked out, a course gets its usual
 * partner where one note is written, and each string begins at the fret where the instrument's does.
 */
export function stringsFromNotes(
  written: readonly WrittenString[],
  instrument: Instrument,
  usual: readonly TuningString[],
): readonly TuningString[] {
  const octaves = inferOctaves(written, usual);
  const offset = instrument.firstFrets.length - written.length;
  return written.map((string, index) => {
    const [first, second] = string.pitches;
    const pitch = openPitch(first, octaves[index] ?? 0);
    const partner = instrument.partners[Math.max(index + offset, 0)];
    const firstFret = instrument.firstFrets[index + offset] ?? 0;
    const octaveInferred = first.octave === undefined;
    if (second !== undefined) {
      return { pitches: [pitch, writtenPartner(pitch, second, partner)], firstFret, octaveInferred };
    }
    return {
      pitches: partner === undefined ? [pitch] : [pitch, usualPartner(pitch, partner)],
      firstFret,
      octaveInferred,
    };
  });
}

const USUAL = new WeakMap<Instrument, readonly TuningString[]>();

/** The strings of the instrument's usual tuning, low string first; the same record each time. */
export function usualStrings(instrument: Instrument): readonly TuningString[] {
  let strings = USUAL.get(instrument);
  if (strings === undefined) {
    const list = readNoteList(instrument.usualTuning, 0, instrument.firstFrets.length);
    strings = stringsFromNotes(list.strings, instrument, []);
    USUAL.set(instrument, strings);
  }
  return strings;
}

function openPitch(written: WrittenPitch, octave: number): OpenPitch {
  const name = { ...written.name, octave };
  return { name, midi: cleanMidi(midiOf(name) + written.cents / 100) };
}

/** Partners are unisons and octaves: the same letter, `halfSteps` / 12 octaves up. */
function usualPartner(pitch: OpenPitch, halfSteps: number): OpenPitch {
  const name = { ...pitch.name, octave: pitch.name.octave + Math.round(halfSteps / 12) };
  return { name, midi: cleanMidi(pitch.midi + halfSteps) };
}

/** A partner without an octave is the usual one if that is its note, else the next such note from the first one up. */
function writtenPartner(first: OpenPitch, written: WrittenPitch, usual: number | undefined): OpenPitch {
  if (written.octave !== undefined) return openPitch(written, written.octave);
  const firstMidi = midiOf(first.name);
  const inLowest = midiOf({ ...written.name, octave: 0 });
  const wanted = firstMidi + (usual ?? 0);
  const isUsual = (wanted - inLowest) % 12 === 0;
  return openPitch(
    written,
    isUsual ? (wanted - inLowest) / 12 : Math.max(0, Math.ceil((firstMidi - inLowest) / 12)),
  );
}
