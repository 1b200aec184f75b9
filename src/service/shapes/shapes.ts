import { formatCapo } from '../../instrument/capo';
import { formatTuningNotes, nameOfTuning } from '../../instrument/tuningFormat';
import type { Tuning } from '../../instrument/tuning';
import type { Header } from '../../notation/header';
import type { TabDocument } from '../../notation/tabDocument';
import { USUAL_HIGHEST_FRET, USUAL_LIMIT } from '../../playing/shapes/shape';
import type { Place, Settings } from '../records';
import type { ServiceError } from '../serviceApi';
import { askedChord, type AskedChord } from './askedChord';
import { foundShapes } from './foundShapes';
import { nearestMiss } from './nearestMiss';
import { shapeAnswer } from './shapeAnswer';
import type { ShapesAnswer, ShapesRequest } from './shapesAnswer';
import { labelsOf } from './shapeTab';

const MOST_SHAPES = 200;
/** The greatest fret that tab writes. */
const LAST_FRET = 36;

/**
 * Shapes of a chord in the tuning in force at a place, best first. Names are as played where there is a full capo. An
 * error says what to change about the request; where no hand finds a shape the answer has none and says what is missing.
 * @example shapes(document, place, { chord: 'G/B' }, settings).shapes[0].text // 'x 2 0 0 0 3'
 */
export function shapes(
  document: TabDocument,
  place: Place,
  request: ShapesRequest,
  settings: Settings,
): ShapesAnswer | ServiceError {
  return shapesUnder(headerAt(document, place), request, settings);
}

/** The same under given fields. */
export function shapesUnder(
  header: Header,
  { chord, limit = USUAL_LIMIT, highestFret = USUAL_HIGHEST_FRET }: ShapesRequest,
  settings: Settings,
): ShapesAnswer | ServiceError {
  if (!Number.isInteger(limit) || limit < 1 || limit > MOST_SHAPES)
    return { error: `As many as ${limit} shapes cannot be given: ask for 1 to ${MOST_SHAPES}.` };
  if (!Number.isInteger(highestFret) || highestFret < 0 || highestFret > LAST_FRET)
    return { error: `${highestFret} is no highest fret: write a whole number from 0 to ${LAST_FRET}.` };
  const asked = askedChord(chord, header);
  if ('error' in asked) return asked;
  const found = foundShapes(asked.wanted, header, settings, { limit, highestFret });
  const answers = found.map((shape) => shapeAnswer(shape, asked.written, header));
  return {
    chord: asked.name,
    soundsAs: asked.soundsAs,
    tones: asked.tones,
    tuning: tuningWords(header.tuning, header),
    capo: capoWords(header),
    labels: labelsOf(header.tuning),
    shapes: answers,
    remarks: [
      ...capoRemark(asked, header),
      ...(answers.length === 0 ? nearestMiss(asked, header, settings, highestFret) : []),
      ...(answers.length > 0 && answers.every(({ kind }) => kind === 'reduced')
        ? [`No shape within reach has every tone of ${asked.name}; each of these says what it leaves out.`]
        : []),
    ],
  };
}

/** The fields in force at a place: those of the system there, else those of the line. */
export function headerAt(document: TabDocument, { line }: Place): Header {
  return document.systemAt(line)?.header ?? document.headerAt(line);
}

/** `DADGAD (D2 A2 D3 G3 A3 D4)`, or the notes alone where the trade has no name for them. */
export function tuningWords(tuning: Tuning, { instrument }: Pick<Header, 'instrument'>): string {
  const notes = formatTuningNotes(tuning);
  const name = tuning.name ?? nameOfTuning(tuning, instrument);
  return name === undefined ? notes : `${name} (${notes})`;
}

function capoWords({ capo }: Header): string | null {
  if (!capo) return null;
  return capo.strings ? `partial capo ${formatCapo(capo)}` : `capo at fret ${capo.fret}`;
}

function capoRemark({ name, soundsAs }: AskedChord, { capo }: Header): readonly string[] {
  if (soundsAs === null || !capo) return [];
  return [`Named as played: with the capo at fret ${capo.fret} the shapes of ${name} sound as ${soundsAs}.`];
}
