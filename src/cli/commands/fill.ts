import { readCapo } from '../../instrument/capo';
import { readTuning } from '../../instrument/tuningValue';
import { runChange } from '../changeCommand';
import type { Command, Option } from '../command';
import { JSON_OPTION, LINES, TUNINGS } from '../commonOptions';
import { wordOf } from '../optionValues';
import { readable } from '../readable';
import { SHAPE_WISHES, shapeWishesOf } from '../shapeWishes';

const STRUM: Option = {
  name: 'strum',
  value: 'once|beats',
  help: 'strike each chord where its name stands (the default), or on every beat from there on',
};
const FILE = { word: 'FILE', help: 'a tab file, or - for standard input', many: false };

/** Writes shapes under the names of chords. */
export const fill: Command = {
  name: 'fill',
  does: 'write a shape under every name of a chords row, so that the hand moves least',
  operands: FILE,
  options: [STRUM, ...SHAPE_WISHES, LINES, JSON_OPTION, TUNINGS],
  async run(asked, output) {
    const wishes = shapeWishesOf(asked);
    const strum = wordOf(asked, 'strum', ['once', 'beats'] as const);
    return runChange(asked, output, ({ service, document, settings, range }) =>
      service.fillChords(document, { range, ...wishes, ...(strum && { strum }) }, settings),
    );
  },
};

/** Writes a part for a second player. */
export const secondGuitar: Command = {
  name: 'second-guitar',
  does: 'write a part of the same chords that stays out of the first player’s way',
  operands: FILE,
  options: [
    { name: 'name', value: 'NAME', help: 'the new part’s name, such as "high guitar"' },
    { name: 'tuning', value: 'T', help: 'another tuning for it, such as DADGAD' },
    { name: 'capo', value: 'VALUE', help: 'another capo for it, such as 5 or none' },
    STRUM,
    ...SHAPE_WISHES,
    LINES,
    JSON_OPTION,
    TUNINGS,
  ],
  required: ['name'],
  async run(asked, output) {
    const wishes = shapeWishesOf(asked);
    const strum = wordOf(asked, 'strum', ['once', 'beats'] as const);
    const { values } = asked;
    const [name = '', tuning, capo] = [values.get('name'), values.get('tuning'), values.get('capo')];
    return runChange(asked, output, ({ service, document, settings, range, header }) => {
      const context = { instrument: header.instrument, userTunings: settings.tunings };
      const strings =
        tuning === undefined ? header.tuning : readable('--tuning', readTuning(tuning, context));
      if (capo !== undefined) readable('--capo', readCapo(capo, strings.strings.length, header.frets));
      const request = {
        range,
        name,
        ...wishes,
        ...(strum && { strum }),
        ...(tuning !== undefined && { tuning }),
        ...(capo !== undefined && { capo }),
      };
      return service.secondGuitar(document, request, settings);
    });
  },
};
