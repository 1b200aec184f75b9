/** How strings are made, in the trade's words. */
export type Construction =
  | 'plain steel'
  | 'nickel-plated wound'
  | 'phosphor bronze wound'
  | 'bass round wound'
  | 'plain nylon'
  | 'silvered copper on nylon';

/** A size in thousandths of an inch, and pounds an inch × 10⁻⁵. */
type UnitWeight = readonly [number, number];

/** A construction whose density, taken over the solid outer diameter, changes with the size. */
export interface Wound {
  /** The published sizes, thousandths of an inch. */
  readonly sizes: readonly [number, number];
  readonly weights: readonly UnitWeight[];
}

/*
 * Published unit weights (strings-and-frets.md §2.4). Rows marked * are from memory; those of nickel-plated and of
 * phosphor bronze strings give just the least and the greatest effective density published for their construction,
 * 6,270–6,780 and 6,970–7,340 kg/m³, and the published totals of sets (§2.5) to 0.1 lb.
 */
export const NICKEL_PLATED: Wound = {
  sizes: [17, 80],
  weights: [
    [17, 5.524], // *
    [18, 6.215], // *
    [19, 6.947], // *
    [20, 7.495], // *
    [21, 8.293], // *
    [22, 9.184], // *
    [24, 10.857],
    [26, 12.671],
    [28, 14.666], // *
    [30, 17.236], // *
    [32, 19.347],
    [34, 21.59], // *
    [36, 23.964],
    [38, 26.471], // *
    [42, 32.279],
    [44, 35.182], // *
    [46, 38.216],
    [48, 41.382], // *
    [49, 43.014], // *
    [52, 48.109],
    [54, 53.838], // *
    [56, 57.598],
    [59, 64.191], // *
    [60, 66.542], // *
    [62, 70.697], // *
    [64, 74.984], // *
    [66, 79.889], // *
    [68, 84.614], // *
    [70, 89.304], // *
    [72, 94.124], // *
    [74, 98.869], // *
    [80, 115.011], // *
  ],
};

export const PHOSPHOR_BRONZE: Wound = {
  sizes: [20, 70],
  weights: [
    [20, 8.106], // *
    [22, 9.876], // *
    [24, 11.682],
    [25, 12.686], // *
    [26, 13.64], // *
    [29, 17.381], // *
    [30, 18.66], // *
    [32, 21.018],
    [34, 23.887], // *
    [35, 25.365], // *
    [36, 26.824], // *
    [39, 31.124], // *
    [42, 36.722],
    [45, 41.751], // *
    [47, 45.289], // *
    [53, 56.962],
    [56, 63.477],
    [59, 70.535], // *
    [62, 77.682], // *
    [66, 87.718], // *
    [70, 96.91], // by the least published density
  ],
};

/** All from memory; their effective densities lie in the published range of 5,500–7,050, mostly 6,000–6,700 kg/m³. */
export const BASS_ROUND_WOUND: Wound = {
  sizes: [32, 145],
  weights: [
    [40, 29.322],
    [45, 37.24],
    [50, 46.463],
    [60, 66.54],
    [65, 79.569],
    [70, 93.218],
    [75, 104.973],
    [80, 116.023],
    [85, 133.702],
    [90, 150.277],
    [95, 169.349],
    [100, 179.687],
    [105, 198.395],
    [110, 227.44],
    [120, 250.28],
    [125, 274.81],
    [130, 301.941],
    [135, 315.944],
    [145, 363.204],
  ],
};

/**
 * Worked out from the published tensions of a normal nylon set (§2.5: 15.6, 15.0 and 14.0 lb at 25.5 in for .029, .035
 * and .043, sizes from memory); the two ends are the ends of the published range of densities, 3,960–6,700 kg/m³, set
 * to its least and greatest size, since density grows with the size.
 */
export const SILVERED_COPPER: Wound = {
  sizes: [19, 56],
  weights: [
    [19, 4.056],
    [29, 10.75],
    [35, 18.416],
    [43, 30.626],
    [56, 59.617],
  ],
};
