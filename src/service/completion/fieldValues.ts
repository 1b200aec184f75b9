import { formatCapo, type Capo } from '../../instrument/capo';
import { INSTRUMENTS } from '../../instrument/instruments';
import { createFingerboard } from '../../instrument/sounding';
import { formatKey, keyScale, signatureOf, type Key, type Mode } from '../../music/key';
import { nameAtFifths } from '../../music/lineOfFifths';
import { formatPitchName } from '../../music/noteName';
import { soundingSpelling, usualTuning } from '../../notation/headerViews';
import type { FieldName } from '../../notation/fieldNames';
import type { Header } from '../../notation/header';
import type { TabDocument } from '../../notation/tabDocument';
import { capital, pitchText } from '../hover/text';
import type { Settings } from '../records';
import { offeredTunings } from '../tuningChoices';
import type { Offer } from './item';

/** Where values are asked for. */
export interface ValueScene {
  readonly document: TabDocument;
  readonly header: Header;
  readonly line: number;
  readonly settings: Settings;
}

/** Values that a field takes, the likeliest first; none for free text. */
export function valueOffers(field: FieldName, scene: ValueScene): readonly Offer[] {
  return OFFERS[field](scene);
}

const nothing = (): readonly Offer[] => [];

function words(...labels: readonly string[]): readonly Offer[] {
  return labels.map((label) => ({ label }));
}

const OFFERS: Readonly<Record<FieldName, (scene: ValueScene) => readonly Offer[]>> = {
  title: nothing,
  by: nothing,
  remark: nothing,
  instrument: () =>
    INSTRUMENTS.map(({ name, usualTuning, aliases }) => ({
      label: name,
      detail: usualTuning,
      documentation: aliases.length > 0 ? `Also written ${aliases.join(', ')}.` : '',
    })),
  tuning: tuningOffers,
  capo: capoOffers,
  frets: ({ header }) => words(String(header.instrument.frets)),
  'scale length': ({ header }) => words(`${header.instrument.scaleLength} mm`),
  gauges: ({ header }) =>
    header.instrument.usualGauges === undefined ? [] : words(header.instrument.usualGauges),
  'reference pitch': () => words('A4 = 440 Hz', 'A4 = 442 Hz', 'A4 = 432 Hz', 'A4 = 415 Hz'),
  key: () =>
    KEYS.map((key) => ({ label: formatKey(key), detail: keyScale(key).map(formatPitchName).join(' ') })),
  meter: () => words('4/4', '3/4', '2/4', '6/8', '12/8', '9/8', '2/2', '5/4', '7/8'),
  tempo: () => words('96', 'quarter = 96', 'dotted quarter = 60', 'half = 60', 'eighth = 120'),
  feel: () => words('straight', 'swing', 'swing sixteenths'),
  fretting: () => words('fingers', 'slide'),
  part: ({ document }) =>
    document.parts.flatMap((part) => (part === undefined || part === '' ? [] : [{ label: part }])),
};

/** Named tunings, nearest to the one in force first; while a value is half written, to the one before it. */
function tuningOffers({ document, header, line, settings }: ValueScene): readonly Offer[] {
  const { instrument, tuning } = header;
  const group = document.fieldGroups.find(({ fields }) => fields.some((field) => field.lineIndex === line));
  const whole = tuning.name !== undefined || tuning.strings.length === instrument.firstFrets.length;
  const same = group?.before.instrument === instrument;
  const current = whole ? tuning : group && same ? group.before.tuning : usualTuning(instrument);
  return offeredTunings(instrument, current, settings).map(({ value, notes, steps, remark, own }) => ({
    label: value,
    detail: notes,
    documentation: [own ? 'Your own tuning.' : '', `${capital(steps)}.`, remark ?? '']
      .filter((text) => text !== '')
      .join(' '),
  }));
}

/** Full capos with what the open strings then sound, and one partial capo as a pattern. */
function capoOffers({ header }: ValueScene): readonly Offer[] {
  const { tuning, frets } = header;
  const count = tuning.strings.length;
  const full = Array.from({ length: Math.min(12, frets - 1) }, (_, i): Capo => ({
    fret: i + 1,
    strings: undefined,
  }));
  const partial: Capo[] = count >= 6 ? [{ fret: 2, strings: [5, 4, 3] }] : [];
  return [
    { label: 'none', detail: 'no capo' },
    ...[...full, ...partial].map((capo) => {
      const board = createFingerboard(tuning, capo, frets);
      const spelling = soundingSpelling({ ...header, capo });
      const open = tuning.strings.map((_, i) => pitchText(board.openMidi(i), spelling)).join(' ');
      return { label: formatCapo(capo), detail: `open strings sound ${open}` };
    }),
  ];
}

const MODES: readonly Mode[] = ['major', 'minor', 'dorian', 'mixolydian', 'phrygian', 'lydian', 'locrian'];

/** The keys of up to six signs, mode by mode, those with the fewest signs first. */
const KEYS: readonly Key[] = MODES.flatMap((mode) =>
  Array.from({ length: 18 }, (_, i): Key => ({ tonic: nameAtFifths(i - 7), mode }))
    .filter((key) => Math.abs(key.tonic.alter) <= 1 && Math.abs(signatureOf(key)) <= 6)
    .sort((a, b) => Math.abs(signatureOf(a)) - Math.abs(signatureOf(b))),
);
