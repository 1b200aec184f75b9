import { formatNoteName, formatPitchName, midiOf, pitchClassOf, type PitchName } from '../music/noteName';
import { failed, ok, type Failed, type Notice, type Result } from '../music/result';
import { writtenRange } from './frets';
import type { Instrument } from './instrument';
import { eitherOf, nameKey, nearestNames } from './nameMatching';
import { formatNoteList, MOST_STRINGS, readNoteList, type NoteList, type WrittenPitch } from './noteList';
import { retune } from './retune';
import { stringsFromNotes, usualStrings } from './stringsFromNotes';
import type { Tuning, TuningString } from './tuning';
import { nameOfStrings } from './tuningFormat';
import { readSteps, type StepsReading } from './tuningSteps';
import { findTuning, tuningsFor } from './tunings';

export interface TuningOptions {
  readonly instrument: Instrument;
  /** The user's own tunings: name → value. Their names come before the trade's. */
  readonly userTunings?: Readonly<Record<string, string>>;
}

/**
 * Reads the value of `tuning:`, low string to high, in this order:
 * 1. a name of the user's, then of the instrument's;
 * 2. steps from a name: `standard -2 0 0 0 -2 -2`, `open E -2`, `standard down 1`, `standard down 1 step`;
 * 3. notes: `E2 B2 E3 G#3 B3 E4`, `EBEG#BE`, `D-A-D-G-A-D`, with cents (`G#3-14c`) and courses (`E2/E3`).
 * Notes in brackets after a name must agree with it, and then give the spelling. Octaves left out are inferred from
 * the instrument's usual tuning; fewer notes than strings leave the highest-numbered strings off.
 *
 * Errors, with offsets in `text`: `no-tuning`, `unknown-name`, `one-note`, `bad-note`, `bad-cents`,
 * `too-many-strings`, `step-count`, `steps-amount`, `steps-sign`, `steps-whole`, `steps-range`,
 * `steps-without-name`, `disagrees-with-notes`, `out-of-range`, `user-tuning` (the value of the user's tuning cannot
 * be read), `too-long` (over 500 characters), `loop` (user tunings that name each other). Notice: `flat-or-b`.
 * @example readTuning('open E -2', { instrument: GUITAR }) // D2 A2 D3 F#3 A3 D4, named open D
 */
export function readTuning(text: string, options: TuningOptions): Result<Tuning> {
  const read = readValue(text, new Reader(options.instrument, options.userTunings ?? {}, new Set()));
  if (!read.ok) return read;
  const { strings, name } = read.value;
  const known = name ?? nameOfStrings(strings, options.instrument) ?? userNameOf(strings, options);
  return ok({ strings, name: known, text }, read.notices);
}

/** Twice what fourteen courses with cents and their name in front need; more is another text in the wrong place. */
const LONGEST_VALUE = 500;

/** What a value gives before it is known by a name. */
interface Read {
  readonly strings: readonly TuningString[];
  readonly name: string | undefined;
}

/** Everything a reading needs to know. */
class Reader {
  constructor(
    readonly instrument: Instrument,
    readonly userTunings: Readonly<Record<string, string>>,
    /** Keys of the user's tunings that are being read: they cannot be used again on the way. */
    readonly busy: ReadonlySet<string>,
  ) {}

  get usualCount(): number {
    return this.instrument.firstFrets.length;
  }

  /** The user's tuning of that name, in the letters the user gave it. */
  userTuning(text: string): { readonly name: string; readonly value: string } | undefined {
    const key = nameKey(text);
    if (key === '') return undefined;
    const entry = Object.entries(this.userTunings).find(([name]) => nameKey(name) === key);
    return entry && { name: entry[0], value: entry[1] };
  }

  inside(name: string): Reader {
    return new Reader(this.instrument, this.userTunings, new Set([...this.busy, nameKey(name)]));
  }

  names(): readonly string[] {
    return [
      ...Object.keys(this.userTunings),
      ...tuningsFor(this.instrument).flatMap(({ name, aliases }) => [name, ...aliases]),
    ];
  }
}

