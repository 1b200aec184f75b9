import type { NoteKind, TechniqueKind } from '../../../../../src/notation/reading';

/** A note as a player reads it; names and meanings are those of `NoteReading`. */
export interface ExpectedNote {
  /** Index among the moments of its system: notes of one moment begin together. */
  readonly moment: number;
  /** Index among the bars of its system. */
  readonly bar: number;
  /** The number players give the string, whatever line it stands on. */
  readonly string: number;
  readonly kind: NoteKind;
  /** The fret written; 0 for a natural harmonic, undefined for `x`. */
  readonly fret: number | undefined;
  /** Where a harmonic is touched. */
  readonly touched: number | undefined;
  readonly ghost: boolean;
  readonly techniques: readonly ExpectedTechnique[];
}

export interface ExpectedTechnique {
  readonly kind: TechniqueKind;
  /** The fret whose pitch a bend, release or trill ends on: a bend by a whole step at 7 ends on 9. */
  readonly toFret: number | undefined;
}

const KINDS: ReadonlySet<string> = new Set<TechniqueKind>([
  'hammer-on',
  'pull-off',
  'tap',
  'trill',
  'slide',
  'slide-from-nowhere',
  'slide-to-nowhere',
  'bend',
  'pre-bend',
  'release',
  'vibrato',
]);

const NOTE =
  /^(?<string>\d+):(?:(?<fret>\d+)|\((?<ghost>\d+)\)|<(?<touched>[\d.]+)>|(?<mute>x))(?:\{(?<how>[^}]*)\})?$/;

/**
 * Reads the bars of a system: a space between moments, `+` between notes that begin together, and a note as
 * `string:fret`, `string:x`, `string:(fret)` (ghost) or `string:<fret>` (natural harmonic), with its techniques
 * in braces. Throws at anything else, so that a slip of the pen cannot pass.
 * @example readBars(['6:3+1:0 3:5 3:7{hammer-on}', '2:7{bend=9,release=7}'])
 */
export function readBars(bars: readonly string[]): ExpectedNote[] {
  let moment = -1;
  return bars.flatMap((text, bar) =>
    text
      .split(' ')
      .filter((one) => one !== '')
      .flatMap((one) => {
        moment += 1;
        return one.split('+').map((note) => readNote(note, moment, bar));
      }),
  );
}

function readNote(text: string, moment: number, bar: number): ExpectedNote {
  const parts = NOTE.exec(text)?.groups;
  if (!parts) throw new Error(`"${text}" is no note such as 3:5 or 3:7{bend=9}.`);
  const { fret, ghost, touched, mute, how } = parts;
  return {
    moment,
    bar,
    string: Number(parts['string']),
    kind: mute ? 'muted' : touched ? 'natural-harmonic' : 'fretted',
    fret: mute ? undefined : touched ? 0 : Number(fret ?? ghost),
    touched: touched === undefined ? undefined : Number(touched),
    ghost: ghost !== undefined,
    techniques: how ? how.split(',').map(readTechnique) : [],
  };
}

function readTechnique(text: string): ExpectedTechnique {
  const [kind = '', toFret] = text.split('=');
  if (!isTechnique(kind)) throw new Error(`"${kind}" is no technique.`);
  return { kind, toFret: toFret === undefined ? undefined : Number(toFret) };
}

function isTechnique(text: string): text is TechniqueKind {
  return KINDS.has(text);
}
