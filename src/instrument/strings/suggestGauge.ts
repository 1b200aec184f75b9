import { MILLIMETRES_PER_INCH } from '../scaleLength';
import type { Construction } from './constructions';
import type { Materials } from './materials';
import type { StringLoad } from './stringLoads';
import { tensionOf } from './tension';
import { sizesOf, unitWeight } from './unitWeight';

/** Sizes that strings are sold in singly, thousandths of an inch. Common practice, no source. */
const PLAIN_STEEL: readonly number[] = [7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 22, 24];
const PLAIN_NYLON: readonly number[] = [22, 24, 25, 26, 28, 29, 32, 34, 36, 38, 40, 41];
const WOUND: readonly number[] = [
  17, 18, 20, 22, 24, 26, 28, 30, 32, 34, 36, 38, 39, 42, 44, 46, 48, 49, 52, 54, 56, 59, 60, 62, 64, 66, 68,
  70, 72, 74, 80,
];
const BASS: readonly number[] = [
  32, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90, 95, 100, 105, 110, 120, 125, 130, 135, 145,
];

/**
 * A change of tension up to this share is left as it is: a half step is 12 % (2^(1/6)), which every set is tuned by.
 * An engineering value.
 */
const LITTLE = 0.15;

/** A string of the other kind, plain for wound, is offered only where none of its own kind comes so near. */
const OWN_KIND = 0.12;

/**
 * A common size that pulls about as the usual string does, at the pitch and on the neck in hand, as `gauges:` takes it;
 * undefined where the string pulls about as usual, where nothing is known, or where no size comes nearer.
 * @example suggestedGauge(load, materials) // '56w', for B1 on string 6 of a guitar
 */
export function suggestedGauge(load: StringLoad, materials: Materials): string | undefined {
  const { ratio, pitchRatio, usual, gauge, tension } = load;
  if (ratio === undefined || pitchRatio === undefined || !usual?.tension || !gauge) return undefined;
  if (load.beyondSteel || materials.steelOnNylonInstrument) return undefined;
  // A heavier set than usual was chosen for something: only what the tuning or the neck has changed is mended.
  const away = [Math.log(ratio), Math.log(pitchRatio)].map((off) =>
    Math.abs(off) <= Math.log(1 + LITTLE) ? 0 : Math.sign(off),
  );
  if (away[0] === 0 || away[0] !== away[1]) return undefined;
  const wanted = usual.tension;
  const own = nearest(gauge.wound ? materials.wound : materials.plain, wanted, load);
  const other = nearest(gauge.wound ? materials.plain : materials.wound, wanted, load);
  const best = [own, other].flatMap((one) => one ?? []).sort((a, b) => a.off - b.off)[0];
  const taken = own && own.off <= Math.log(1 + OWN_KIND) ? own : best;
  if (!taken || (tension !== undefined && taken.off >= Math.abs(Math.log(tension / wanted))))
    return undefined;
  return taken.text === gauge.text ? undefined : taken.text;
}

interface Candidate {
  readonly text: string;
  /** How far the tension is off, as a logarithm. */
  readonly off: number;
}

function nearest(construction: Construction, wanted: number, load: StringLoad): Candidate | undefined {
  const wound = construction !== 'plain steel' && construction !== 'plain nylon';
  const [least, most] = sizesOf(construction);
  const candidates = sizesSold(construction)
    .filter((size) => size >= least && size <= most)
    .flatMap((size): Candidate[] => {
      const weight = unitWeight(construction, (size / 1000) * MILLIMETRES_PER_INCH);
      if (weight === undefined) return [];
      const tension = tensionOf(weight, load.length, load.hertz);
      return [{ text: wound ? `${size}w` : String(size), off: Math.abs(Math.log(tension / wanted)) }];
    });
  return candidates.sort((a, b) => a.off - b.off)[0];
}

function sizesSold(construction: Construction): readonly number[] {
  switch (construction) {
    case 'plain steel':
      return PLAIN_STEEL;
    case 'plain nylon':
      return PLAIN_NYLON;
    case 'bass round wound':
      return BASS;
    case 'nickel-plated wound':
    case 'phosphor bronze wound':
    case 'silvered copper on nylon':
      return WOUND;
  }
}