function readValue(text: string, reader: Reader): Result<Read> {
  const { start, end } = writtenRange(text);
  const value = text.slice(start, end);
  if (value.trim() === '') {
    const suggestions = tuningsFor(reader.instrument)
      .slice(0, 3)
      .map(({ name }) => name);
    return failed(
      'no-tuning',
      'Write a tuning, low string first: a name such as standard, or notes.',
      0,
      text.length,
      suggestions,
    );
  }
  const named = readName(value, start, reader);
  if (named) return named;
  if (value.length > LONGEST_VALUE) {
    const message = `A tuning is a name or a list of up to ${MOST_STRINGS} notes, far shorter than this.`;
    return failed('too-long', message, start, end);
  }
  const bracket = /^(.*?)\s*\(([^()]*)\)$/s.exec(value);
  const head = bracket?.[1] ?? '';
  if (!bracket || head === '') return readUnnamed(value, start, reader);
  const base = readName(head, start, reader) ?? readUnnamed(head, start, reader);
  if (!base.ok) return base;
  const at = start + value.lastIndexOf('(') + 1;
  return agreeWithNotes(head, base.value, bracket[2] ?? '', at);
}

/** A name of the user's or of the instrument's; undefined when the text is neither. */
function readName(value: string, start: number, reader: Reader): Result<Read> | undefined {
  const end = start + value.length;
  const user = reader.userTuning(value);
  const busy = user !== undefined && reader.busy.has(nameKey(user.name));
  if (user !== undefined && !busy) {
    const read = readValue(user.value, reader.inside(user.name));
    if (read.ok) {
      const notices = read.notices.map((notice) => ({ ...notice, start, end }));
      return ok({ strings: read.value.strings, name: user.name }, notices);
    }
    if (read.error.kind === 'loop' || read.error.kind === 'user-tuning') {
      return { ok: false, error: { ...read.error, start, end } };
    }
    const message = `Your tuning “${user.name}” cannot be read: ${read.error.message}`;
    return failed('user-tuning', message, start, end);
  }
  const tuning = findTuning(value, reader.instrument);
  if (tuning) return ok({ strings: tuning.strings, name: tuning.name });
  if (!busy) return undefined;
  const message = `Your tuning “${user.name}” is described by itself. Write its notes in the settings.`;
  return failed('loop', message, start, end);
}

function readUnnamed(value: string, start: number, reader: Reader): Result<Read> {
  const written = readSteps(value);
  return written ? readRetuned(value, start, written, reader) : readNotes(value, start, reader);
}

function readRetuned(value: string, start: number, written: StepsReading, reader: Reader): Result<Read> {
  const { base } = written;
  const end = start + value.length;
  if (base === '') {
    const message = 'Write the tuning that the steps start from, such as standard, before them.';
    return failed('steps-without-name', message, start, end, [`standard ${value}`]);
  }
  const named = readName(base, start, reader);
  if (named && !named.ok) return named;
  if (!written.steps.ok) {
    // `upside down` or `E 2 A 2`: nothing that steps could start from, so that no steps were meant.
    if (!named) return readNotes(value, start, reader);
    return { ok: false, error: moved(written.steps.error, start) };
  }
  const { steps } = written.steps.value;
  const stepsStart = start + written.steps.value.start;
  if (!named) return stepsFromNoName(base, start, steps, reader);
  const { strings } = named.value;
  if (steps.length !== 1 && steps.length !== strings.length) {
    const message = `There are ${steps.length} numbers for ${strings.length} strings. Write one number for each string, low string first, or one with a sign for all.`;
    return failed('step-count', message, stepsStart, end, [padded(base, steps, strings.length)]);
  }
  const retuned = retune(strings, stepsForAll(steps, strings));
  return outOfRange(retuned, stepsStart, end) ?? ok({ strings: retuned, name: undefined }, named.notices);
}

/** The numbers that are written, and zeros for the strings that have none. */
function padded(base: string, steps: readonly number[], count: number): string {
  const numbers = Array.from({ length: count }, (_, index) => steps[index] ?? 0);
  return `${base} ${numbers.join(' ')}`;
}

