import { formatPitchName, pitchClassOf, type PitchName } from '../noteName';
import { ordinal } from './degree';
import { nameChord, type ChordContext, type ChordNaming } from './nameChord';
import { readChordName } from './readChordName';
import { writtenMask, writtenToneName, type WrittenChord } from './writtenChord';

/** How a written name stands to what sounds. */
export type ChordVerdict = 'agrees' | 'omits' | 'adds' | 'disagrees' | 'bass';

export interface ChordComparison {
  readonly verdict: ChordVerdict;
  /** One clear sentence; '' when they agree. */
  readonly message: string;
  /** A name that agrees with what sounds, where there is one. */
  readonly suggestion?: string;
}

/** Bass and spelling: the same record that naming takes. */
export type ComparisonOptions = ChordContext;

const NO_OPTIONS: ComparisonOptions = Object.freeze({});
const AGREES: ChordComparison = Object.freeze({ verdict: 'agrees', message: '' });

/** Which tone in its place contradicts a claimed one, in half steps above the root. */
const RIVALS: Readonly<Record<string, readonly number[]>> = {
  '3': [3],
  b3: [4],
  '2': [3, 4, 5],
  '4': [3, 4, 2],
  '5': [6, 8],
  b5: [7],
  '#5': [7],
  b7: [11],
  '7': [10],
  '9': [1, 3],
  b9: [2],
  '#9': [2],
  '11': [6],
  '#11': [5],
  '13': [8],
  b13: [9],
};

/**
 * Compares a written chord with the sounding notes. The first that fits: `disagrees` (a claimed tone is missing
 * while its rival sounds, or most of it is something else), `adds` (more sounds), `omits` (something that the name
 * promises does not sound), `bass` (the note behind the slash is not the lowest), `agrees`. An inversion without
 * its slash and a missing perfect fifth agree.
 * @param soundingMidis as for nameChord
 * @example compareChord(dMinor, [50, 57, 62, 66]).message // 'Dm is written, F# sounds: D.'
 */
export function compareChord(
  written: WrittenChord,
  soundingMidis: readonly number[],
  options: ComparisonOptions = NO_OPTIONS,
): ChordComparison {
  const naming = nameChord(soundingMidis, options);
  const { root } = written;
  if (!root) {
    if (naming.kind === 'silence') return AGREES;
    const heard = naming.notes.map(formatPitchName).join(' and ');
    const does = naming.notes.length === 1 ? 'sounds' : 'sound';
    return told('disagrees', written, naming, `${written.text} is written, ${heard} ${does}`);
  }
  if (naming.kind === 'silence')
    return told('omits', written, naming, `${written.text} is written, nothing sounds`);
  const sounding = naming.notes.reduce((mask, note) => mask | bitOf(note, root), 0);
  const claimed = writtenMask(written) | (written.bass ? bitOf(written.bass, root) : 0);
  const missing = writtenMask(written, 'must') & ~sounding;
  const foreign = sounding & ~claimed;
  const rivals = rivalsOf(written, sounding, foreign);
  const rootMissing = (missing & 1) !== 0;
  const strangers = countBits(foreign) >= 2 && countBits(foreign) > countBits(sounding & claimed);
  if (rivals || (rootMissing && foreign) || strangers) {
    const against = rootMissing || strangers ? foreign : rivals;
    const heard = toneNames(against, root, naming);
    return told('disagrees', written, naming, `${written.text} is written, ${heard} ${verb(against)}`);
  }
  if (foreign)
    return told(
      'adds',
      written,
      naming,
      `${written.text} also has ${toneNames(foreign, root, naming)} sounding`,
    );
  if (missing)
    return told('omits', written, naming, `${written.text} is written, ${missingWords(written, missing)}`);
  const [lowest] = naming.notes;
  // In a re-entrant tuning the lowest pitch need not be what is heard as the bass.
  if (!written.bass || !lowest || (options.reentrant && sounding & bitOf(written.bass, root))) return AGREES;
  if (pitchClassOf(lowest) !== pitchClassOf(written.bass)) {
    const words = `${formatPitchName(written.bass)} is not in the bass, ${formatPitchName(lowest)} is`;
    return told('bass', written, naming, words);
  }
  return AGREES;
}

