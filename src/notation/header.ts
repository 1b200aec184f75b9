import type { Capo } from '../instrument/capo';
import type { Gauge } from '../instrument/gauges';
import type { Instrument } from '../instrument/instrument';
import type { Tuning } from '../instrument/tuning';
import type { Key } from '../music/key';
import type { Meter } from '../music/meter';
import type { Tempo } from '../music/tempo';

/**
 * Everything the fields say at one place of a document, ready to be used. Two places with the same values share
 * one record, so that `===` tells whether anything changed.
 */
export interface Header {
  readonly title: string | undefined;
  readonly by: readonly string[];
  readonly remarks: readonly string[];
  readonly instrument: Instrument;
  readonly tuning: Tuning;
  /** Undefined for none. */
  readonly capo: Capo | undefined;
  readonly frets: number;
  /** Millimetres. */
  readonly scaleLength: number;
  /** Low string first; undefined where none is written and none is usual. */
  readonly gauges: readonly Gauge[] | undefined;
  /** Hertz of A4. */
  readonly referencePitch: number;
  readonly key: Key | undefined;
  readonly meter: Meter;
  readonly tempo: Tempo;
  readonly feel: Feel;
  readonly fretting: Fretting;
  /** Undefined before the first `part`. */
  readonly part: string | undefined;
}

export type Feel = 'straight' | 'swing' | 'swing sixteenths';
export type Fretting = 'fingers' | 'slide';
