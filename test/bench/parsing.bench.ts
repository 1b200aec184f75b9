import { Document } from '../../src/notation/document';
import { readLineByGrammar } from '../../src/notation/grammarLine';
import { LineStore } from '../../src/notation/lineStore';
import { scanLine } from '../../src/notation/scanLine';
import { barsText } from './documents';
import { ratios, RUNS, timed, type Row } from './rows';
import { BAR_COUNTS, distinctBars, tabSong } from './texts';

/** The grammar takes so long that no more bars than these are read by it. */
const GRAMMAR_BARS = 1_000;

/** Reading lines, by the scanner and by the grammar, and whole documents with their systems; texts new in every run. */
export function run(report: (row: Row) => void): void {
  scannerAgainstGrammar(report);
  for (const bars of BAR_COUNTS) wholeDocument(report, bars);
}

function scannerAgainstGrammar(report: (row: Row) => void): void {
  const scanner: number[] = [];
  const grammar: number[] = [];
  for (let round = -1; round < RUNS; round++) {
    const lines = tabSong(GRAMMAR_BARS, 100 + round).split('\n');
    const scanned = timed(() => lines.forEach(scanLine));
    const parsed = timed(() => lines.forEach(readLineByGrammar));
    if (round < 0) continue;
    scanner.push((scanned * 1000) / lines.length);
    grammar.push((parsed * 1000) / lines.length);
  }
  report({ what: 'a line by the scanner', runs: scanner, unit: 'µs' });
  report({ what: 'a line by the grammar', runs: grammar, unit: 'µs' });
  report({ what: 'grammar / scanner', runs: ratios(grammar, scanner), unit: '×' });
}

function wholeDocument(report: (row: Row) => void, bars: number): void {
  const lines: number[] = [];
  const systems: number[] = [];
  let note = '';
  for (let round = -1; round < RUNS; round++) {
    const song = tabSong(bars, 200 + round);
    note = `${Math.round(song.length / 1000).toLocaleString('en')} KB, ${(distinctBars(song) * 100).toFixed(1)} % of the bars distinct`;
    const split = timed(() => new LineStore(song));
    const document = new Document(song);
    const read = timed(() => document.systems.map((system) => system.reading));
    if (round < 0) continue;
    lines.push(split);
    systems.push(read);
  }
  report({ what: `all lines, ${barsText(bars)}`, runs: lines, unit: 'ms', note });
  report({ what: `all systems (notes, times), ${barsText(bars)}`, runs: systems, unit: 'ms' });
}