function stepsForAll(steps: readonly number[], strings: readonly TuningString[]): readonly number[] {
  return strings.length === steps.length ? steps : strings.map(() => steps[0] ?? 0);
}

function stepsFromNoName(
  base: string,
  start: number,
  steps: readonly number[],
  reader: Reader,
): Result<Read> {
  const notes = readNotes(base, start, reader);
  if (!notes.ok) return notes.error.kind === 'one-note' ? unknownName(base, start, reader) : notes;
  const { strings } = notes.value;
  const fits = steps.length === 1 || steps.length === strings.length;
  const message =
    'Steps go with the name of a tuning; where you write notes, write them as they shall sound.';
  const suggestions = fits ? [formatNoteList(retune(strings, stepsForAll(steps, strings)))] : [];
  return failed('steps-without-name', message, start, start + base.length, suggestions);
}

function readNotes(value: string, start: number, reader: Reader): Result<Read> {
  const end = start + value.length;
  const list = readNoteList(value, start, reader.usualCount);
  if (list.problem) {
    if (!looksLikeNotes(value, list)) return unknownName(value, start, reader);
    const near = nearestNames(value, reader.names());
    const suggestions = [...list.problem.suggestions, ...near];
    return { ok: false, error: { ...list.problem, suggestions } };
  }
  const [first, second] = list.strings;
  if (first === undefined) return unknownName(value, start, reader);
  const [pitch] = first.pitches;
  if (second === undefined && pitch.octave === undefined) return oneNote(value, pitch, start, end, reader);
  const strings = stringsFromNotes(list.strings, reader.instrument, usualStrings(reader.instrument));
  const far = outOfRange(strings, start, end);
  if (far) return far;
  const unsure = list.ambiguous && nameOfStrings(strings, reader.instrument) === undefined;
  return ok({ strings, name: undefined }, unsure ? [flatOrB(value, list, start, end)] : []);
}

function flatOrB(value: string, list: NoteList, start: number, end: number): Notice {
  const read = list.strings
    .map(({ pitches }) => pitches.map((pitch) => formatPitchName(pitch.name)).join('/'))
    .join(' ');
  const message = `“${value}” is read as ${read}. A small b may be a flat or the note B: write the notes apart to be sure.`;
  return { kind: 'flat-or-b', message, start, end, suggestions: [read] };
}

function oneNote(value: string, pitch: WrittenPitch, start: number, end: number, reader: Reader): Failed {
  const note = formatPitchName(pitch.name);
  const holds = new RegExp(`(?:^|[^A-Za-z])${note}(?![#b])(?:m|\\d+)?(?![A-Za-z#])`);
  const suggestions = [
    ...Object.keys(reader.userTunings),
    ...tuningsFor(reader.instrument).map(({ name }) => name),
  ].filter((name) => holds.test(name));
  const offer = suggestions.length > 0 ? `, such as ${suggestions.slice(0, 3).join(', ')}` : '';
  return failed(
    'one-note',
    `“${value}” is one note, not a tuning. Write the tuning’s whole name${offer}; for an instrument of one string write the note with its octave.`,
    start,
    end,
    suggestions,
  );
}

function unknownName(value: string, start: number, reader: Reader): Failed {
  const suggestions = nearestNames(value, reader.names());
  const offer =
    suggestions.length > 0
      ? ` Did you mean ${eitherOf(suggestions)}?`
      : ' Write a name such as standard, or the notes, low string first.';
  const message = `“${value}” is no tuning that Pegbox knows for ${reader.instrument.name}.${offer}`;
  return failed('unknown-name', message, start, start + value.length, suggestions);
}

