import type { NeckAnswer } from '../../service/neck/neckAnswer';
import { isAnswer, isCount, isFlag, isOneOf, isOptional, isRecord, isText, messageReader } from './message';

/** What the page wants to see marked, and how far up the neck. */
export interface NeckChoice {
  readonly scale?: string | undefined;
  readonly chord?: string | undefined;
  /** Left out: every fret of the neck. */
  readonly frets?: number | undefined;
}

export const NECK_LABELS = ['notes', 'degrees', 'intervals'] as const;
export type NeckLabels = (typeof NECK_LABELS)[number];

/** What the extension says to the neck. */
export type ToNeck =
  | {
      readonly kind: 'neck';
      readonly answer: NeckAnswer;
      readonly leftHanded: boolean;
      /** Why the scale or chord chosen is not marked; empty when it is. */
      readonly problem: string;
    }
  /** There is no tab, and what to do. */
  | { readonly kind: 'nothing'; readonly words: string }
  /** Something was done or could not be, for all to hear. */
  | { readonly kind: 'done'; readonly words: string; readonly undoable: boolean };

/** What the neck says to the extension. */
export type FromNeck =
  | { readonly kind: 'ready'; readonly choice: NeckChoice }
  | { readonly kind: 'choose'; readonly choice: NeckChoice }
  | { readonly kind: 'write'; readonly string: number; readonly fret: number }
  | { readonly kind: 'undo' }
  | { readonly kind: 'copy'; readonly text: string }
  | {
      readonly kind: 'save';
      readonly labels: NeckLabels;
      readonly every: boolean;
      readonly upright: boolean;
    };

const isChoice = isRecord<NeckChoice>({
  scale: isOptional(isText),
  chord: isOptional(isText),
  frets: isOptional(isCount),
});

export const readToNeck = messageReader<ToNeck>({
  neck: { answer: isAnswer<NeckAnswer>('moment'), leftHanded: isFlag, problem: isText },
  nothing: { words: isText },
  done: { words: isText, undoable: isFlag },
});

export const readFromNeck = messageReader<FromNeck>({
  ready: { choice: isChoice },
  choose: { choice: isChoice },
  write: { string: isCount, fret: isCount },
  undo: {},
  copy: { text: isText },
  save: { labels: isOneOf(...NECK_LABELS), every: isFlag, upright: isFlag },
});
