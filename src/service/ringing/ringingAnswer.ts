import type { Place, Range } from '../records';

/** Which strings may ring: asked for the part at a place, for a range, or, with neither, for the whole file. */
export interface RingingRequest {
  readonly place?: Place;
  readonly range?: Range;
}

/** Plain records: what each open string is to the key and to every chord that is written. */
export interface RingingAnswer {
  /** `the part low guitar`, `the whole file`: what the answer holds for. */
  readonly title: string;
  /** One for each key and tuning that is met; none where no key is written. */
  readonly keys: readonly RingingKey[];
  /** Every distinct chord under each tuning and key, in the order of the text. */
  readonly chords: readonly RingingChord[];
  /** Short sentences for the user: what could not be read, what is missing. */
  readonly remarks: readonly string[];
}

/** Which open strings may ring over one thing. */
export interface RingingOver {
  /** As played, which is how the text names it: `G`, `D mixolydian`. */
  readonly name: string;
  /** What it sounds as under a full capo; null without one. */
  readonly sounds: string | null;
  /** The tuning and capo that it holds for: `DADGAD, capo 2`. */
  readonly tuning: string;
  /** String 1 last, as a player counts from the low side. */
  readonly strings: readonly RingingString[];
  /** `Strings 6, 4 and 1 may ring (root, root, fifth); string 3 in passing (second); mute string 2 (…)`. */
  readonly words: string;
}

export type RingingKey = RingingOver;

export interface RingingChord extends RingingOver {
  /** Numbers of the bars in which it is written, rising, each once. */
  readonly bars: readonly number[];
  /** `bars 1 and 3–5`; of several parts with the part's name: `low guitar, bar 2`. */
  readonly where: string;
}

/**
 * `free`: may ring on; `passing`: does no harm where it is passed through, and is not left ringing; `mute`: is to be
 * stopped.
 */
export type RingingVerdict = 'free' | 'passing' | 'mute';

export interface RingingString {
  /** As players count: 1 is the top line of the tab. */
  readonly string: number;
  /** The open string as it sounds, with the capo: `D3`. */
  readonly note: string;
  readonly midi: number;
  readonly verdict: RingingVerdict;
  /** What it is over the root: `root`, `flat third`, `fourth`. */
  readonly role: string;
  /** Why, in a few words: the role, or `a half step under the root`. */
  readonly reason: string;
}
