import { stringNumber } from '../../instrument/tuning';
import { ordinal } from '../../music/chord/degree';
import { formatChord, writtenToneName, type WrittenChord } from '../../music/chord/writtenChord';
import { formatNoteName, formatPitchName, pitchClassOf, type NoteName } from '../../music/noteName';
import { spellMidi } from '../../music/spelling';
import type { Header } from '../../notation/header';
import { capoShift, fingerboardOf, playedSpelling } from '../../notation/headerViews';
import { listed } from '../hover/text';
import type { ServiceError } from '../serviceApi';
import { degreeAboveOpen, degreeOfChord } from './degreeWords';
import { stringsWords } from './noteText';
import { openChord } from './openStrings';
import type { SheetSlide, SheetSlideChord, SheetSlidePlace } from './sheetAnswer';
import { slidePlaces, thirdsUnder, type BarPlace } from './slidePlaces';
import { wantedChords } from './wantedChords';

const WORDS =
  'The bar lies right over the fret wire. Slants are straight lines over 2 or 3 strings. Cents are from the just third, as the strings are tuned';

/** Where a bar gives the chords that a slide player wants. */
export function slideAnswer(header: Header, asked: string | undefined): SheetSlide | ServiceError {
  const wanted = wantedChords(header, asked);
  if (!wanted.ok) {
    // Nobody asked for a chord: the sheet is as good without this part.
    return asked === undefined
      ? { chords: [], words: wanted.error.message }
      : { error: wanted.error.message };
  }
  return { chords: wanted.value.map((chord) => slideChord(header, chord)), words: WORDS };
}

function slideChord(header: Header, chord: WrittenChord): SheetSlideChord {
  const board = fingerboardOf(header);
  const shift = capoShift(header);
  const places = slidePlaces(board, chord, shift).map((place) => tellPlace(header, chord, place));
  const name = formatChord(chord);
  return { chord: name, degree: degreeOf(header, chord), places, words: chordWords(name, places) };
}

function degreeOf({ key, tuning }: Header, { root }: WrittenChord): string | null {
  if (!root) return null;
  if (key) return degreeOfChord(key, pitchClassOf(root)).words;
  const open = openChord(tuning)?.root;
  return open ? degreeAboveOpen((pitchClassOf(root) - pitchClassOf(open) + 12) % 12).words : null;
}

function chordWords(name: string, places: readonly SheetSlidePlace[]): string {
  if (places.length === 0) return `No bar over neighbouring strings gives ${name} in this tuning`;
  const whole = places.filter(({ leavesOut }) => leavesOut.length === 0);
  const straight = whole.filter(({ slant }) => slant === 0);
  if (straight.length > 0) return `${name} is complete ${fretsWords(straight)}`;
  if (whole.length > 0) return `${name} is complete under a slanted bar only`;
  const missing = [...new Set(places.map(({ leavesOut }) => listed(leavesOut)))];
  return `No bar gives all of ${name}; the best leave out the ${missing[0] ?? ''}`;
}

function fretsWords(places: readonly SheetSlidePlace[]): string {
  const frets = fretsOf(places);
  const stopped = frets.filter((fret) => fret > 0);
  const bar = `under a straight bar at ${stopped.length === 1 ? 'fret' : 'frets'} ${listed(stopped.map(String))}`;
  if (!frets.includes(0)) return bar;
  return `on the open strings${stopped.length > 0 ? ` and ${bar}` : ''}`;
}

function fretsOf(places: readonly SheetSlidePlace[]): readonly number[] {
  return [...new Set(places.map(({ fret }) => fret))].sort((a, b) => a - b);
}

function tellPlace(header: Header, chord: WrittenChord, place: BarPlace): SheetSlidePlace {
  const { tuning } = header;
  const board = fingerboardOf(header);
  const shift = capoShift(header);
  const strings = place.strings.map(({ index, fret, midi }) => ({
    number: stringNumber(tuning, index),
    fret,
    note: formatNoteName(toneNamed(midi - shift, chord, header)),
  }));
  const leavesOut = place.leavesOut.map((tone) => toneWord(tone, chord));
  const thirds = thirdsUnder(board, place);
  const numbers = strings.map(({ number }) => number);
  const lies =
    place.slant === 0
      ? `${place.fret === 0 ? 'Open' : `Fret ${place.fret}`}, ${stringsWords(numbers)}`
      : `Slanted, ${strings.map(({ number, fret }) => `string ${number} at fret ${fret}`).join(', ')}`;
  const notes = strings.map(({ note }) => note).join(' ');
  const without = leavesOut.length > 0 ? `, without the ${listed(leavesOut)}` : '';
  return {
    fret: place.fret,
    slant: place.slant,
    strings,
    leavesOut,
    thirds,
    words: `${lies}: ${notes}${without}`,
  };
}

/** A note as the chord spells it. */
function toneNamed(midi: number, { root, tones }: WrittenChord, header: Header): NoteName {
  const whole = Math.round(midi);
  const plain = spellMidi(whole, playedSpelling(header));
  if (!root) return plain;
  const names = [root, ...tones.map(({ degree }) => writtenToneName(root, degree))];
  const name = names.find((one) => pitchClassOf(one) === ((whole % 12) + 12) % 12);
  if (!name || formatPitchName(name) === formatPitchName(plain)) return plain;
  return { ...name, octave: Math.floor((whole - name.alter) / 12) - 1 };
}

function toneWord(halfSteps: number, { tones }: WrittenChord): string {
  if (halfSteps === 0) return 'root';
  const tone = tones.find(({ degree }) => degree.halfSteps === halfSteps);
  return tone ? ordinal(tone.degree.number) : '';
}
