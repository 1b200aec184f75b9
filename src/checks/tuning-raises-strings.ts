import { retuningCaution } from '../instrument/retuningCaution';
import { stepsFrom } from '../instrument/tuningFormat';
import { findTuning } from '../instrument/tunings';
import { usualTuning } from '../notation/headerViews';
import type { Header } from '../notation/header';
import type { Check } from './check';
import { rangeOf } from './support/edits';

/** Raises of more half steps than this are told: open E and open A, which players do tune up to, stop at two. Common practice, no source. */
const USUAL_RAISE = 2;
const OCTAVE = 12;

export const tuningRaisesStrings: Check = {
  code: 'tuning-raises-strings',
  severity: 'information',
  title: 'A tuning that raises strings far',
  help: {
    group: 'Fields',
    meaning:
      'The tuning puts a string more than two half steps above the usual tuning of the instrument. Tension grows with the square of the pitch: three half steps are about 41 % more. A string can break and hurt you, and a neck or bridge can suffer. Strings an octave up are taken for a thinner set, as in high strung.',
    mending:
      'Look at the string maker’s figures and ask a luthier before you tune so high. Lighter strings, or a lower tuning with a capo, ask less.',
  },
  run: {
    fields: ({ fields, problems, after }) => {
      const field = fields.filter(({ line }) => line.field === 'tuning').at(-1);
      const caution = field && cautionFor(after);
      if (
        !field ||
        caution === undefined ||
        problems.some((p) => p.field === field && p.kind === 'malformed')
      ) {
        return [];
      }
      const { lineIndex, line } = field;
      const range = rangeOf(lineIndex, line.valueStart, line.valueStart + line.value.length);
      return [{ range, message: caution, mends: [] }];
    },
  },
  examples: {
    raises: ['tuning: standard up 3\n', 'tuning: E2 A2 D3 G3 B3 G4\n', 'tuning: CGDAEG\n'],
    quiet: [
      'tuning: open E\n',
      'tuning: standard up 2\n',
      'tuning: high strung\n',
      'tuning: standard down 5\n',
    ],
  },
};

/** The caution for a tuning; undefined for one that asks no more than is usual. */
function cautionFor({ instrument, tuning }: Header): string | undefined {
  const raises = stepsFrom(usualTuning(instrument), tuning).filter(
    (steps) => steps !== undefined && steps > 0,
  );
  // Nobody tunes a string up by an octave: these are other strings.
  const stretched = raises.filter((steps): steps is number => steps !== undefined && steps !== OCTAVE);
  const most = Math.max(0, ...stretched);
  if (most <= USUAL_RAISE) return undefined;
  const caution = retuningCaution(most);
  const remark = findTuning(tuning.name ?? '', instrument)?.remark;
  return caution && remark ? `${caution} ${remark}` : caution;
}