/** The foreign tones that stand where a claimed one is missing, or a third where none may be. */
function rivalsOf(written: WrittenChord, sounding: number, foreign: number): number {
  let rivals = written.thirdForbidden ? foreign & ((1 << 3) | (1 << 4)) : 0;
  for (const { degree: tone, need } of written.tones) {
    // An eleventh that may be left out of a thirteenth is not contradicted by its neighbour.
    if (sounding & (1 << tone.halfSteps) || (need === 'may' && tone.number > 9)) continue;
    for (const rival of RIVALS[tone.text] ?? []) rivals |= foreign & (1 << rival);
  }
  return rivals;
}

function told(
  verdict: ChordVerdict,
  written: WrittenChord,
  naming: ChordNaming,
  text: string,
): ChordComparison {
  const suggestion = suggestionFor(written, naming);
  const message =
    suggestion === undefined || naming.kind === 'silence' ? `${text}.` : `${text}: ${suggestion}.`;
  return Object.freeze(suggestion === undefined ? { verdict, message } : { verdict, message, suggestion });
}

/** The likeliest other name of what sounds, over the written root where that costs little more. */
function suggestionFor(written: WrittenChord, naming: ChordNaming): string | undefined {
  if (naming.kind === 'silence') return 'N.C.';
  if (naming.kind !== 'chord' && naming.kind !== 'power') return undefined;
  const [first] = naming.names;
  const { root } = written;
  const same = naming.names.find((name) => root && pitchClassOf(name.root) === pitchClassOf(root));
  const chosen = first && same && same.cost <= first.cost + SAME_ROOT ? same : first;
  return chosen && chosen.name !== written.text && !chosen.name.endsWith('(no root)')
    ? chosen.name
    : undefined;
}

/** How much dearer a name on the written root may be and still be offered first. */
const SAME_ROOT = 4;

/** Sounding notes by their bits above the written root, spelled as what sounds is spelled. */
function toneNames(mask: number, root: PitchName, naming: ChordNaming): string {
  const heard = naming.notes.filter((note) => mask & bitOf(note, root));
  return heard.map(formatPitchName).join(' and ');
}

function bitOf(note: PitchName, root: PitchName): number {
  return 1 << ((pitchClassOf(note) - pitchClassOf(root) + 12) % 12);
}

function verb(mask: number): string {
  return countBits(mask) === 1 ? 'sounds' : 'sound';
}

function missingWords(written: WrittenChord, missing: number): string {
  const { root } = written;
  const words: string[] = [];
  if (root && missing & 1) words.push(`its root ${formatPitchName(root)}`);
  for (const { degree: tone } of written.tones) {
    if (!root || !(missing & (1 << tone.halfSteps))) continue;
    words.push(
      tone.number === 3
        ? 'no third'
        : `its ${ordinal(tone.number)} ${formatPitchName(writtenToneName(root, tone))}`,
    );
  }
  if (words.length === 1 && words[0] === 'no third') return 'no third sounds';
  const list = words.map((word) => (word === 'no third' ? 'its third' : word)).join(' and ');
  return `${list} ${words.length === 1 ? 'does' : 'do'} not sound`;
}

function countBits(mask: number): number {
  let count = 0;
  for (let rest = mask; rest; rest &= rest - 1) count++;
  return count;
}

/** Reads and compares in one call; undefined for a name that cannot be read. */
export function compareChordName(
  text: string,
  soundingMidis: readonly number[],
  options: ComparisonOptions = NO_OPTIONS,
): ChordComparison | undefined {
  const read = readChordName(text);
  return read.ok ? compareChord(read.value, soundingMidis, options) : undefined;
}
