import { readChordName } from '../../music/chord/readChordName';
import { transposeWrittenChord } from '../../music/chord/transposeChord';
import { formatChord, writtenToneName, type WrittenChord } from '../../music/chord/writtenChord';
import { formatPitchName } from '../../music/noteName';
import type { Header } from '../../notation/header';
import { capoShift, soundingSpelling } from '../../notation/headerViews';
import { wantedChord, type WantedChord } from '../../playing/shapes/wanted';
import { eitherOf } from '../../instrument/nameMatching';
import type { ServiceError } from '../serviceApi';

/** A chord that a player asked for, under the capo in force. */
export interface AskedChord {
  readonly written: WrittenChord;
  /** In sounding pitch classes. */
  readonly wanted: WantedChord;
  /** In plain symbols, as played. */
  readonly name: string;
  /** What it sounds as under a full capo; null without one. */
  readonly soundsAs: string | null;
  /** As played, from the root up; a foreign bass last. */
  readonly tones: readonly string[];
}

/** Reads a chord's name, as played; an error says what cannot be read, or that nothing should sound. */
export function askedChord(text: string, header: Header): AskedChord | ServiceError {
  if (text.trim() === '') return { error: 'No chord is given: write one, such as G/B or Dsus4.' };
  const read = readChordName(text);
  if (!read.ok) {
    const { message, suggestions } = read.error;
    const fresh = suggestions.filter((one) => !message.includes(one));
    return { error: fresh.length === 0 ? message : `${message} Did you mean ${eitherOf(fresh)}?` };
  }
  const written = read.value;
  const shift = capoShift(header);
  const wanted = wantedChord(written, shift);
  if (!wanted || !written.root)
    return { error: `${written.text} asks for silence, so it has no shape; write a chord, such as G/B.` };
  const name = formatChord(written);
  const { root, bass } = written;
  const tones = [
    root,
    ...written.tones.map(({ degree }) => writtenToneName(root, degree)),
    ...(bass ? [bass] : []),
  ];
  return {
    written,
    wanted,
    name,
    soundsAs: shift === 0 ? null : transposeWrittenChord(name, shift, soundingSpelling(header).key),
    tones: [...new Set(tones.map(formatPitchName))],
  };
}
