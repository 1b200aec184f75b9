import type { Memento } from 'vscode';
import { pick } from './pick';

/** What is to be as small as can be: the effort in all, or that of the hardest moment of each section. */
export type Objective = 'total' | 'hardest';

const REMEMBERED = 'pegbox.objective';

const ITEMS = [
  { label: 'Least effort in all', detail: 'The sum over the passage is the least.', objective: 'total' },
  {
    label: 'Easiest hardest moment',
    detail: 'The hardest moment of each section is as easy as can be, then the sum.',
    objective: 'hardest',
  },
] as const;

/** Asks what the fingering is to be best in; what was chosen last comes first. */
export async function pickObjective(title: string, memory: Memento): Promise<Objective | undefined> {
  const last = memory.get<unknown>(REMEMBERED);
  const items = [...ITEMS].sort(
    (one, other) => Number(other.objective === last) - Number(one.objective === last),
  );
  const picked = await pick(items, { title, placeholder: 'What should be easiest for the hand?' });
  if (picked === undefined) return undefined;
  await memory.update(REMEMBERED, picked.objective);
  return picked.objective;
}
