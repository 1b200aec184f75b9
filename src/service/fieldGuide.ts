import type { FieldName } from '../notation/fieldNames';

/** What a field is for and which values it takes, one sentence each, as the notation has them. */
export const FIELD_GUIDE: Readonly<Record<FieldName, { readonly what: string; readonly values: string }>> = {
  title: { what: 'The name of the piece.', values: 'Any text.' },
  by: { what: 'Who made it; it may come more than once.', values: 'Any text.' },
  remark: { what: 'A remark for the reader.', values: 'Any text.' },
  instrument: {
    what: 'The instrument; it brings its own tuning, frets, length and strings.',
    values: 'A name such as guitar, bass, ukulele, banjo, mandolin, lap steel or 12-string guitar.',
  },
  tuning: {
    what: 'What the open strings sound, low string to high.',
    values:
      'A name (DADGAD, open E), steps from a name (standard -2 0 0 0 0 0), or notes (D2 A2 D3 G3 A3 D4).',
  },
  capo: {
    what: 'Where the capo stands; under a full capo frets count from it.',
    values: 'A fret (3), none, or a fret and the strings that a partial capo covers (2 on 5 4 3).',
  },
  frets: { what: 'How many frets the neck has.', values: 'A number such as 22.' },
  'scale length': {
    what: 'How long the open strings are, from nut to saddle.',
    values: 'Millimetres or inches: 648 mm, 25.5 in.',
  },
  gauges: {
    what: 'How thick the strings are, in the order of the tuning.',
    values: 'Thousandths of an inch (46w 36w 26w 17 13 10; w is wound) or millimetres (0.26 mm).',
  },
  'reference pitch': { what: 'The frequency of A4; frequencies follow it.', values: 'Hertz: A4 = 440 Hz.' },
  key: {
    what: 'The key, as played; it decides how notes are spelled.',
    values: 'A tonic and a mode: D, E minor, Em, D mixolydian.',
  },
  meter: { what: 'The time signature of the bars that follow.', values: 'Two numbers: 4/4, 3/4, 6/8.' },
  tempo: {
    what: 'How fast it goes.',
    values: 'Quarter notes a minute (96), or another note (dotted quarter = 60).',
  },
  feel: {
    what: 'Whether eighths or sixteenths swing in playing; written times stay even.',
    values: 'straight, swing or swing sixteenths.',
  },
  fretting: { what: 'What stops the strings.', values: 'fingers, or slide (one straight bar).' },
  part: {
    what: 'The part that the lines below belong to; a name met before goes on where it was left.',
    values: 'A name of your own.',
  },
};
