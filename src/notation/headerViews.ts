import { createFingerboard, type Fingerboard } from '../instrument/sounding';
import { readTuning } from '../instrument/tuningValue';
import type { Instrument } from '../instrument/instrument';
import type { Tuning } from '../instrument/tuning';
import { transposeKey } from '../music/key';
import { spellMidi, type SpellingContext } from '../music/spelling';
import type { Header } from './header';
import type { SoundingPitch } from './reading';

/*
 * What follows from a header, worked out once for each record.
 */

function remembered<K extends object, V>(make: (key: K) => V): (key: K) => V {
  const known = new WeakMap<K, V>();
  return (key) => {
    let value = known.get(key);
    if (value === undefined) {
      value = make(key);
      known.set(key, value);
    }
    return value;
  };
}

/** The neck under a header: every way from a written number to a pitch. */
export const fingerboardOf: (header: Header) => Fingerboard = remembered((header) =>
  createFingerboard(header.tuning, header.capo, header.frets),
);

/** A full capo's fret, 0 without one: by how much everything sounds above its name as played. */
export function capoShift(header: Header): number {
  return header.capo && !header.capo.strings ? header.capo.fret : 0;
}

/** How sounding notes are spelled: by the key as it sounds, then by the tuning. */
export const soundingSpelling: (header: Header) => SpellingContext = remembered((header) => {
  const shift = capoShift(header);
  return {
    key: header.key && (shift ? transposeKey(header.key, shift) : header.key),
    tuningNames: shift
      ? []
      : header.tuning.strings.flatMap((string) => string.pitches.map((pitch) => pitch.name)),
  };
});

/**
 * The pitches of a string stopped at a fret, spelled as they sound; shared by all notes there, as they are the same
 * records. For the lists that the fingerboard hands out, which are as many as its frets.
 */
export const stoppedPitches: (header: Header) => (midis: readonly number[]) => readonly SoundingPitch[] =
  remembered((header) => remembered((midis) => spellPitches(midis, header)));

/** Sounding MIDI numbers with their names. */
export function spellPitches(midis: readonly number[], header: Header): readonly SoundingPitch[] {
  const spelling = soundingSpelling(header);
  return midis.map((midi) => ({ midi, name: spellMidi(midi, spelling) }));
}

/** How notes are spelled as played, without the capo. */
export const playedSpelling: (header: Header) => SpellingContext = remembered((header) => ({
  key: header.key,
  tuningNames: header.tuning.strings.flatMap((string) => string.pitches.map((pitch) => pitch.name)),
}));

/** The tuning an instrument usually has. */
export const usualTuning: (instrument: Instrument) => Tuning = remembered((instrument) => {
  const tuning = readTuning(instrument.usualTuning, { instrument });
  if (!tuning.ok)
    throw new Error(`The usual tuning of ${instrument.name} cannot be read: ${tuning.error.message}`);
  return tuning.value;
});
