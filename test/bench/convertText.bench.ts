import { Document } from '../../src/notation/document';
import { convert } from '../../src/service/change/convert';
import { transpose } from '../../src/service/change/transpose';
import type { ChangeResult } from '../../src/service/serviceApi';
import { DEFAULT_SETTINGS } from '../../src/service/settings';
import { RUNS, timed, type Row } from './rows';

/** Milliseconds that the text of 1,000 notes may take: reading, writing, reading again, stating fields. */
const GOAL = 50;
const WARM_UP = 4;
const BARS = 250;
const BARS_A_SYSTEM = 5;
const LABELS = ['E4', 'B3', 'G3', 'D3', 'A2', 'E2'];

/** A song of 1,000 notes in quarters, no two bars alike; every seed gives another one. */
function song(seed: number): string {
  let state = seed;
  const below = (n: number): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * n);
  };
  const systems = Array.from({ length: BARS / BARS_A_SYSTEM }, (_, at) => {
    const rows = LABELS.map((label) => `${label} |`);
    for (let bar = 0; bar < BARS_A_SYSTEM; bar++) {
      const cells = LABELS.map(() => Array.from({ length: 16 }, () => '-'));
      for (let beat = 0; beat < 4; beat++) {
        const string = cells[below(LABELS.length)];
        if (string) string[beat * 4] = String(below(10));
      }
      cells.forEach((body, i) => (rows[i] = `${rows[i] ?? ''}${body.join('')}|`));
    }
    const heading = at % 10 === 0 ? `[Part ${at / 10 + 1}]\n` : '';
    return `${heading}${rows.join('\n')}`;
  });
  return `title:  Low Water\ntuning: standard\nkey:    C\n\n${systems.join('\n\n')}\n`;
}

/** Changes whole songs never seen before. What keeps its shapes needs no search: that is what the text alone takes. */
export function run(report: (row: Row) => void): void {
  const shapes = (document: Document): ChangeResult =>
    convert(document, { range: undefined, tuning: 'half step down', keep: 'shapes' }, DEFAULT_SETTINGS);
  const cut = (document: Document): ChangeResult => {
    const range = {
      start: { line: 5, character: 40 },
      end: { line: document.lineCount - 12, character: 40 },
    };
    return convert(document, { range, tuning: 'half step down', keep: 'shapes' }, DEFAULT_SETTINGS);
  };
  const sound = (document: Document): ChangeResult =>
    convert(document, { range: undefined, tuning: 'DADGAD', keep: 'sound' }, DEFAULT_SETTINGS);
  const up = (document: Document): ChangeResult =>
    transpose(document, { range: undefined, by: 2 }, DEFAULT_SETTINGS);
  report({ ...measure('1,000 notes of text, shapes kept, warm', shapes, 1), goal: { atMost: GOAL } });
  report(measure('the same with the first and last system cut, warm', cut, 1001));
  report(measure('1,000 notes of text to DADGAD, sound kept, warm', sound, 2001));
  report(measure('1,000 notes of text up 2 half steps, warm', up, 3001));
}

function measure(what: string, change: (document: Document) => ChangeResult, seed: number): Row {
  let left = 0;
  const once = (at: number): number => {
    const document = new Document(song(seed + at));
    return timed(() => {
      const result = change(document);
      if ('error' in result) throw new Error(result.error);
      left = result.report.unplaced.length;
    });
  };
  const cold = once(0);
  for (let i = 1; i < WARM_UP; i++) once(i);
  const runs = Array.from({ length: RUNS }, (_, i) => once(WARM_UP + i));
  return { what, runs, unit: 'ms', note: `first call ${cold.toFixed(1)} ms; ${left} unplaced` };
}
