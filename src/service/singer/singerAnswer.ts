import type { Range } from '../records';

/** What a singer can do, and the tune that is to be sung. One of `voice`, `compass` and `key` is needed. */
export interface SingerRequest {
  /** The passage that is moved, widened to bar signs; undefined is the whole file. */
  readonly range: Range | undefined;
  /** A voice by name: `soprano`, `alto`, `tenor`, `bass` … */
  readonly voice?: string;
  /** The lowest and highest note that the singer is at ease with: `A3-D5`. Comes before `voice`. */
  readonly compass?: string;
  /** The key that suits the singer, as it is to sound: `Bb`, `E minor`. With a voice, both are looked at. */
  readonly key?: string;
  /** The part whose top line is the tune. */
  readonly tunePart?: string;
  /** The lowest note of the tune as the piece sounds now: `D4`. Only together with `high`; comes before `tunePart`. */
  readonly low?: string;
  /** The highest one. */
  readonly high?: string;
  /** The highest capo that is thought of, as a fret; 7 where nothing is said. */
  readonly highestCapo?: number;
}

/** Plain records. */
export interface SingerAnswer {
  /** Null where only a key was given. */
  readonly voice: SungRange | null;
  /** Null where only a key was given and there is no tune to be found. */
  readonly tune: SungRange | null;
  /** The parts with strings that have a name, any of which may hold the tune. */
  readonly parts: readonly string[];
  /** As the piece stands. */
  readonly here: SingerWay;
  /** Best first; at most `MOST_WAYS`. The piece as it stands is among them where it does. */
  readonly ways: readonly SingerWay[];
  /** Half steps by which the tune is wider than the voice; 0 where it is not. */
  readonly tooWide: number;
  /** Short sentences for the user. */
  readonly remarks: readonly string[];
  /** The usual cautions where some of the ways raise strings; a client shows them without being asked. */
  readonly cautions: readonly string[];
}

/** From a lowest to a highest note. */
export interface SungRange {
  /** `alto`, `the top line of the part Voice`. */
  readonly name: string;
  readonly low: string;
  readonly high: string;
  readonly lowMidi: number;
  readonly highMidi: number;
}

/** One way to bring the tune to the voice. Shapes stay; the sound moves. */
export interface SingerWay {
  readonly kind: 'as it stands' | 'capo' | 'tuning' | 'both';
  /** `Capo at fret 3`, `Tune down 2 half steps`, `Tune down 2 half steps, capo at fret 1`. */
  readonly title: string;
  /** Half steps by which everything sounds higher than now. */
  readonly halfSteps: number;
  /** The value of `capo:` after it, where the passage has one capo. */
  readonly capo: string;
  /** The value of `tuning:` after it, where the passage has one tuning. */
  readonly tuning: string;
  /** `Shapes of G sound in Bb`. */
  readonly words: string;
  /** The key of the shapes and the key that sounds; null where no key is written. */
  readonly shapes: string | null;
  readonly sounds: string | null;
  /** Null where no voice or no tune is known. */
  readonly lies: TuneInVoice | null;
  readonly strain: StringStrain;
  /** Frets above the capo. */
  readonly fretsLeft: number;
  /** The usual cautions where strings go above what they are strung for. */
  readonly cautions: readonly string[];
  /** What `applyFit` takes; null as it stands. */
  readonly request: FitRequest | null;
}

/** How a tune lies in a voice. */
export interface TuneInVoice {
  /** Lowest and highest note as sung. */
  readonly low: string;
  readonly high: string;
  /** Octaves by which the singer sings it above the notes of the tune: −1 is an octave lower. */
  readonly octaves: number;
  /** Half steps between the voice's lowest note and the tune's; negative where the tune goes lower. */
  readonly under: number;
  /** Half steps between the tune's highest note and the voice's; negative where the tune goes higher. */
  readonly above: number;
  /** In a sentence without its stop. */
  readonly words: string;
}

/** What a way asks of the strings. */
export interface StringStrain {
  /** Change of the tension against now, per cent; 0 for a capo. */
  readonly change: number;
  /** The string with the most tension, per cent of its tension in the instrument's usual tuning. */
  readonly most: number;
  /** The one with the least. */
  readonly least: number;
  readonly words: string;
}

/** A way as a change of the text: one edit, one undo. */
export interface FitRequest {
  readonly range: Range | undefined;
  /** Frets by which the capo goes up, of every capo in the passage; none counts as 0. */
  readonly capoBy: number;
  /** Half steps by which all strings go up. */
  readonly tuningBy: number;
}
