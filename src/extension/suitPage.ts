import type { SuitedTuning, SuitResult } from '../service/serviceApi';
import { markdownTable, markdownText } from './markdownText';
import { costText, moveText, ringText, suitedName } from './suitText';

/** What was asked. */
export interface SuitAsked {
  /** The name of the file. */
  readonly file: string;
  /** `at pitch, each string within 2 half steps`. */
  readonly limits: string;
}

/** Which tunings suit a passage, as a page in Markdown. */
export function suitPage({ file, limits }: SuitAsked, result: SuitResult): string {
  const { here, byStringsChanged, best, named, remarks, cautions } = result;
  const pieces = [
    `# Which tuning suits the passage of ${markdownText(file)}`,
    `Asked: ${markdownText(limits)}. Best for this cost, this passage, these limits.`,
    here === null
      ? 'In the tuning that it stands in, a note would be left out.'
      : `As it stands: ${costText(here)}, ${ringText(here)}.`,
    ...(cautions.length > 0 ? ['## Before a string goes up', ...cautions.map(markdownText)] : []),
    '## The best for each number of strings changed',
    tunings(byStringsChanged.map(({ tuning }) => tuning)),
    '## The best of all retunings',
    tunings(best),
    '## Tunings of the trade',
    tunings(named),
    '## What this holds for',
    ...remarks.map(markdownText),
  ];
  return `${pieces.join('\n\n')}\n`;
}

const HEAD = ['Tuning', 'Notes', 'Retuning', 'Cost', 'What rings', 'Hardest moment'];

function tunings(list: readonly SuitedTuning[]): string {
  if (list.length === 0) return 'None within these limits.';
  return markdownTable(
    HEAD,
    list.map((tuning) => [
      [suitedName(tuning), moveText(tuning)].filter((text) => text !== '').join(', '),
      tuning.notes,
      stepsText(tuning),
      costText(tuning).replace(/^cost /, ''),
      tuning.cost === null ? '' : ringText(tuning),
      tuning.hardest,
    ]),
  );
}

/** `string 3 up 2, string 2 down 2 (4 half steps)`. */
function stepsText({ steps, stringsChanged, stepsOfRetuning, borne }: SuitedTuning): string {
  const sum = stringsChanged > 1 ? ` (${stepsOfRetuning} half steps)` : '';
  return `${steps}${sum}${borne ? '' : '; more than a string of the usual set bears'}`;
}
