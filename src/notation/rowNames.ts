/** The rows of the notation; `text` is any other word, kept and moved with its columns. */
export const ROW_NAMES = [
  'count',
  'chords',
  'words',
  'picking',
  'fingers',
  'palm mute',
  'ending',
  'text',
] as const;

export type RowName = (typeof ROW_NAMES)[number];

/** Other words that a person may write for a row. */
export const ROW_ALIASES: Readonly<Record<string, RowName>> = {
  lyrics: 'words',
  pm: 'palm mute',
};
