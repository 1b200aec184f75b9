import { createLanguageService } from '../../service/languageService';
import type { LibraryEntry } from '../../service/library/libraryAnswer';
import { GROUPINGS, groupFiles } from '../../service/library/grouping';
import { alignedColumns } from '../alignedColumns';
import type { Command } from '../command';
import { JSON_OPTION, TUNINGS } from '../commonOptions';
import { EXIT } from '../exitCodes';
import { wordOf } from '../optionValues';
import { settingsOf } from '../settings';
import { tabFiles } from '../tabFiles';
import { readTextFile } from '../textFile';

/** Lists the tabs of folders with their tuning, capo, key and range. */
export const list: Command = {
  name: 'list',
  does: 'list the tabs of folders with title, tuning, capo, key and range',
  operands: { word: 'FOLDERS…', help: 'folders, with all folders in them, or tab files', many: true },
  options: [
    JSON_OPTION,
    TUNINGS,
    {
      name: 'by',
      value: 'tuning|capo|key|range',
      help: 'what files have in common that stand together: tuning (the default), capo, key, or range, lowest note first',
    },
  ],
  async run(asked, output) {
    const by = wordOf(asked, 'by', GROUPINGS) ?? 'tuning';
    const settings = await settingsOf(asked);
    const service = createLanguageService();
    const files: { name: string; entry: LibraryEntry }[] = [];
    for (const name of await tabFiles(asked.operands)) {
      const { text } = await readTextFile(name);
      files.push({ name, entry: service.libraryEntry(service.open(text, settings)) });
    }
    const groups = groupFiles(files, by);
    if (asked.flags.has('json')) {
      const plain = groups.map((group) => ({
        name: group.name,
        files: group.files.map(({ name, entry }) => ({ file: name, ...entry })),
      }));
      output.json({ by, groups: plain });
    } else if (files.length === 0) output.report('There are no files that end in .pegbox.\n');
    else output.text(groups.map((group) => `${group.name}\n${table(group.files)}\n`).join('\n'));
    return EXIT.done;
  },
};

function table(files: readonly { readonly name: string; readonly entry: LibraryEntry }[]): string {
  return alignedColumns(
    files.map(({ name, entry: { title, tunings, capos, keys, range } }) => [
      `  ${title === '' ? 'no title' : title}`,
      tunings.join('; '),
      capos.map((capo) => (capo === 'none' ? 'no capo' : `capo ${capo}`)).join('; '),
      keys.join('; '),
      range ? `${range.low}–${range.high}` : '',
      name,
    ]),
  );
}
