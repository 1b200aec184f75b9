import type { Memento, QuickPickItem } from 'vscode';
import { pick } from './pick';

interface ValueItem extends QuickPickItem {
  /** As a request takes it. */
  readonly value: string;
}

const ITEMS: readonly ValueItem[] = [
  { label: 'Eighth', value: 'eighth' },
  { label: 'Quarter', value: 'quarter' },
  { label: 'Half', value: 'half' },
  { label: 'Whole', value: 'whole' },
  { label: 'Sixteenth', value: 'sixteenth' },
  { label: 'Dotted quarter', value: 'dotted quarter' },
  { label: 'Dotted eighth', value: 'dotted eighth' },
  { label: 'Eighth triplet', value: 'eighth triplet' },
];

const REMEMBERED = 'pegbox.noteValue';

/** Asks how long each note lasts; the one chosen last is active. Undefined when the user leaves. */
export async function pickNoteValue(
  memory: Memento,
  title: string,
  placeholder: string,
): Promise<string | undefined> {
  const last = memory.get<string>(REMEMBERED);
  const active = ITEMS.find(({ value }) => value === last);
  const picked = await pick(ITEMS, { title, placeholder, active });
  // Not awaited: until the next question stands there, keys would go into the text.
  if (picked !== undefined) void memory.update(REMEMBERED, picked.value);
  return picked?.value;
}
