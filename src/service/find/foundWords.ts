import { halfSteps as halfStepsText } from '../hover/text';
import type { FoundPassage } from './findAnswer';

/**
 * Where a passage stands and how far from the pattern it sounds.
 * @example foundWords(found) // 'Verse, bars 3–4; DADGAD, capo 2; 5 half steps up'
 */
export function foundWords({
  part,
  section,
  firstBar,
  lastBar,
  tuning,
  halfSteps,
}: Omit<FoundPassage, 'ranges' | 'words'>): string {
  const bars = firstBar === lastBar ? `bar ${firstBar}` : `bars ${firstBar}–${lastBar}`;
  const where = [section, part, bars].filter((text) => text !== null && text !== '').join(', ');
  return `${where}; ${tuning}; ${distance(halfSteps)}`;
}

function distance(halfSteps: number): string {
  if (halfSteps === 0) return 'at the same pitch';
  return `${halfStepsText(Math.abs(halfSteps))} ${halfSteps > 0 ? 'up' : 'down'}`;
}
