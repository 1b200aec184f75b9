import { isPartial } from '../../instrument/capo';
import { stringNumber } from '../../instrument/tuning';
import { nameChord, type ChordName, type ChordNaming } from '../../music/chord/nameChord';
import { formatKey, isInKey } from '../../music/key';
import { formatNoteName, formatPitchName, pitchClassOf } from '../../music/noteName';
import { playedContext, soundingContext } from '../../notation/chordContext';
import type { Header } from '../../notation/header';
import { capoShift, fingerboardOf } from '../../notation/headerViews';
import { capital } from '../hover/text';
import { degreeAboveOpen, degreeOfChord, type ChordDegree } from './degreeWords';
import { stringsWords } from './noteText';
import { isChord, openChord } from './openStrings';
import { plainName } from './plainName';
import type { SheetBarre, SheetBarres } from './sheetAnswer';

/** An octave, after which everything comes again. */
const LAST_FRET = 12;

/**
 * What one finger or bar straight over all strings gives, fret by fret, as written under the capo. A string that
 * begins up the neck stays out of it and rings on. Under a partial capo the frets below it are left out: no bar lies
 * there on all strings.
 */
export function barresAnswer(header: Header): SheetBarres {
  const { tuning, key, capo } = header;
  const barred = tuning.strings.flatMap(({ firstFret }, index) => (firstFret === 0 ? [index] : []));
  const frets = Array.from({ length: LAST_FRET + 1 }, (_, fret) => barreAt(header, barred, fret));
  const short = tuning.strings.flatMap(({ firstFret }, index) => (firstFret > 0 ? [index] : []));
  const rings = short.map((index) => {
    const string = tuning.strings[index];
    const note = string ? formatNoteName(string.pitches[0].name) : '';
    return `${capital(stringsWords([stringNumber(tuning, index)]))}, ${note}, is shorter and rings on`;
  });
  const below = isPartial(capo) && capo !== undefined && capo.fret > 1;
  return {
    strings: barred.map((index) => stringNumber(tuning, index)),
    frets: frets.filter((one) => one !== undefined),
    words: key ? `Degrees are counted in ${formatKey(key)}` : 'Degrees are counted from the open chord',
    remark: [
      ...rings,
      ...(below
        ? [`Between the nut and the partial capo at fret ${capo.fret} no barre lies over all strings`]
        : []),
    ].join('. '),
  };
}

function barreAt(header: Header, barred: readonly number[], fret: number): SheetBarre | undefined {
  const { key } = header;
  const board = fingerboardOf(header);
  const shift = capoShift(header);
  const midis = barred.map((index) => board.pitches(index, fret));
  if (midis.length === 0 || midis.some((pitches) => pitches === undefined)) return undefined;
  const sounding = midis.flatMap((pitches) => pitches ?? []);
  const played = sounding.map((midi) => midi - shift);
  const naming = nameChord(played, playedContext(header));
  const first = isChord(naming) ? sameQuality(naming, header, fret) : undefined;
  const sounds = shift > 0 && first ? soundingName(sounding, header, fret) : undefined;
  const degree: ChordDegree | undefined =
    first && (key ? degreeOfChord(key, pitchClassOf(first.root)) : degreeAboveOpen(fret));
  const notes = naming.notes.map(formatPitchName);
  const called = fret === 0 ? 'Open' : `Fret ${fret}`;
  const chord = first
    ? plainName(first) + (sounds === undefined ? '' : `, sounds ${sounds}`)
    : notes.join(' ');
  return {
    fret,
    chord: first ? plainName(first) : null,
    sounds: sounds ?? null,
    notes,
    degree: degree?.words ?? null,
    inKey: key ? naming.notes.every((note) => isInKey(key, pitchClassOf(note))) : null,
    main: degree?.main ?? false,
    words: `${called}: ${chord}${degree ? `, ${degree.words}` : ', no everyday chord'}`,
  };
}

/**
 * Every barre is the open chord moved up: of a set with two names (C6 is Am7) it is the one whose root moved with it.
 * Under a partial capo the open strings are another chord, and the likeliest name is taken.
 */
function sameQuality(naming: ChordNaming, { tuning, capo }: Header, fret: number): ChordName | undefined {
  const open = isPartial(capo) ? undefined : openChord(tuning);
  const root = open && (pitchClassOf(open.root) + fret) % 12;
  return naming.names.find((name) => pitchClassOf(name.root) === root) ?? naming.names[0];
}

function soundingName(midis: readonly number[], header: Header, fret: number): string | undefined {
  const naming = nameChord(midis, soundingContext(header));
  const name = sameQuality(naming, header, fret + capoShift(header));
  return name && plainName(name);
}
