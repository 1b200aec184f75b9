import { fretDistance } from '../../instrument/neck';
import { sameTuning } from '../../instrument/tuningFormat';
import { nameChord } from '../../music/chord/nameChord';
import { readChordName } from '../../music/chord/readChordName';
import { playedContext } from '../../notation/chordContext';
import type { Header } from '../../notation/header';
import { capoShift, fingerboardOf, usualTuning } from '../../notation/headerViews';
import type { TabDocument } from '../../notation/tabDocument';
import { handOptions } from '../../playing/hand/options';
import { nearestShape, type NearShape } from '../../playing/shapes/nearestShape';
import type { Shape } from '../../playing/shapes/shape';
import { shapeOfFrets } from '../../playing/shapes/shapeOf';
import { wantedSet, type WantedChord } from '../../playing/shapes/wanted';
import { USUAL_HIGHEST_FRET } from '../../playing/shapes/shape';
import type { WrittenChord } from '../../music/chord/writtenChord';
import { targetOf } from '../grip/grip';
import type { Place, Settings } from '../records';
import type { ServiceError } from '../serviceApi';
import { askedChord } from './askedChord';
import { foundShapes } from './foundShapes';
import { fretsTrouble } from './insertShape';
import { movesBetween, movesInWords } from './kinMoves';
import { shapeAnswer } from './shapeAnswer';
import type { ShapeKinAnswer, ShapeKinRequest } from './shapesAnswer';
import { headerAt, tuningWords } from './shapes';

/**
 * What became of a shape: the everyday shape of a chord in the instrument's usual tuning beside the nearest one in the
 * tuning in force, fewest strings changed, then least millimetres. Under a full capo both are named and counted as
 * played. An error says what about the chord or the frets is to be changed.
 * @example shapeKin(document, place, { chord: 'C' }, settings).words // 'string 2 +2, string 1 +2'
 */
export function shapeKin(
  document: TabDocument,
  place: Place,
  request: ShapeKinRequest,
  settings: Settings,
): ShapeKinAnswer | ServiceError {
  return shapeKinUnder(headerAt(document, place), request, settings);
}

/** The same under given fields. */
export function shapeKinUnder(
  header: Header,
  request: ShapeKinRequest,
  settings: Settings,
): ShapeKinAnswer | ServiceError {
  const usualHeader = usualOf(header);
  const asked =
    'chord' in request
      ? ofChord(request.chord, header, usualHeader, settings)
      : ofFrets(request.frets, usualHeader, settings);
  if ('error' in asked) return asked;
  const { name, soundsAs, wanted, written, usual } = asked;
  // The bass counts as strings do: where the usual shape has the root there, so has its kin, if any can.
  const rooted =
    usual && wanted.bass === undefined && usual.bass === wanted.root
      ? { ...wanted, bass: wanted.root }
      : wanted;
  const near =
    usual && (nearestTo(usual, rooted, header, settings) ?? nearestTo(usual, wanted, header, settings));
  const isSame = sameTuning(header.tuning, usualHeader.tuning);
  const here = near?.shape ?? (usual ? undefined : best(wanted, header, settings));
  const moves = usual && near ? movesBetween(usual.frets, near.shape.frets) : [];
  return {
    chord: name,
    soundsAs,
    usualTuning: tuningWords(usualHeader.tuning, header),
    tuning: tuningWords(header.tuning, header),
    usual: usual ? shapeAnswer(usual, written, usualHeader) : null,
    here: here ? shapeAnswer(here, written, header) : null,
    moves,
    words: movesInWords(moves),
    stringsChanged: moves.filter(({ changed }) => changed).length,
    millimetres: near?.millimetres ?? 0,
    remarks: [
      ...(isSame ? ['This is the usual tuning, so the shape stays as it is.'] : []),
      ...(usual ? [] : [`No hand finds ${name} in the usual tuning.`]),
      ...(here ? [] : [`No shape of ${name} is within reach of the hand here.`]),
    ],
  };
}

