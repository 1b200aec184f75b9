import type { Fraction } from '../../music/fraction';
import { readChordName } from '../../music/chord/readChordName';
import { columnsFrom } from '../../notation/columns';
import { soundingSpelling } from '../../notation/headerViews';
import type { NoteReading } from '../../notation/reading';
import type { System, TabDocument } from '../../notation/tabDocument';
import { stringsOverChord } from '../ringing/openStrings';
import { ringInShort } from '../ringing/ringWords';
import { soundingAt, type SoundingNote } from '../sounding';
import { timingWords, whereInWords } from './beat';
import { chordParagraph, nameBoth, shortName, type BothNamings } from './chordWords';
import { arrival } from './techniques';
import { capital, lines, listed, paragraphs, pitchText } from './text';
import { stopWords } from './stopWords';

/** The moment that a column of a system stands for: of the note that it is part of, else its own time. */
export function momentAt(system: System, column: number): Fraction {
  const { reading } = system;
  let found: NoteReading | undefined;
  for (const note of reading.notes) {
    if (note.column > column || (found && note.column < found.column)) continue;
    if (column <= lastColumn(system, note)) found = note;
  }
  return found?.onset ?? reading.columnTimes[Math.max(0, column)] ?? reading.length;
}

function lastColumn(system: System, note: NoteReading): number {
  const line = system.lines[note.line];
  return line?.kind === 'string' ? columnsFrom(line.text, line.bodyStart)(note.end - 1) : note.column;
}

/** What sounds at a moment: the struck notes, all that sounds with them, and what they make together. */
export function columnHover(document: TabDocument, system: System, time: Fraction): string {
  const sounding = soundingAt(document, system, time);
  const namings = namingsOf(sounding, system);
  const where = `${capital(whereInWords(document, system, time))} · ${timingWords(system)}`;
  if (sounding.length === 0) return paragraphs('Nothing sounds here', where);
  return paragraphs(
    struckLine(sounding, system, namings),
    soundingList(sounding, system, namings),
    lines(chordParagraph(namings), ringLine(namings, system)),
    where,
  );
}

/** Which open strings may ring over what sounds, where it is a chord that has a name; as played under a full capo. */
function ringLine({ sounding, played }: BothNamings, { header }: System): string {
  const { kind, names } = played ?? sounding;
  const chord = kind === 'chord' || kind === 'power' ? readChordName(names[0]?.name ?? '') : undefined;
  const strings = chord?.ok === true ? stringsOverChord(header, chord.value) : undefined;
  return strings ? ringInShort(strings) : '';
}

/** One line for the end of a fret's hover. */
export function columnInShort(document: TabDocument, system: System, time: Fraction): string {
  const sounding = soundingAt(document, system, time);
  const pitched = sounding.filter(({ midis }) => midis.length > 0);
  if (pitched.length < 2) return '';
  const namings = namingsOf(sounding, system);
  const notes = pitched.map((one) => `${pitchesOf(one, system, namings)} ${stateOf(one)}`);
  return `Together: **${shortName(namings)}** (${notes.join(', ')})`;
}

function namingsOf(sounding: readonly SoundingNote[], system: System): BothNamings {
  return nameBoth(
    sounding.flatMap(({ midis }) => midis),
    system.header,
  );
}

function struckLine(sounding: readonly SoundingNote[], system: System, namings: BothNamings): string {
  const begins = sounding.filter((one) => one.begins);
  if (begins.length === 0) return 'Nothing is struck here';
  return `Struck: ${listed(begins.map((one) => `**${pitchesOf(one, system, namings) || withoutPitch(one)}**`))}`;
}

/** A line for each string that sounds, string 1 first, as the tab has them. */
function soundingList(sounding: readonly SoundingNote[], system: System, namings: BothNamings): string {
  return [...sounding]
    .reverse()
    .map((one) => {
      const pitch = pitchesOf(one, system, namings) || withoutPitch(one);
      return `- ${pitch}: string ${one.note.string}, ${stopWords(one.note)}, ${stateOf(one, system)}`;
    })
    .join('\n');
}

/** The pitches of a note, spelled as the chord's first name spells them. */
function pitchesOf({ midis }: SoundingNote, system: System, { sounding }: BothNamings): string {
  return midis.map((midi) => pitchText(midi, soundingSpelling(system.header), sounding.notes)).join(' and ');
}

function stateOf(one: SoundingNote, system?: System): string {
  if (one.begins) return arrival(one.note);
  return system && one.system !== system ? 'ringing from the system before' : 'ringing';
}

function withoutPitch({ note }: SoundingNote): string {
  return note.kind === 'muted' ? 'x' : 'no pitch';
}
