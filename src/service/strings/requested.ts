import { readGauges } from '../../instrument/gauges';
import { findInstrument, GUITAR, readInstrument } from '../../instrument/instruments';
import { readScaleLength } from '../../instrument/scaleLength';
import { readTuning } from '../../instrument/tuningValue';
import { STANDARD_PITCH } from '../../music/frequency';
import { readReferencePitch } from '../../music/referencePitch';
import type { Failed } from '../../music/result';
import type { Settings } from '../records';
import type { ServiceError } from '../serviceApi';
import { strainAnswer } from './strainAnswer';
import type { StringsAnswer, StringsRequest } from './stringsAnswer';

/**
 * The same without a document: every value as its field takes it, what is left out as usual for the instrument.
 * @example requestedStrings({ tuning: 'open C', gauges: '56w 42w 30w 17 13 10' }, DEFAULT_SETTINGS)
 */
export function requestedStrings(request: StringsRequest, settings: Settings): StringsAnswer | ServiceError {
  const named = request.instrument === undefined ? undefined : readInstrument(request.instrument);
  if (named && !named.ok) return refused(named);
  const instrument =
    (request.instrument === undefined ? undefined : findInstrument(request.instrument)) ?? GUITAR;
  const tuning = readTuning(request.tuning ?? instrument.usualTuning, {
    instrument,
    userTunings: settings.tunings,
  });
  if (!tuning.ok) return refused(tuning);
  const gauges =
    request.gauges === undefined
      ? undefined
      : readGauges(request.gauges, tuning.value.strings.length, tuning.value);
  if (gauges && !gauges.ok) return refused(gauges);
  const length = request.scaleLength === undefined ? undefined : readScaleLength(request.scaleLength);
  if (length && !length.ok) return refused(length);
  const pitch = request.referencePitch === undefined ? undefined : readReferencePitch(request.referencePitch);
  if (pitch && !pitch.ok) return refused(pitch);
  return strainAnswer(
    {
      instrument,
      tuning: tuning.value,
      gauges: gauges?.value,
      scaleLength: length?.value ?? instrument.scaleLength,
      referencePitch: pitch?.value ?? STANDARD_PITCH,
    },
    settings.strain,
  );
}

function refused({ error: { message } }: Failed): ServiceError {
  return { error: message };
}
