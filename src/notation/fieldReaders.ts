import { readCapo } from '../instrument/capo';
import { readFretCount } from '../instrument/frets';
import { readGauges } from '../instrument/gauges';
import { readInstrument } from '../instrument/instruments';
import type { Instrument } from '../instrument/instrument';
import { readScaleLength } from '../instrument/scaleLength';
import type { Tuning } from '../instrument/tuning';
import { readTuning } from '../instrument/tuningValue';
import { readKey } from '../music/key';
import { readMeter } from '../music/meter';
import { readReferencePitch } from '../music/referencePitch';
import { failed, ok, type Ok, type Result } from '../music/result';
import { readTempo } from '../music/tempo';
import type { FieldName } from './fieldNames';
import type { Feel, Fretting, Header } from './header';

/** What a field's value may depend on. */
export interface FieldScope {
  readonly instrument: Instrument;
  readonly tuning: Tuning;
  readonly frets: number;
  readonly userTunings: Readonly<Record<string, string>>;
}

/** The part of a header that one field sets. `part`, `by` and `remark` are put together by headers.ts. */
export type HeaderChange = Partial<Header>;

type FieldReader = (text: string, scope: FieldScope) => Result<HeaderChange>;

/** A reader whose value is one property of the header. */
function sets<K extends keyof Header>(
  property: K,
  read: (text: string, scope: FieldScope) => Result<Header[K]>,
): FieldReader {
  return (text, scope) => {
    const value = read(text, scope);
    return value.ok ? ok({ [property]: value.value }, value.notices) : value;
  };
}

function words<T extends string>(what: string, choices: readonly T[]): (text: string) => Result<T> {
  return (text) => {
    const key = text.trim().toLowerCase().replace(/\s+/g, ' ');
    const choice = choices.find((word) => word === key);
    return choice
      ? ok(choice)
      : failed(
          what,
          `Write ${choices.slice(0, -1).join(', ')} or ${choices.at(-1) ?? ''} for ${what}.`,
          0,
          text.length,
          choices,
        );
  };
}

const FEELS: readonly Feel[] = ['straight', 'swing', 'swing sixteenths'];
const FRETTINGS: readonly Fretting[] = ['fingers', 'slide'];

const text = (value: string): Ok<string> => ok(value);

/** One reader a field; how people write each value is documented with the reader it calls. */
export const FIELD_READERS: Readonly<Record<FieldName, FieldReader>> = {
  title: sets('title', text),
  by: (value) => ok({ by: [value] }),
  remark: (value) => ok({ remarks: [value] }),
  instrument: sets('instrument', readInstrument),
  tuning: sets('tuning', (value, { instrument, userTunings }) =>
    readTuning(value, { instrument, userTunings }),
  ),
  capo: sets('capo', (value, { tuning, frets }) => readCapo(value, tuning.strings.length, frets)),
  frets: sets('frets', readFretCount),
  'scale length': sets('scaleLength', readScaleLength),
  gauges: sets('gauges', (value, { tuning }) => readGauges(value, tuning.strings.length, tuning)),
  'reference pitch': sets('referencePitch', readReferencePitch),
  key: sets('key', readKey),
  meter: sets('meter', readMeter),
  tempo: sets('tempo', readTempo),
  feel: sets('feel', words('feel', FEELS)),
  fretting: sets('fretting', words('fretting', FRETTINGS)),
  part: sets('part', text),
};
