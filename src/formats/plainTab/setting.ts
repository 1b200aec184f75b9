import type { Capo } from '../../instrument/capo';
import type { Instrument } from '../../instrument/instrument';
import type { Tuning } from '../../instrument/tuning';
import { nameOfTuning } from '../../instrument/tuningFormat';
import { formatPitchName } from '../../music/noteName';
import type { InForce } from './fieldsBetween';

/** What a system is played on, as far as its text tells. */
export interface Setting {
  readonly instrument: Instrument;
  readonly tuning: Tuning;
  readonly capo: Capo | undefined;
  /** The lines stand with the lowest-placed string on top. */
  readonly upsideDown: boolean;
  /** For each line as it is to be written, top to bottom, the index of its string in the tuning. */
  readonly indices: readonly number[];
  /** The labels are those of the tuning. */
  readonly labelsAgree: boolean;
  readonly instrumentSaid: boolean;
  /** How the tuning was found; `there`: it is in force where the text is pasted. */
  readonly tuningBy: 'caller' | 'field' | 'words' | 'labels' | 'there' | 'usual';
  readonly capoBy: 'field' | 'words' | 'nothing';
  /** The lines of text that say it all in the writing of a field: the fields take their place. */
  readonly fieldLines: readonly number[];
}

/** What the caller says. */
export interface Given {
  readonly instrument: Instrument | undefined;
  readonly tuning: string | undefined;
  readonly userTunings: Readonly<Record<string, string>>;
  /** What is in force where the text is pasted: it holds where the text says nothing else. */
  readonly inForce: InForce | undefined;
}

/** The name of a tuning in a sentence: the trade's, else its notes. */
export function tuningName(tuning: Tuning, instrument: Instrument): string {
  return (
    nameOfTuning(tuning, instrument) ??
    tuning.strings.map(({ pitches }) => formatPitchName(pitches[0].name)).join(' ')
  );
}
