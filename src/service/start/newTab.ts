import { GUITAR, readInstrument } from '../../instrument/instruments';
import { tuningsFor } from '../../instrument/tunings';
import { readTuning } from '../../instrument/tuningValue';
import { readMeter } from '../../music/meter';
import { open } from '../open';
import type { Settings } from '../records';
import type { ServiceError } from '../serviceApi';
import { emptySystem } from './emptySystem';
import { layoutOf } from './layout';
import type { NewTabAnswer, NewTabRequest } from './startAnswer';

/**
 * A new tab: fields for what was chosen and a first empty system.
 * @returns one sentence where the instrument, the tuning, the meter or the layout cannot be read
 * @example newTab({ tuning: 'DADGAD' }, settings).text.startsWith('title:  New tab\ntuning: DADGAD\n') // true
 */
export function newTab(request: NewTabRequest, settings: Settings): NewTabAnswer | ServiceError {
  const instrument =
    request.instrument === undefined
      ? { ok: true as const, value: GUITAR }
      : readInstrument(request.instrument);
  if (!instrument.ok) return { error: instrument.error.message };
  const [usual] = tuningsFor(instrument.value);
  const value = oneLine(request.tuning ?? usual?.name ?? 'standard');
  const tuning = readTuning(value, { instrument: instrument.value, userTunings: settings.tunings });
  if (!tuning.ok) return { error: tuning.error.message };
  const meter = readMeter(request.meter ?? '4/4');
  if (!meter.ok) return { error: meter.error.message };
  const layout = layoutOf(request, meter.value);
  if ('error' in layout) return layout;
  const fields = [
    ['title', 'New tab'],
    ...(instrument.value === GUITAR ? [] : [['instrument', instrument.value.name]]),
    ['tuning', value],
    ['meter', oneLine(request.meter ?? '4/4')],
  ];
  const width = Math.max(...fields.map(([name = '']) => name.length)) + 2;
  const written = fields.map(([name = '', said = '']) => `${`${name}:`.padEnd(width)}${said}`);
  const header = open(`${written.join('\n')}\n`, settings).headerAt(written.length);
  const { lines, cell } = emptySystem(header, layout);
  return {
    text: `${[...written, '', ...lines].join('\n')}\n`,
    cursor: { line: written.length + 1 + cell.line, character: cell.character },
  };
}

function oneLine(text: string): string {
  return text.trim().replace(/\s+/g, ' ');
}
