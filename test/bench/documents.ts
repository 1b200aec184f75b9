import type { ServerName } from './serverProcess';
import { cssText, jsonText, tabText, type BenchText } from './texts';

/** A document for a server, of the byte size of a song of so many bars. The server that does nothing gets the song. */
export function documentFor(server: ServerName, bars: number, seed: number): BenchText {
  const song = tabText(bars, seed);
  if (server === 'json') return jsonText(song.text.length, seed);
  if (server === 'css') return cssText(song.text.length, seed);
  return song;
}

/** `10,000 bars`, as the table writes it. */
export function barsText(bars: number): string {
  return `${bars.toLocaleString('en')} bars`;
}
