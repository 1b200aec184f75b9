import { getLanguageService } from 'vscode-json-languageservice';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { format } from '../../src/service/format/format';
import { fixAll } from '../../src/service/mends/fixAll';
import { open } from '../../src/service/open';
import { DEFAULT_SETTINGS } from '../../src/service/settings';
import { barsText } from './documents';
import { ratios, RUNS, timed, type Row } from './rows';
import { jsonText, tabSong } from './texts';

const BARS = 1_000;
/** Milliseconds. */
const GOAL = 100;
const WARM_UP = 6;

/**
 * Formats an open song in which each system is in disorder, one in which nothing is, and, as a peer, a JSON document of
 * the same size whose lines all stand at another indent, by the editor's own JSON service. No text comes twice.
 */
export function run(report: (row: Row) => void): void {
  const ragged: number[] = [];
  const neat: number[] = [];
  const mended: number[] = [];
  const json: number[] = [];
  let edits = 0;
  for (let round = 0; round < WARM_UP + RUNS; round++) {
    const song = tabSong(BARS, 7000 + round);
    const disordered = opened(inDisorder(song));
    const ordered = opened(song);
    const times = [
      timed(() => (edits = format(disordered).length)),
      timed(() => format(ordered)),
      timed(() => fixAll(ordered, DEFAULT_SETTINGS)),
      timeOfJson(song.length, 7000 + round),
    ] as const;
    if (edits === 0 || format(ordered).length > 0) throw new Error('The songs are not what they should be.');
    if (round < WARM_UP) continue;
    [ragged, neat, mended, json].forEach((list, i) => list.push(times[i] ?? NaN));
  }
  const what = `format ${barsText(BARS)}`;
  report({
    what: `${what}, every system in disorder`,
    runs: ragged,
    unit: 'ms',
    goal: { atMost: GOAL },
    note: `${edits} edits`,
  });
  report({ what: `${what}, nothing to do`, runs: neat, unit: 'ms' });
  report({ what: `harmless mends of ${barsText(BARS)}, none to do`, runs: mended, unit: 'ms' });
  report({ what: 'JSON of the same size', runs: json, unit: 'ms' });
  report({ what: 'JSON / Pegbox', runs: ratios(json, ragged), unit: '×', goal: { atLeast: 0.5 } });
}

/** As in an editor: the document has been read before it is formatted. */
function opened(text: string): ReturnType<typeof open> {
  const document = open(text, DEFAULT_SETTINGS);
  for (const { reading } of document.systems) if (reading.notes.length === 0) throw new Error('No notes.');
  return document;
}

/** A label at another distance, a last bar sign left out, and a look-alike, in each system. */
function inDisorder(song: string): string {
  return song
    .split('\n')
    .map((line) => {
      if (line.startsWith('B3|')) return line.replace('|', '   |');
      if (line.startsWith('G3|')) return line.replace(/-*\|$/, '');
      return line.startsWith('D3|') ? line.replaceAll('--', '–-') : line;
    })
    .join('\n');
}

function timeOfJson(size: number, seed: number): number {
  const text = jsonText(size, seed).text.replace(/^ +/gm, (spaces) => `${spaces} `);
  const document = TextDocument.create('file:///peer.json', 'json', 1, text);
  let edits = 0;
  const time = timed(
    () =>
      (edits = getLanguageService({}).format(document, undefined, { tabSize: 2, insertSpaces: true }).length),
  );
  if (edits === 0) throw new Error('The JSON service had nothing to format.');
  return time;
}
