import { readPlainTab } from '../../src/formats/plainTab/readPlainTab';
import { writePlainTab } from '../../src/formats/plainTab/writePlainTab';
import { createLanguageService } from '../../src/service/languageService';
import { DEFAULT_SETTINGS } from '../../src/service/settings';
import { ratios, RUNS, timed, type Bench } from './rows';
import { tabSong } from './texts';

/** Milliseconds for 1,000 systems. */
const GOAL = 1000;
const SYSTEMS = 1_000;
const BARS_A_SYSTEM = 4;

const service = createLanguageService();
const SETTINGS = { settings: DEFAULT_SETTINGS };

/**
 * Reading 1,000 systems of plain tab, as they come from a page and with signs of other habits, held to the goal and to
 * opening the same song in the notation, every system read, in the same run.
 */
export const run: Bench = (report) => {
  const song = tabSong(SYSTEMS * BARS_A_SYSTEM, 7);
  const plain = writePlainTab(service.open(song, DEFAULT_SETTINGS), undefined).text;
  const habits = plain
    .replace(/(\d)\/(\d)/g, '$1s$2')
    .replace(/^[eBGDAE]+\|/gm, '|')
    .replace(/h/g, 'H');
  readPlainTab(plain.slice(0, 50_000), SETTINGS);
  const opened = Array.from({ length: RUNS }, () =>
    timed(() => {
      for (const { reading } of service.open(song, DEFAULT_SETTINGS).systems)
        if (reading.notes.length < 0) throw new Error();
    }),
  );
  report({ what: `opening ${SYSTEMS} systems of the notation, all read`, runs: opened, unit: 'ms' });
  for (const [what, text] of [
    ['as copied', plain],
    ['without labels, other signs', habits],
  ] as const) {
    const runs = Array.from({ length: RUNS }, () => timed(() => readPlainTab(text, SETTINGS)));
    report({ what: `import of ${SYSTEMS} systems, ${what}`, runs, unit: 'ms', goal: { atMost: GOAL } });
    report({ what: `import / opening, ${what}`, runs: ratios(runs, opened), unit: '×' });
  }
};
