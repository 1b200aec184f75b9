import type { RowName } from '../notation/rowNames';

/** What a row is and what stands in it, one sentence each, as the notation has them. */
export const ROW_GUIDE: Readonly<Record<RowName, { readonly what: string; readonly values: string }>> = {
  count: {
    what: 'Pins columns to times.',
    values: 'Numbers are beats, & half-way, e and a the quarters about it, t and l the thirds.',
  },
  chords: {
    what: 'Chords as played; a name holds from its column to the next.',
    values: 'Names such as Am7 or D/F#; N.C. for none.',
  },
  words: { what: 'Words to sing; several rows are verses.', values: 'Syllables over their notes.' },
  picking: {
    what: 'The picking hand.',
    values:
      'p thumb (or t), i m a the fingers, c the little finger; d and u strokes down and up, x a muted one. Letters that touch are one stroke.',
  },
  fingers: {
    what: 'Fingers of the fretting hand.',
    values: '1 to 4, 0 for an open string, T for the thumb.',
  },
  'palm mute': {
    what: 'Notes damped with the palm.',
    values: 'Every run such as PM--- covers the notes over it.',
  },
  ending: { what: 'The endings of a repeat.', values: '1. and 2. over their bars.' },
  text: { what: 'A row of your own; it is kept and moves with its columns.', values: 'Any text.' },
};
