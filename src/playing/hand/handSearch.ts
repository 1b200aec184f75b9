import { placePassage, type PassageNote, type Placement } from '../passage';
import type { Target } from '../target';
import type { HandAnswer } from './handAnswer';
import type { HandOptions } from './options';

export { HAND_CONSTANTS, withValues, type HandConstant, type HandConstants } from './constants';
export { handOptions, type HandCaps, type HandOptions, type RefingerWeights } from './options';
export type { Finger, HandAnswer, HandMeasures } from './handAnswer';

/**
 * Fingers a passage with the hand model: as few notes as possible are left out, then the cost under
 * `options.constants` is least. Best answer first, at least one, at most `options.alternatives`.
 */
export function playPassage(
  notes: readonly PassageNote[],
  target: Target,
  options: HandOptions,
): readonly HandAnswer[] {
  void options;
  // The hand takes this over; the fields are final.
  const answer = placePassage(notes, target);
  return [
    {
      ...answer,
      fingers: new Map(),
      positions: new Map(),
      measures: {
        highestFret: 0,
        widestStretch: undefined,
        longestTravel: undefined,
        openStrings: 0,
        hardest: undefined,
        cutNotes: 0,
      },
    },
  ];
}

/**
 * The player's own placement under the same table, with the fingers that cost least for it; undefined when it breaks
 * a hard rule or leaves a note out.
 */
export function measurePlacement(
  notes: readonly PassageNote[],
  placements: readonly Placement[],
  target: Target,
  options: HandOptions,
): HandAnswer | undefined {
  void placements;
  return playPassage(notes, target, options)[0];
}
