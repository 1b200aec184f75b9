import { tuneByFrets } from '../../instrument/tuningFrets';
import type { Header } from '../../notation/header';
import { listed } from '../hover/text';
import { barresAnswer } from './barres';
import { tellCheck } from './checkWords';

/** An octave up everything comes again. */
const OCTAVE = 12;

/**
 * The tuning sheet in two lines: how each string is tuned from the next, and where straight barres give the main
 * chords. Without a chord of the open strings the second one is left out.
 * @example shortSheet(headerInOpenG)
 * // ['Tune string by string at frets 5 7 5 4 3: string 6 at fret 5 gives string 5, and so on',
 * //  'Straight barres: open G, fret 5 C and fret 7 D']
 */
export function shortSheet(header: Header): readonly string[] {
  return [tuneLine(header), barreLine(header)].filter((line) => line !== '');
}

function tuneLine({ tuning, frets }: Header): string {
  const checks = tuneByFrets(tuning, frets);
  const [first] = checks;
  if (!first) return '';
  const plain = checks.every(
    ({ stops, apart, string, by }) => stops === 'by' && apart === 0 && by === string + 1,
  );
  if (!plain || checks.length < 3)
    return `Tune by frets: ${checks.map((one) => tellCheck(one, tuning).words.replace('String', 'string')).join('; ')}`;
  const numbers = checks.map(({ fret }) => fret).join(' ');
  return `Tune string by string at frets ${numbers}: string ${first.by} at fret ${first.fret} gives string ${first.string}, and so on`;
}

function barreLine(header: Header): string {
  const main = barresAnswer(header).frets.filter(
    ({ main: one, fret, chord }) => one && fret < OCTAVE && chord !== null,
  );
  if (main.length === 0) return '';
  const told = main.map(({ fret, chord }) => `${fret === 0 ? 'open' : `fret ${fret}`} ${chord ?? ''}`);
  return `Straight barres: ${listed(told)}`;
}
