import { fingerGrip } from '../../../../src/playing/hand/grips';
import type { HandOptions } from '../../../../src/playing/hand/options';
import type { WantedChord } from '../../../../src/playing/shapes/wanted';
import type { Target } from '../../../../src/playing/target';

/**
 * Every choice of a fret or nothing on each string, kept where it sounds the chord and a hand holds it: the peer of the
 * finder, which shares the hand's rules and nothing of the search. For few frets: it tries them all.
 */
export function everyShape(
  wanted: WantedChord,
  target: Target,
  hand: HandOptions,
  highestFret: number,
  leastStrings: number,
): string[] {
  const board = target.fingerboard;
  const count = board.tuning.strings.length;
  const found: string[] = [];
  const frets = new Array<number | undefined>(count).fill(undefined);
  const choose = (index: number, mask: number): void => {
    if (index === count) {
      if (wanted.required & ~mask) return;
      if (wanted.oneOf && !(mask & wanted.oneOf)) return;
      const places = frets.flatMap((fret, i) => (fret === undefined ? [] : [{ string: count - i, fret }]));
      if (places.length < leastStrings) return;
      const strings = places.map(({ string }) => string);
      const silent = Math.max(...strings) - Math.min(...strings) + 1 - places.length;
      const midis = places.flatMap(({ string, fret }) => board.pitches(count - string, fret) ?? []);
      const bass = Math.min(...midis) % 12;
      if (silent > 2 || (wanted.bass !== undefined && bass !== wanted.bass)) return;
      if (fingerGrip(places, target, hand).best) found.push(frets.map((fret) => fret ?? 'x').join(' '));
      return;
    }
    frets[index] = undefined;
    choose(index + 1, mask);
    for (let fret = 0; fret <= highestFret; fret++) {
      const midis = board.pitches(index, fret);
      const own = (midis ?? []).reduce((bits, midi) => bits | (1 << (midi % 12)), 0);
      if (!midis || own & ~(wanted.required | wanted.optional)) continue;
      frets[index] = fret;
      choose(index + 1, mask | own);
    }
    frets[index] = undefined;
  };
  choose(0, 0);
  return found;
}
