import { formatNoteName, midiOf, parseNoteName, type NoteName } from './noteName';
import { failed, ok, type Result } from './result';

/** What a voice sings at ease, as MIDI numbers. */
export interface VoiceRange {
  /** `alto`, or the two notes. */
  readonly name: string;
  readonly low: NoteName;
  readonly high: NoteName;
}

/**
 * The usual ranges of the six voices of a mixed choir, without the notes that only some of them reach: a choir's own
 * published table for newcomers (Bristol A Cappella, “Range check”, bristolacappella.co.uk). Other tables differ by some
 * half steps either way, and soloists by more: a singer's own lowest and highest note tell better.
 */
const VOICES: readonly (readonly [string, readonly string[], string, string])[] = [
  ['soprano', [], 'C4', 'A5'],
  ['mezzo-soprano', ['mezzo', 'mezzo soprano'], 'A3', 'F5'],
  ['alto', ['contralto'], 'F3', 'D5'],
  ['tenor', [], 'D3', 'A4'],
  ['baritone', [], 'B2', 'F4'],
  ['bass', [], 'G2', 'D4'],
];

/** The voices that have a name, high to low. */
export const VOICE_RANGES: readonly VoiceRange[] = VOICES.map(([name, , low, high]) => ({
  name,
  low: noteOf(low),
  high: noteOf(high),
}));

/**
 * The range of a voice by its name, in any case.
 * Error: `voice`, which lists the names.
 * @example readVoice('Alto') // { name: 'alto', low: F3, high: D5 }
 */
export function readVoice(text: string): Result<VoiceRange> {
  const wanted = text.trim().toLowerCase();
  const at = VOICES.findIndex(([name, aliases]) => name === wanted || aliases.includes(wanted));
  const voice = VOICE_RANGES[at];
  if (voice) return ok(voice);
  const names = VOICES.map(([name]) => name);
  return failed(
    'voice',
    `“${text.trim()}” is no voice with a usual range: ${names.slice(0, -1).join(', ')} or ${names.at(-1) ?? ''}; or give the lowest and highest note, such as A3-D5.`,
    0,
    text.length,
  );
}

/** The narrowest range that is taken for a voice: less than a fifth is a slip of the pen. An engineering value. */
const NARROWEST = 7;

/**
 * Reads a lowest and a highest note: `A3-D5`, `A3 to D5`, `A3 D5`. The lower one may stand second.
 * Errors: `voice-range` for anything else, `voice-narrow` for less than a fifth.
 * @example readVoiceRange('A3-D5') // { name: 'A3–D5', low: A3, high: D5 }
 */
export function readVoiceRange(text: string): Result<VoiceRange> {
  const match = /^\s*([A-G][#b♯♭]?\d)\s*(?:[-–—,/]|to|\s)\s*([A-G][#b♯♭]?\d)\s*$/i.exec(text);
  const first = parseNoteName(match?.[1] ?? '');
  const second = parseNoteName(match?.[2] ?? '');
  if (!first || !second)
    return failed(
      'voice-range',
      'Write the lowest and the highest note with their octaves, such as A3-D5; C4 is middle C.',
      0,
      text.length,
    );
  const [low, high] = midiOf(first) <= midiOf(second) ? [first, second] : [second, first];
  if (midiOf(high) - midiOf(low) < NARROWEST)
    return failed(
      'voice-narrow',
      `From ${formatNoteName(low)} to ${formatNoteName(high)} is less than a fifth, too little for a tune; write the lowest and the highest note that the singer is at ease with.`,
      0,
      text.length,
    );
  return ok({ name: `${formatNoteName(low)}–${formatNoteName(high)}`, low, high });
}

function noteOf(text: string): NoteName {
  const note = parseNoteName(text);
  if (!note) throw new Error(`${text} is no note.`);
  return note;
}
