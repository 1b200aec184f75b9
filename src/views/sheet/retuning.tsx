import type { JSX } from 'preact';
import type { TuningChoice } from '../../service/serviceApi';
import type { SheetRetuning } from '../../service/sheet/sheetAnswer';
import { Cautions } from '../shared/cautions';
import { sentence } from '../shared/words';
import { FromTuning } from './fromTuning';

export interface RetuningProps {
  readonly retuning: SheetRetuning;
  readonly choices: readonly TuningChoice[];
  readonly from: string;
  readonly problem: string;
  readonly onFrom: (from: string) => void;
}

/** How to get here from another tuning: safe first, then step by step, then what is already known. */
export function Retuning({ retuning, choices, from, problem, onFrom }: RetuningProps): JSX.Element {
  const { words, steps, lastCheck, pull, carriesOver, cautions, same } = retuning;
  return (
    <>
      <FromTuning {...{ retuning, choices, from, problem, onFrom }} />
      <p>{sentence(words)}</p>
      <Cautions cautions={cautions} />
      {!same && (
        <>
          <ol class="steps">
            {steps.map((step) => (
              <li key={`${step.number} ${step.words}`}>
                {sentence(step.words)}
                {step.check !== '' && <div class="quiet">{sentence(step.check)}</div>}
              </li>
            ))}
            {lastCheck !== '' && <li>{sentence(lastCheck)}</li>}
          </ol>
          <p>{sentence(pull.words)}</p>
        </>
      )}
      {carriesOver.words.length > 0 && (
        <>
          <h3>What carries over</h3>
          <ul>
            {carriesOver.words.map((one) => (
              <li key={one}>{sentence(one)}</li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}
