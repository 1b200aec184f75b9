import type { Capo } from '../../instrument/capo';
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

/**
 * The fields after a move. Key and chord names are as played, so that a capo leaves them and another tuning moves them.
 * A partial capo stays where it is.
 */
export function fieldsAfter({ capoBy, tuningBy }: Move, settings: Settings): (header: Header) => Header {
  return mapHeaders((header) => ({
    ...header,
    tuning: movedTuning(header, tuningBy, settings),
    capo: movedCapo(header.capo, capoBy),
    key: header.key && tuningBy !== 0 ? transposeKey(header.key, tuningBy) : header.key,
  }));
}

function movedCapo(capo: Capo | undefined, by: number): Capo | undefined {
  if (by === 0 || capo?.strings) return capo;
  const fret = (capo?.fret ?? 0) + by;
  return fret > 0 ? { fret, strings: undefined } : undefined;
}
