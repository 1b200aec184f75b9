import type { TuningChoice } from '../../service/serviceApi';
import type { SheetAnswer } from '../../service/sheet/sheetAnswer';
import type { StringsAnswer } from '../../service/strings/stringsAnswer';
import { isAnswer, isList, isNullable, isOneOf, isRecord, isText, messageReader } from './message';

/** What the extension says to the tuning sheet. */
export type ToSheet =
  | {
      readonly kind: 'sheet';
      readonly sheet: SheetAnswer;
      /** Null where it cannot be told; `strainProblem` says why. */
      readonly strain: StringsAnswer | null;
      readonly strainProblem: string;
      /** Tunings on offer to retune from. */
      readonly choices: readonly TuningChoice[];
      /** Why the tuning that was asked for as the one to come from is not taken; empty when it is. */
      readonly fromProblem: string;
    }
  /** There is nothing to show, and why. */
  | { readonly kind: 'nothing'; readonly words: string }
  /** Something was done, for all to hear: `Copied`. */
  | { readonly kind: 'done'; readonly words: string };

/** What the tuning sheet says to the extension. */
export type FromSheet =
  /** With the tuning to come from that it remembers; empty for the usual choice. */
  | { readonly kind: 'ready'; readonly from: string }
  | { readonly kind: 'from'; readonly from: string }
  /** `what` ends the sentence `… copied`. */
  | { readonly kind: 'copy'; readonly text: string; readonly what: string }
  | { readonly kind: 'handout'; readonly as: 'svg' | 'copy' };

const isChoice = isRecord<TuningChoice>({ value: isText, notes: isText, steps: isText });

export const readToSheet = messageReader<ToSheet>({
  sheet: {
    sheet: isAnswer<SheetAnswer>('tuning', 'open', 'strings', 'retuning', 'barres', 'slide', 'scale'),
    strain: isNullable(isAnswer<StringsAnswer>('strings', 'total', 'cautions')),
    strainProblem: isText,
    choices: isList(isChoice),
    fromProblem: isText,
  },
  nothing: { words: isText },
  done: { words: isText },
});

export const readFromSheet = messageReader<FromSheet>({
  ready: { from: isText },
  from: { from: isText },
  copy: { text: isText, what: isText },
  handout: { as: isOneOf('svg', 'copy') },
});
