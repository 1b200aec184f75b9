import assert from 'node:assert/strict';
import { findInstrument } from '../../../src/instrument/instruments';
import type { Instrument } from '../../../src/instrument/instrument';
import type { Tuning } from '../../../src/instrument/tuning';
import { readTuning } from '../../../src/instrument/tuningValue';
import type { Notice, Result } from '../../../src/music/result';

/** The instrument of that name; the test fails where there is none. */
export function instrument(name: string): Instrument {
  const found = findInstrument(name);
  assert.ok(found, `no instrument ${name}`);
  return found;
}

/** The tuning that the value gives; the test fails where it cannot be read. */
export function tuning(value: string, on = 'guitar'): Tuning {
  return valueOf(readTuning(value, { instrument: instrument(on) }), value);
}

export function valueOf<T>(result: Result<T>, of = 'the text'): T {
  assert.ok(result.ok, result.ok ? '' : `${of}: ${result.error.message}`);
  return result.value;
}

export function errorOf<T>(result: Result<T>, of = 'the text'): Notice {
  assert.ok(!result.ok, `${of} should not be readable`);
  return result.error;
}