interface Asked {
  readonly name: string;
  readonly soundsAs: string | null;
  readonly wanted: WantedChord;
  readonly written: WrittenChord | undefined;
  /** In the usual tuning. */
  readonly usual: Shape | undefined;
}

function ofChord(
  chord: string,
  header: Header,
  usualHeader: Header,
  settings: Settings,
): Asked | ServiceError {
  const asked = askedChord(chord, header);
  if ('error' in asked) return asked;
  const { name, soundsAs, wanted, written } = asked;
  return { name, soundsAs, wanted, written, usual: best(wanted, usualHeader, settings) };
}

/** The chord of a shape in the usual tuning, whatever it is. */
function ofFrets(
  frets: readonly (number | null)[],
  header: Header,
  settings: Settings,
): Asked | ServiceError {
  const trouble = fretsTrouble(frets, header);
  if (trouble) return trouble;
  const found = shapeOfFrets(
    frets.map((fret) => fret ?? undefined),
    targetOf(header, settings),
    handOptions({ thumb: settings.thumb }),
  );
  if (!('shape' in found)) return { error: `No hand can hold this shape: ${found.refused.join('; ')}.` };
  const board = fingerboardOf(header);
  const midis = frets.flatMap((fret, index) => (fret === null ? [] : (board.pitches(index, fret) ?? [])));
  const shift = capoShift(header);
  const played = nameChord(
    midis.map((midi) => midi - shift),
    playedContext(header),
  );
  const name = played.names[0]?.name ?? played.notes.map(({ letter }) => letter).join(' ');
  const read = readChordName(name);
  const asked = read.ok && read.value.root ? askedChord(name, header) : undefined;
  if (asked && !('error' in asked)) return { ...asked, usual: found.shape };
  const wanted = wantedSet(midis);
  if (!wanted) return { error: 'No string of the shape is played: give at least one fret.' };
  return { name, soundsAs: null, wanted, written: undefined, usual: found.shape };
}

function best(wanted: WantedChord, header: Header, settings: Settings): Shape | undefined {
  const [shape] = foundShapes(wanted, header, settings, { limit: 1, highestFret: USUAL_HIGHEST_FRET });
  return shape;
}

/** Under a bar the strings are moved together, so the best place for it is told. */
function nearestTo(
  { frets }: Shape,
  wanted: WantedChord,
  header: Header,
  settings: Settings,
): Pick<NearShape, 'shape' | 'millimetres'> | undefined {
  const count = header.tuning.strings.length;
  // Strings of the same number, whatever there are more or fewer.
  const from = Array.from({ length: count }, (_, index) => frets[index + frets.length - count]);
  if (header.fretting === 'slide') {
    const shape = best(wanted, header, settings);
    return shape && { shape, millimetres: wayBetween(from, shape.frets, header) };
  }
  return nearestShape(from, wanted, targetOf(header, settings), {
    highestFret: USUAL_HIGHEST_FRET,
    hand: handOptions({ thumb: settings.thumb }),
  });
}

/** Millimetres along the neck, string by string, for those that sound in both. */
function wayBetween(from: Shape['frets'], to: Shape['frets'], header: Header): number {
  const board = fingerboardOf(header);
  const at = (index: number, fret: number): number =>
    fretDistance(board.absoluteFret(index, fret), header.scaleLength);
  return to.reduce<number>((sum, fret, index) => {
    const old = from[index];
    return fret === undefined || old === undefined ? sum : sum + Math.abs(at(index, fret) - at(index, old));
  }, 0);
}

const usualHeaders = new WeakMap<Header, Header>();

/**
 * The fields in force with the instrument's usual tuning, under fingers where it is not made for a bar; a full capo
 * stays, a partial one goes.
 */
function usualOf(header: Header): Header {
  let usual = usualHeaders.get(header);
  if (!usual) {
    const capo = header.capo?.strings ? undefined : header.capo;
    const fretting = header.instrument.slide ? header.fretting : 'fingers';
    usual = { ...header, tuning: usualTuning(header.instrument), capo, fretting };
    usualHeaders.set(header, usual);
  }
  return usual;
}
