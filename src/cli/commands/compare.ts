import type { CompareAnswer, ComparedBar } from '../../service/compare/compareAnswer';
import { createLanguageService } from '../../service/languageService';
import type { Command } from '../command';
import { JSON_OPTION, TUNINGS } from '../commonOptions';
import { EXIT } from '../exitCodes';
import { Refusal } from '../refusal';
import { settingsOf } from '../settings';
import { readTextFile } from '../textFile';

/** Tells what became of the notes from one version of a piece to another. */
export const compare: Command = {
  name: 'compare',
  does: 'tell what became of the notes from one version of a piece to another',
  operands: {
    word: 'BEFORE AFTER',
    help: 'two tab files; one of them may be - for standard input',
    many: true,
  },
  options: [JSON_OPTION, TUNINGS],
  async run(asked, output) {
    const [before, after, ...more] = asked.operands;
    if (after === undefined || more.length > 0)
      throw new Refusal('Two files are compared, the earlier one first: pegbox compare BEFORE AFTER.');
    if (before === '-' && after === '-')
      throw new Refusal('Standard input (-) can be read once only; name a file for one of the two.');
    const settings = await settingsOf(asked);
    const service = createLanguageService();
    const [one, other] = [await readTextFile(before), await readTextFile(after)];
    const answer = service.compare(service.open(one.text, settings), service.open(other.text, settings));
    if (asked.flags.has('json')) output.json(answer);
    else output.text(`${report(answer)}\n`);
    return EXIT.done;
  },
};

const SIGNS: Readonly<Record<ComparedBar['changes'][number]['kind'], string>> = {
  added: 'added',
  lost: 'lost',
  retimed: 'time',
  repitched: 'pitch',
  elsewhere: 'moved',
  played: 'played',
};

function report({ bars, fields, remarks }: CompareAnswer): string {
  const lines = [...remarks];
  for (const { part, field, before, after } of fields)
    lines.push(`${part === null ? '' : `${part}, `}${field}: ${before} before, now ${after}`);
  let heading = '';
  for (const { part, section, title, changes } of bars) {
    const own = [part, section].filter((name) => name !== null && name !== '').join(', ');
    if (own !== heading) lines.push('', own);
    else if (heading === '' && bars[0]?.title === title) lines.push('');
    heading = own;
    lines.push(title);
    for (const { kind, words } of changes) lines.push(`  ${SIGNS[kind].padEnd(6)}  ${words}`);
  }
  return lines.join('\n');
}
