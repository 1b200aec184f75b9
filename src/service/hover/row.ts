import { chordFindings } from '../../checks/support/chordSpan';
import { compareChord } from '../../music/chord/compareChord';
import { nameChord, type ChordNaming } from '../../music/chord/nameChord';
import { readChordName } from '../../music/chord/readChordName';
import type { WrittenChord } from '../../music/chord/writtenChord';
import { formatPitchName } from '../../music/noteName';
import type { Header } from '../../notation/header';
import { capoShift } from '../../notation/headerViews';
import type { RowLine } from '../../notation/parsedLine';
import type { PlacedMark, RowReading } from '../../notation/reading';
import { splitRun } from '../../notation/time/syllables';
import type { System, TabDocument } from '../../notation/tabDocument';
import { playedContext } from '../../notation/chordContext';
import { stringsOverChord } from '../ringing/openStrings';
import { ringWords } from '../ringing/ringWords';
import { ROW_GUIDE } from '../rowGuide';
import { midisBetween } from '../sounding';
import { timingWords, whereInWords } from './beat';
import { firstName } from './chordWords';
import { capital, code, lines, listed, paragraphs, quoted } from './text';

/** What a row is and what stands in it. */
export function rowWordHover(row: RowLine): string {
  const { what, values } = ROW_GUIDE[row.row];
  return lines(`**${quoted(row.word)}**: ${what}`, values);
}

/** A syllable of a count, in a run of several that touch, and its time. */
export function countHover(
  document: TabDocument,
  system: System,
  mark: PlacedMark,
  column: number,
): { readonly markdown: string; readonly start: number; readonly end: number } {
  const piece = splitRun(mark.text, mark.column).findLast((syllable) => syllable.column <= column);
  const at = piece?.column ?? mark.column;
  const time = system.reading.columnTimes[at] ?? mark.onset;
  const start = mark.start + at - mark.column;
  return {
    markdown: lines(`**${capital(whereInWords(document, system, time))}**`, timingWords(system)),
    start,
    end: Math.min(mark.end, start + (piece?.text.length ?? mark.end - start)),
  };
}

/** What a chord's name says, what sounds until the next one, and whether they agree. */
export function chordMarkHover(
  document: TabDocument,
  system: System,
  row: RowReading,
  mark: PlacedMark,
): string {
  const { header } = system;
  const next = row.marks[row.marks.indexOf(mark) + 1];
  const shift = capoShift(header);
  const midis = midisBetween(document, system, mark.onset, next?.onset ?? system.reading.length);
  const context = playedContext(header);
  const played = midis.map((midi) => midi - shift);
  const naming = nameChord(played, context);
  const written = readChordName(mark.text);
  const notes = naming.notes.map(formatPitchName).join(' ');
  const [first, ...others] = naming.names;
  const name =
    naming.kind === 'note'
      ? firstName(naming)
      : naming.kind === 'unnamed'
        ? 'no everyday name'
        : (first?.name ?? '');
  return paragraphs(
    `**${quoted(mark.text)}** is written`,
    written.ok && naming.kind !== 'silence'
      ? verdictLine(document, system, row, mark, compareChord(written.value, played, context))
      : '',
    written.ok ? '' : quoted(written.error.message, 400),
    naming.kind === 'silence'
      ? 'Nothing sounds from here to the next name'
      : lines(
          `What sounds from here to the next name: ${notes}, that is **${name}**${wordsOf(naming)}`,
          others.length > 0 ? `Also: ${others.map((other) => other.name).join('; ')}` : '',
          shift === 0 ? '' : `Named as played; the capo sounds it ${shift} frets higher`,
        ),
    written.ok ? ringLine(header, written.value) : '',
    capital(whereInWords(document, system, mark.onset)),
  );
}

/** Which open strings may ring while the chord lasts. */
function ringLine(header: Header, chord: WrittenChord): string {
  const strings = stringsOverChord(header, chord);
  return strings ? ringWords(strings) : '';
}

function wordsOf({ kind, names: [first] }: ChordNaming): string {
  return kind === 'note' || !first?.words ? '' : ` (${first.words})`;
}

/**
 * What the check of chord rows says; where it is content with more or fewer notes than the name has, as over a melody,
 * what these are.
 */
function verdictLine(
  document: TabDocument,
  system: System,
  row: RowReading,
  mark: PlacedMark,
  whole: ReturnType<typeof compareChord>,
): string {
  const { reading, header } = system;
  const scene = { system, reading, header, ringing: document.ringingInto(system), reach: Infinity };
  const found = chordFindings(scene).find(({ line, start }) => line === row.line && start === mark.start);
  if (found) return sentence(found.message);
  return whole.verdict === 'agrees'
    ? 'It agrees with what sounds'
    : `It agrees, though ${sentence(whole.message)}`;
}

function sentence(message: string): string {
  return quoted(message, 400).replace(/\.$/, '');
}

const STROKES: Readonly<Record<string, string>> = {
  p: 'thumb',
  i: 'index finger',
  m: 'middle finger',
  a: 'ring finger',
  c: 'little finger',
  d: 'stroke down',
  u: 'stroke up',
  t: 'thumb',
  x: 'muted stroke',
};

const FINGERS: Readonly<Record<string, string>> = {
  '0': 'open string',
  '1': 'index finger',
  '2': 'middle finger',
  '3': 'ring finger',
  '4': 'little finger',
  t: 'thumb',
};

/** A mark of the picking or fretting hand in words; undefined where there is nothing to say. */
export function handMarkLine(row: RowReading, mark: PlacedMark): string | undefined {
  const words = row.row === 'picking' ? STROKES : row.row === 'fingers' ? FINGERS : undefined;
  if (!words) return undefined;
  const told = [...mark.text].flatMap((letter) => words[letter.toLowerCase()] ?? []);
  return told.length > 0 ? `${code(mark.text)}: ${listed(told)}` : undefined;
}
