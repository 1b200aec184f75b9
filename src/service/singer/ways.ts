import { formatCapo } from '../../instrument/capo';
import { createFingerboard } from '../../instrument/sounding';
import { formatTuning } from '../../instrument/tuningFormat';
import { stringBears } from '../../playing/suit/stringBears';
import type { Header } from '../../notation/header';
import { capoWords, halfStepWords } from '../change/remarks';
import { notesOf, type Slice } from '../change/slices';
import type { Range } from '../records';
import { cautionsFor } from './applyFit';
import type { Move, Mover } from './moveAll';
import { shapesWords } from './shapesWords';
import type { SingerWay, StringStrain } from './singerAnswer';
import { strainOf } from './strain';

/** How far down all strings are tuned at most; lower they get slack. An engineering value. */
const MOST_DOWN = 4;
/** How far up they are thought of; what the strings bear comes first. */
const MOST_UP = 4;

/** Every move that the strings, the neck and the frets of the passage allow, the piece as it stands among them. */
export function movesFor(slices: readonly Slice[], highestCapo: number, mover: Mover): readonly Move[] {
  const headers = [...new Set(slices.map(({ system }) => system.header))];
  const capos = caposFor(headers, highestCapo).filter(
    (capoBy) => capoBy === 0 || reaches(slices, mover({ capoBy, tuningBy: 0 })),
  );
  const tunings: number[] = [];
  for (let by = -MOST_DOWN; by <= MOST_UP; by++) if (borne(headers, by)) tunings.push(by);
  // Nobody tunes up to put a capo on: it would do alone.
  return capos.flatMap((capoBy) =>
    tunings.flatMap((tuningBy) => (capoBy !== 0 && tuningBy > 0 ? [] : [{ capoBy, tuningBy }])),
  );
}

/** By how many frets every capo can go up or down; none on an instrument that is played under a bar. */
function caposFor(headers: readonly Header[], highest: number): number[] {
  if (headers.some(({ capo, instrument }) => capo?.strings || instrument.slide)) return [0];
  const fits = (by: number): boolean =>
    headers.every(({ capo, frets }) => (capo?.fret ?? 0) + by <= Math.min(highest, frets - 1));
  const all: number[] = [];
  const lowest = Math.min(...headers.map(({ capo }) => capo?.fret ?? 0));
  for (let by = -lowest; by <= 0 || fits(by); by++) all.push(by);
  return all;
}

/** Whether every string bears all strings being moved; down it does. */
function borne(headers: readonly Header[], by: number): boolean {
  return (
    by <= 0 ||
    headers.every(({ tuning, instrument, scaleLength }) => {
      const bears = stringBears(tuning, instrument, scaleLength);
      return tuning.strings.every((_, index) => bears(index, by));
    })
  );
}

/** Whether every fret of the passage is still on the neck. */
function reaches(slices: readonly Slice[], after: (header: Header) => Header): boolean {
  return slices.every((slice) => {
    const { tuning, capo, frets } = after(slice.system.header);
    const board = createFingerboard(tuning, capo, frets);
    return notesOf(slice).every(
      ({ note: { string, fret, pitches } }) =>
        fret === undefined || pitches.length === 0 || board.read(tuning.strings.length - string, fret).ok,
    );
  });
}

/** A move with all that is told about it, but how the tune lies. */
export type ToldMove = Omit<SingerWay, 'lies'>;

/** Tells moves of a passage; what hangs on the tuning alone is worked out once for each. */
export function moveTeller(
  slices: readonly Slice[],
  range: Range | undefined,
  mover: Mover,
): (move: Move) => ToldMove {
  const strains = new Map<number, StringStrain>();
  const before = [...new Set(slices.map(({ system }) => system.header))];
  return (move) => {
    const { capoBy, tuningBy } = move;
    const headerFor = mover(move);
    const headers = before.map(headerFor);
    const strain = strains.get(tuningBy) ?? strainOf(headers, tuningBy);
    strains.set(tuningBy, strain);
    const capos = new Set(headers.map(({ capo }) => formatCapo(capo)));
    const kind =
      capoBy !== 0 ? (tuningBy !== 0 ? 'both' : 'capo') : tuningBy !== 0 ? 'tuning' : 'as it stands';
    return {
      kind,
      title: titleOf(kind, move, headers[0], capos.size > 1),
      halfSteps: capoBy + tuningBy,
      capo: [...capos].join('; '),
      tuning: [...new Set(headers.map(tuningText))].join('; '),
      ...shapesWords(slices, move),
      strain,
      fretsLeft: Math.min(
        ...headers.map(({ frets, capo }) => frets - (capo?.strings ? 0 : (capo?.fret ?? 0))),
      ),
      cautions: cautionsFor(slices, headerFor, tuningBy),
      request: kind === 'as it stands' ? null : { range, capoBy, tuningBy },
    };
  };
}

/** A name, as written where it has none. */
function tuningText({ tuning, instrument }: Header): string {
  if (tuning.name !== undefined) return tuning.name;
  return tuning.text === '' ? formatTuning(tuning, instrument) : tuning.text;
}

function titleOf(
  kind: SingerWay['kind'],
  { capoBy, tuningBy }: Move,
  header: Header | undefined,
  several: boolean,
): string {
  if (kind === 'as it stands') return 'As it stands';
  const frets = `${Math.abs(capoBy)} ${Math.abs(capoBy) === 1 ? 'fret' : 'frets'}`;
  const moved = `every capo ${frets} ${capoBy < 0 ? 'lower' : 'higher'}`;
  const place = capoWords(header?.capo).replace(/^with the /, '');
  const capo = several ? moved : place;
  const tune = `tune all strings ${halfStepWords(tuningBy)}`;
  const title = kind === 'capo' ? capo : kind === 'tuning' ? tune : `${tune}, ${capo}`;
  return title.charAt(0).toUpperCase() + title.slice(1);
}
