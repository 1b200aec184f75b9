import { GUITAR } from '../../instrument/instruments';
import type { Instrument } from '../../instrument/instrument';
import type { Tuning } from '../../instrument/tuning';
import { stepsFrom } from '../../instrument/tuningFormat';
import { tuningsFor } from '../../instrument/tunings';
import { usualTuning } from '../../notation/headerViews';
import type { Label } from '../../notation/parsedLine';
import { labelsFit, placeLines, type Placed } from './placedLines';
import { noteOf, type TuningReader } from './tuningOfClaim';

/** Fewer lines than this are part of an instrument. */
export const FEWEST_STRINGS = 4;

/**
 * A tuning for labels that are those of no usual one: a named one, either way up, of which a few lines may be part, else
 * their notes. Undefined where not every label is a note.
 * @param labels one for every line, top to bottom
 * @param kin instruments with so many strings, the likeliest first
 * @param otherwise the instrument where there are none
 */
export function tuningOfLabels(
  labels: readonly Label[],
  kin: readonly Instrument[],
  otherwise: Instrument,
  read: TuningReader,
): Placed | undefined {
  if (!labels.every(({ notes }) => notes.length > 0)) return undefined;
  const n = labels.length;
  for (const upsideDown of [false, true]) {
    for (const one of kin) {
      const [tuning] = named(one, labels, upsideDown, read);
      if (tuning) return placeLines(one, tuning, labels, n, 'labels', upsideDown);
    }
  }
  const part = n < FEWEST_STRINGS ? nearestPart(labels, read) : undefined;
  if (part) return placeLines(GUITAR, part, labels, n, 'labels', false);
  const written = labels
    .toReversed()
    .map(({ text }) => noteOf(text))
    .join(' ');
  const owner = kin[0] ?? otherwise;
  const tuning = read(written, owner);
  return tuning?.strings.length === n ? placeLines(owner, tuning, labels, n, 'labels', false) : undefined;
}

/** The named tunings of an instrument that have the labels. */
function named(
  instrument: Instrument,
  labels: readonly Label[],
  upsideDown: boolean,
  read: TuningReader,
): Tuning[] {
  return tuningsFor(instrument)
    .filter(({ strings }) => labelsFit(labels, { strings, name: '', text: '' }, upsideDown))
    .flatMap(({ name }) => read(name, instrument) ?? []);
}

/** The guitar's tuning that has the labels in it and leaves most of its strings as they usually are. */
function nearestPart(labels: readonly Label[], read: TuningReader): Tuning | undefined {
  const changed = (tuning: Tuning): number =>
    stepsFrom(usualTuning(GUITAR), tuning).filter((steps) => steps !== 0).length;
  return named(GUITAR, labels, false, read)
    .map((tuning) => ({ tuning, changed: changed(tuning) }))
    .sort((a, b) => a.changed - b.changed)[0]?.tuning;
}
