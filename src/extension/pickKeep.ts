import { pick } from './pick';

export type Keep = 'sound' | 'shapes';

/** Asks what stays when strings or capo change. `shapes` says what the other choice does. */
export async function pickKeep(title: string, shapes: string): Promise<Keep | undefined> {
  const picked = await pick<{ label: string; detail: string; keep: Keep }>(
    [
      { label: 'Keep the sound', detail: 'Every note stays; the frets move.', keep: 'sound' },
      { label: 'Keep the shapes', detail: shapes, keep: 'shapes' },
    ],
    { title, placeholder: 'What should stay?' },
  );
  return picked?.keep;
}
