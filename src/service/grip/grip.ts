import type { Fraction } from '../../music/fraction';
import type { Header } from '../../notation/header';
import { capoShift, fingerboardOf } from '../../notation/headerViews';
import type { System, TabDocument } from '../../notation/tabDocument';
import type { Grip } from '../../playing/hand/grips';
import { handOptions } from '../../playing/hand/options';
import type { Target } from '../../playing/target';
import { momentAt } from '../hover/column';
import { columnAt, noteAtCursor } from '../locate';
import type { Place, Settings } from '../records';
import type { GripAnswer, GripString } from './gripAnswer';
import { holdPlaces, type HeldPlace } from './hold';
import { gripPicture, type Across, type DrawnString } from './gripPicture';
import { gripWords, LEAST_EFFORT } from './gripWords';
import { layBar, type StraightBar } from './straightBar';
import { stringsAt, type StringAt } from './strings';

/**
 * The fingers of least effort, under the hand's table, for what is struck at a place and what is still held there;
 * for these notes alone, without a look at those before and after. Undefined outside systems and where no string is
 * stopped or open.
 * @example grip(document, { line: 2, character: 4 }, DEFAULT_SETTINGS)?.words // 'Index at fret 2 on string 3. …'
 */
export function grip(document: TabDocument, place: Place, settings: Settings): GripAnswer | undefined {
  const system = document.systemAt(place.line);
  if (!system) return undefined;
  const found = noteAtCursor(document, place);
  if (found) return gripAt(document, found.system, found.note.onset, settings);
  const column = columnAt(system, place);
  return column === undefined ? undefined : gripAt(document, system, momentAt(system, column), settings);
}

/** The same for a moment of a system, in quarter notes from its start. */
export function gripAt(
  document: TabDocument,
  system: System,
  time: Fraction,
  settings: Settings,
): GripAnswer | undefined {
  const { header } = system;
  const strings = stringsAt(document, system, time);
  const places = strings.flatMap(({ string, state, fret, struck }): HeldPlace[] =>
    fret !== undefined && (state === 'stopped' || state === 'open') ? [{ string, fret, struck }] : [],
  );
  if (places.length === 0) return undefined;
  const held =
    header.fretting === 'slide' ? underBar(places, header) : underFingers(places, header, settings);
  const words = gripWords({ strings, header, ...held });
  const told = strings.map((one) => gripString(one, held));
  const svg = gripPicture({
    strings: told.map((one) => drawnString(one, header)),
    barres: held.grip?.barres ?? [],
    bar: held.bar,
    capo: partialCapo(header),
    title: words.alt,
  });
  return {
    words: words.text,
    basis: held.grip && stoppedIn(held.grip) > 0 ? LEAST_EFFORT : '',
    slide: header.fretting === 'slide',
    strings: told,
    position: held.grip && stoppedIn(held.grip) > 0 ? held.grip.position : null,
    barres: held.grip?.barres ?? [],
    millimetres: held.grip?.millimetres ?? null,
    bar: held.bar ?? null,
    letGo: held.letGo,
    refused: held.refused,
    svg,
    alt: words.alt,
  };
}

/** How many strings an answer stops, with whatever holds them. */
export function stoppedStrings({ strings }: GripAnswer): number {
  return strings.filter(({ state }) => state === 'stopped').length;
}

/** What holds the strings: fingers or a bar. */
export interface Held {
  readonly grip: Grip | undefined;
  readonly bar: StraightBar | undefined;
  readonly letGo: readonly number[];
  readonly refused: readonly string[];
}

function underFingers(places: readonly HeldPlace[], header: Header, settings: Settings): Held {
  return {
    bar: undefined,
    ...holdPlaces(places, targetOf(header, settings), handOptions({ thumb: settings.thumb })),
  };
}

function underBar(places: readonly HeldPlace[], header: Header): Held {
  const board = fingerboardOf(header);
  const count = header.tuning.strings.length;
  return {
    grip: undefined,
    ...layBar(places, ({ string, fret }) => board.absoluteFret(count - string, fret)),
  };
}

/** The neck under a header and the hand that the user has set. */
export function targetOf(header: Header, { reach }: Pick<Settings, 'reach'>): Target {
  return {
    fingerboard: fingerboardOf(header),
    scaleLength: header.scaleLength,
    reach,
    slide: header.fretting === 'slide',
  };
}

function stoppedIn({ placements }: Grip): number {
  return placements.filter(({ finger }) => finger !== 0).length;
}

function gripString({ string, state, fret, struck }: StringAt, { grip, bar, letGo }: Held): GripString {
  // Where not even what is struck can be held, what rings is no question.
  const lost = letGo.includes(string) || (!grip && !bar && !struck);
  if (lost) return { string, state: 'silent', fret: null, finger: null, struck };
  const finger = grip?.placements.find((place) => place.string === string)?.finger;
  return { string, state, fret: fret ?? null, finger: finger ?? null, struck };
}

const MARKS: Readonly<Record<GripString['state'], DrawnString['mark']>> = {
  open: 'open',
  touched: 'harmonic',
  muted: 'silent',
  silent: 'silent',
  stopped: undefined,
  tapped: undefined,
  unplayable: undefined,
};

/** A string as its picture has it. */
export function drawnString(
  { string, state, fret, finger }: Omit<GripString, 'struck'>,
  header: Header,
): DrawnString {
  const own = header.tuning.strings[header.tuning.strings.length - string];
  return {
    string,
    course: own?.pitches.length === 2,
    start: own?.firstFret ?? 0,
    mark: MARKS[state],
    fret: state === 'stopped' ? (fret ?? undefined) : undefined,
    finger: finger ?? undefined,
  };
}

/** A partial capo between its outermost strings; a full one is where frets count from. */
export function partialCapo(header: Header): Across | undefined {
  const strings = header.capo?.strings;
  if (!header.capo || !strings || capoShift(header) !== 0) return undefined;
  return { fret: header.capo.fret, from: Math.max(...strings), to: Math.min(...strings) };
}
