import { retuningCaution } from '../instrument/retuningCaution';
import { stepsFrom } from '../instrument/tuningFormat';
import { usualTuning } from '../notation/headerViews';
import type { Header } from '../notation/header';
import type { Check } from './check';
import { rangeOf } from './support/edits';
import { OCTAVE, tuningRemark } from './support/raises';
import { groupStrain, nearBreaking } from './support/strain';

/** Raises of more half steps than this are told: open E and open A, which players do tune up to, stop at two. Common practice, no source. */
const USUAL_RAISE = 2;

export const tuningRaisesStrings: Check = {
  code: 'tuning-raises-strings',
  severity: 'information',
  title: 'A tuning that raises strings far',
  help: {
    group: 'Fields',
    meaning:
      'The tuning puts a string more than two half steps above the usual tuning of the instrument. Tension grows with the square of the pitch: three half steps are about 41 % more. A string can break and hurt you, and a neck or bridge can suffer. Strings an octave up are taken for a thinner set, as in high strung. Where a plain string comes near its strength, `string-near-breaking` tells it instead.',
    mending:
      'Look at the string maker’s figures and ask a luthier before you tune so high. Lighter strings, or a lower tuning with a capo, ask less.',
  },
  run: {
    fields: (group, _document, settings) => {
      const { fields, problems, after } = group;
      const field = fields.filter(({ line }) => line.field === 'tuning').at(-1);
      const caution = field && cautionFor(after);
      if (
        !field ||
        caution === undefined ||
        problems.some((p) => p.field === field && p.kind === 'malformed')
      ) {
        return [];
      }
      // A string near breaking is told with the same cautions.
      const strain = groupStrain(group, settings);
      if (strain && nearBreaking(strain).length > 0) return [];
      const { lineIndex, line } = field;
      const range = rangeOf(lineIndex, line.valueStart, line.valueStart + line.value.length);
      return [{ range, message: caution, mends: [] }];
    },
  },
  examples: {
    raises: [
      'tuning: E2 C3 D3 G3 B3 E4\n',
      'instrument: classical guitar\ntuning: standard up 3\n',
      'instrument: bass\ntuning: standard up 3\n',
    ],
    quiet: [
      'tuning: open E\n',
      'tuning: standard up 2\n',
      'tuning: high strung\n',
      'tuning: standard down 5\n',
      'tuning: standard up 3\n', // told by string-near-breaking
    ],
  },
};

/** The caution for a tuning; undefined for one that asks no more than is usual. */
function cautionFor(header: Header): string | undefined {
  const { instrument, tuning } = header;
  const raises = stepsFrom(usualTuning(instrument), tuning).filter(
    (steps) => steps !== undefined && steps > 0,
  );
  // Nobody tunes a string up by an octave: these are other strings.
  const stretched = raises.filter((steps): steps is number => steps !== undefined && steps !== OCTAVE);
  const most = Math.max(0, ...stretched);
  if (most <= USUAL_RAISE) return undefined;
  const caution = retuningCaution(most);
  const remark = tuningRemark(header);
  return caution && remark ? `${caution} ${remark}` : caution;
}
