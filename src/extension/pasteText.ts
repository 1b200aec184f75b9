import type { PasteTabAnswer } from '../server/requests';
import type { ChangeReport } from './reportText';

type Pasted = Pick<PasteTabAnswer, 'systems' | 'notes' | 'guesses'>;

/**
 * One line of what was pasted: the first guess in full, since it is the one that changes most.
 * @example pasteNotice({ systems: 1, notes: 9, guesses: [] }) // 'Pasted 1 system of tab.'
 */
export function pasteNotice({ systems, guesses }: Pasted): string {
  const pasted = `Pasted ${systems} system${systems === 1 ? '' : 's'} of tab.`;
  const [first, ...more] = guesses;
  if (!first) return pasted;
  const others =
    more.length === 0 ? '' : ` ${more.length} more ${more.length === 1 ? 'guess' : 'guesses'} in the report.`;
  return `${pasted} ${first.words}${others}`;
}

/** Everything that was guessed, each with the first line of the old text that it is about. */
export function pasteReport({ notes, guesses }: Pasted): ChangeReport {
  return {
    asked: 'Pasted as tab',
    report: {
      notesIn: notes,
      kept: notes,
      moved: 0,
      unplaced: [],
      remarks: guesses.map(({ words, line }) => `${words} (From line ${line + 1} of the pasted text on.)`),
    },
  };
}
