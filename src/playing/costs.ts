/**
 * The plain cost of a placement. All weights are in millimetres of hand travel, so that each says "as dear as moving
 * the hand so far". Weights are ≥ 0; nothing else in the search knows them.
 *
 * Each moment (notes that begin together) has a hand position h, a fret of the neck not above its lowest stopped
 * place, from which its highest is within reach (under a slide bar, h is the bar's place). With
 * x(f) = L · (1 − 2^(−f/12)), f counted from the nut and x rounded to a thousandth of a millimetre:
 *
 *     cost = Σ over stopped notes     height · (x(fret) − x(zero))
 *          + Σ over moments           stretch · max(0, x(highest stopped) − x(h) − relaxed)
 *          + Σ over moments after the first   travel · |x(h) − x(h before)|
 *
 * each summand rounded to a thousandth of a millimetre, so that sums are exact and equal costs are equal. `zero` is the
 * nut, or the full capo. Open strings, natural harmonics and muted strokes stop nothing: they cost nothing and leave
 * the hand free to be anywhere. A stretch counts notes that a join holds down through the moment.
 */
export interface Costs {
  readonly travel: number;
  readonly height: number;
  readonly stretch: number;
  /** Millimetres from the hand position to the highest stopped place that cost nothing yet. */
  readonly relaxed: number;
}

/** The table in force. No data set fits these: each has its reason, and a test that shows what it decides. */
export const PLAIN_COSTS: Costs = {
  /** The unit: one millimetre of the hand along the neck. */
  travel: 1,
  /**
   * A note prefers the place nearer the nut, half as strongly as the hand prefers to rest: two millimetres lower are
   * worth one of travel. Under 0.28 the last note of a first-position scale in open G would stay on the third string
   * to save the hand one fret; far above 1 the hand would leap for every note.
   */
  height: 0.5,
  /** A stretch is felt at once and by the weakest fingers, so it is dearer than moving the hand as far. */
  stretch: 2,
  /**
   * About four frets in the first position of a 648 mm string (97 mm), the usual comfort between first and fourth
   * finger (from memory; an engineering value).
   */
  relaxed: 100,
};

/** Whole thousandths of a millimetre, the unit in which costs are added. */
export function thousandths(millimetres: number): number {
  return Math.round(millimetres * 1000);
}
