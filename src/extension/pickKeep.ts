import { pick } from './pick';

/** What stays of a passage when its strings change. */
export type Keep = 'sound' | 'shapes' | 'function';

interface Item<Kept> {
  readonly label: string;
  readonly detail: string;
  readonly keep: Kept;
}

const SOUND: Item<'sound'> = {
  label: 'Keep the sound',
  detail: 'Every note stays; the frets move.',
  keep: 'sound',
};
const FUNCTION: Item<'function'> = {
  label: 'Keep the function',
  detail: 'Every degree stays, under a key that is asked for.',
  keep: 'function',
};

/** Asks what stays when the tuning changes. */
export function pickKeep(title: string): Promise<Keep | undefined> {
  const shapes = shapesItem('The frets stay; the notes change.');
  return pickOne<Keep>([SOUND, shapes, FUNCTION], title);
}

/** Asks what stays when the capo moves. */
export function pickKeepUnderCapo(title: string): Promise<'sound' | 'shapes' | undefined> {
  const shapes = shapesItem('The frets stay; key, chord names and sound move.');
  return pickOne<'sound' | 'shapes'>([SOUND, shapes], title);
}

function shapesItem(detail: string): Item<'shapes'> {
  return { label: 'Keep the shapes', detail, keep: 'shapes' };
}

async function pickOne<Kept>(items: readonly Item<Kept>[], title: string): Promise<Kept | undefined> {
  return (await pick(items, { title, placeholder: 'What should stay?' }))?.keep;
}
