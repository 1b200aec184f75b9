import type { FillRequest, ShapeWishes } from '../service/song/songAnswer';
import { pick } from './pick';

type Strum = NonNullable<FillRequest['strum']>;

const STRUMS: readonly { readonly label: string; readonly detail: string; readonly strum: Strum }[] = [
  { label: 'Once', detail: 'Each chord where its name stands.', strum: 'once' },
  { label: 'On every beat', detail: 'Each chord again on every beat until the next one.', strum: 'beats' },
];

const WISHES: readonly { readonly label: string; readonly detail: string; readonly wishes: ShapeWishes }[] = [
  { label: 'Full shapes', detail: 'As many strings as sound well; the hand moves least.', wishes: {} },
  {
    label: 'Full shapes with open strings',
    detail: 'Open strings wherever they fit.',
    wishes: { open: true },
  },
  {
    label: 'Closed shapes',
    detail: 'No open strings, so that they can be moved along the neck.',
    wishes: { open: false },
  },
  { label: 'Small shapes', detail: 'Three or four strings.', wishes: { style: 'small' } },
];

/** Asks how often chords are struck; undefined when the user leaves. */
export async function pickStrum(title: string): Promise<Strum | undefined> {
  return (await pick(STRUMS, { title, placeholder: 'How often is a chord struck?' }))?.strum;
}

/** Asks which kind of shapes is wanted; undefined when the user leaves. */
export async function pickShapeWishes(title: string): Promise<ShapeWishes | undefined> {
  return (await pick(WISHES, { title, placeholder: 'Which shapes?' }))?.wishes;
}
