import { createLanguageService } from '../../src/service/languageService';
import { DEFAULT_SETTINGS } from '../../src/service/settings';
import { ratios, RUNS, timed, type Bench } from './rows';
import { tabSong } from './texts';

/** Milliseconds for a warm search over all files. */
const GOAL = 2_000;
const FILES = 1_000;
const BARS = 32;

const service = createLanguageService();

/** Finding a tune of five notes over a thousand files, against a plain search for a line of text in the same files. */
export const run: Bench = (report) => {
  const texts = Array.from({ length: FILES }, (_, i) => tabSong(BARS, 1_000 + i));
  const pattern = service.typedPattern('E4 F#4 G4 E4 D4');
  if ('error' in pattern) throw new Error(pattern.error);
  const read = texts.slice(0, FILES / 10);
  const reading = timed(() => read.map((text) => service.soundIndex(service.open(text, DEFAULT_SETTINGS))));
  report({ what: 'reading one file for the first time', runs: [reading / read.length], unit: 'ms' });
  const indices = texts.map((text) => service.soundIndex(service.open(text, DEFAULT_SETTINGS)));
  for (const [what, wish] of [
    ['the tune', {}],
    ['the tune over any accompaniment', { over: true }],
    ['the chords', { by: 'chords' }],
  ] as const) {
    const runs = Array.from({ length: RUNS }, () =>
      timed(() => indices.map((index) => service.findBySound(pattern, index, wish))),
    );
    report({ what: `${FILES} files, warm, ${what}`, runs, unit: 'ms', goal: { atMost: GOAL } });
    const plain = Array.from({ length: RUNS }, () =>
      timed(() => texts.map((text) => [...text.matchAll(/7-9-.*5-7/g)].length)),
    );
    report({ what: '… against a search of the texts by a pattern', runs: ratios(runs, plain), unit: '×' });
  }
};
