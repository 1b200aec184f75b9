import type { Fraction } from '../../music/fraction';
import type { System, TabDocument } from '../../notation/tabDocument';
import { gripAt, stoppedStrings } from '../grip/grip';
import type { Picture, Settings } from '../records';
import { lines } from './text';

/** A single stopped string is any finger's: only its line in a passage decides. */
const WORTH_TELLING = 2;

/** How the hand holds a moment, in words and as a picture; undefined where fewer than two strings are stopped. */
export function gripHover(
  document: TabDocument,
  system: System,
  time: Fraction,
  settings: Settings,
): { readonly markdown: string; readonly picture: Omit<Picture, 'at'> } | undefined {
  const answer = gripAt(document, system, time, settings);
  if (!answer || stoppedStrings(answer) < WORTH_TELLING) return undefined;
  const { words, basis, svg, alt } = answer;
  return {
    markdown: lines(`**Grip**: ${words}`, basis),
    picture: { svg, alt },
  };
}
