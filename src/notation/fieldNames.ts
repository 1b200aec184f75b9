/** The fields of the notation, by the one name that stands for each. */
export const FIELD_NAMES = [
  'title',
  'by',
  'remark',
  'instrument',
  'tuning',
  'capo',
  'frets',
  'scale length',
  'gauges',
  'reference pitch',
  'key',
  'meter',
  'tempo',
  'feel',
  'fretting',
  'part',
] as const;

export type FieldName = (typeof FIELD_NAMES)[number];

/** Other words that a person may write for a field. */
export const FIELD_ALIASES: Readonly<Record<string, FieldName>> = {
  pitch: 'reference pitch',
  time: 'meter',
};