/** Whether a person who wrote this meant notes and slipped, and not a name. */
function looksLikeNotes(value: string, list: NoteList): boolean {
  if (list.problem?.kind !== 'bad-note') return true;
  const words = value.split(/[\s,;-]+/).filter((word) => word !== '');
  if (words.length === 1) {
    const read = list.strings.at(-1)?.end ?? 0;
    const first = list.strings[0]?.start ?? 0;
    return list.strings.length >= 3 && (read - first) * 2 > value.length;
  }
  const notes = words.filter((word) =>
    /^(?:[A-Ga-g](?:[#b♯♭]{0,2})\d?(?:\/[A-Ga-g][#b♯♭]?\d?)?)+$/u.test(word),
  );
  return notes.length >= 2 && notes.length * 2 > words.length;
}

/** The named strings in the spelling of the notes in brackets, or an error when they are not the same notes. */
function agreeWithNotes(head: string, base: Read, notes: string, start: number): Result<Read> {
  const list = readNoteList(notes, start, base.strings.length);
  if (list.problem) return { ok: false, error: list.problem };
  const mends = [head, `${head} (${formatNoteList(base.strings)})`, notes.trim()];
  if (list.strings.length !== base.strings.length) {
    const message = `${head} has ${base.strings.length} strings, and ${list.strings.length} notes stand in the brackets.`;
    return failed(
      'disagrees-with-notes',
      message,
      start,
      start + Math.max(notes.length, 1),
      mends.slice(0, 2),
    );
  }
  const strings: TuningString[] = [];
  for (const [index, string] of base.strings.entries()) {
    const written = list.strings[index];
    const pitches = written && spelledAs(string, written.pitches);
    if (!pitches) {
      const sounds = string.pitches.map(({ name }) => formatNoteName(name)).join('/');
      const message = `In ${head} string ${base.strings.length - index} is ${sounds}; the brackets say something else.`;
      return failed('disagrees-with-notes', message, written?.start ?? start, written?.end ?? start, mends);
    }
    strings.push({ ...string, pitches });
  }
  return ok({ strings, name: base.name });
}

function spelledAs(
  string: TuningString,
  written: readonly WrittenPitch[],
): TuningString['pitches'] | undefined {
  const [first, second] = string.pitches;
  const [a, b] = written;
  if (a === undefined || !agrees(first, a)) return undefined;
  const pitch = respelled(first, a.name);
  if (second === undefined) return b === undefined ? [pitch] : undefined;
  if (b !== undefined && !agrees(second, b)) return undefined;
  const partnerName = b?.name ?? (pitchClassOf(second.name) === pitchClassOf(a.name) ? a.name : second.name);
  return [pitch, respelled(second, partnerName)];
}

function agrees(pitch: TuningString['pitches'][0], written: WrittenPitch): boolean {
  if (written.octave !== undefined) {
    const midi = midiOf({ ...written.name, octave: written.octave });
    if (midi !== midiOf(pitch.name)) return false;
  }
  if (written.cents !== 0 && Math.abs(pitch.midi - midiOf(pitch.name) - written.cents / 100) > 1e-6)
    return false;
  return pitchClassOf(written.name) === pitchClassOf(pitch.name);
}

function respelled(pitch: TuningString['pitches'][0], name: PitchName): TuningString['pitches'][0] {
  const whole = midiOf(pitch.name);
  const octave = Math.round((whole - midiOf({ ...name, octave: 0 })) / 12);
  return { name: { ...name, octave }, midi: pitch.midi };
}

function outOfRange(strings: readonly TuningString[], start: number, end: number): Failed | undefined {
  const far = strings
    .flatMap(({ pitches }) => pitches)
    .find(({ name, midi }) => name.octave < 0 || name.octave > 9 || midi > 127);
  if (!far) return undefined;
  const message = `A string at ${formatNoteName(far.name)} is out of the range of C0 to G9.`;
  return failed('out-of-range', message, start, end);
}

function moved(notice: Notice, by: number): Notice {
  return { ...notice, start: notice.start + by, end: notice.end + by };
}

/** The user's name for strings that were written as notes or steps. */
function userNameOf(strings: readonly TuningString[], options: TuningOptions): string | undefined {
  const tunings = options.userTunings ?? {};
  return Object.keys(tunings).find((name) => {
    const read = readValue(name, new Reader(options.instrument, tunings, new Set()));
    return read.ok && pitchesKey(read.value.strings) === pitchesKey(strings);
  });
}

function pitchesKey(strings: readonly TuningString[]): string {
  return strings.map(({ pitches }) => pitches.map(({ midi }) => midi).join('/')).join(' ');
}
