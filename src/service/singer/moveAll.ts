import type { Capo } from '../../instrument/capo';
import type { Tuning } from '../../instrument/tuning';
import { transposeKey } from '../../music/key';
import type { Header } from '../../notation/header';
import { mapHeaders } from '../change/change';
import type { Settings } from '../records';
import { movedTuning } from './movedTuning';

/** A move of the sound with all shapes in their places. */
export interface Move {
  /** Frets by which a full capo goes up; none stands at 0. */
  readonly capoBy: number;
  /** Half steps by which all strings go up. */
  readonly tuningBy: number;
}

/** The fields after a move, as a function of those before it. */
export type Mover = (move: Move) => (header: Header) => Header;

/**
 * Moves fields. Key and chord names are as played, so that a capo leaves them and another tuning moves them. A partial
 * capo stays where it is. Each tuning is worked out once.
 */
export function createMover(settings: Settings): Mover {
  const known = new Map<Header, Map<number, Tuning>>();
  const tuningOf = (header: Header, by: number): Tuning => {
    const own = known.get(header) ?? new Map<number, Tuning>();
    known.set(header, own);
    const tuning = own.get(by) ?? movedTuning(header, by, settings);
    own.set(by, tuning);
    return tuning;
  };
  return ({ capoBy, tuningBy }) =>
    mapHeaders((header) => ({
      ...header,
      tuning: tuningOf(header, tuningBy),
      capo: movedCapo(header.capo, capoBy),
      key: header.key && tuningBy !== 0 ? transposeKey(header.key, tuningBy) : header.key,
    }));
}

function movedCapo(capo: Capo | undefined, by: number): Capo | undefined {
  if (by === 0 || capo?.strings) return capo;
  const fret = (capo?.fret ?? 0) + by;
  return fret > 0 ? { fret, strings: undefined } : undefined;
}
