import type { Settings, Severity } from '../service/records';
import { DEFAULT_SETTINGS } from '../service/settings';
import { readStrain } from './strainReader';

const SEVERITIES: readonly (Severity | 'off')[] = ['error', 'warning', 'information', 'hint', 'off'];

/**
 * Reads what the user has set under `pegbox`. Nothing set is the default; a value of a wrong kind is passed over, the
 * rest still counts, and `tell` gets one sentence that says what was expected.
 *
 * @example readSettings({ reach: 120 }, console.error).reach // 120
 */
export function readSettings(value: unknown, tell: (problem: string) => void): Settings {
  if (value === null || value === undefined) return DEFAULT_SETTINGS;
  if (!isRecord(value)) {
    tell('The settings under "pegbox" were expected as an object; the defaults hold.');
    return DEFAULT_SETTINGS;
  }
  return {
    reach: readReach(value['reach'], tell),
    thumb: readFlag('thumb', value['thumb'], tell),
    sectionLens: readFlag('sectionLens', value['sectionLens'], tell),
    tunings: readEntries(
      'pegbox.tunings',
      value['tunings'],
      isString,
      'a tuning\'s value, such as "DADGAD"',
      tell,
    ),
    strain: readStrain(value['strain'], tell),
    severities: readEntries(
      'pegbox.severities',
      value['severities'],
      isSeverity,
      `one of ${SEVERITIES.join(', ')}`,
      tell,
    ),
  };
}

function readReach(value: unknown, tell: (problem: string) => void): number {
  if (value === undefined || value === null) return DEFAULT_SETTINGS.reach;
  if (typeof value === 'number' && Number.isFinite(value) && value > 0) return value;
  tell(
    `The setting pegbox.reach was expected as millimetres above 0, such as 130; ${DEFAULT_SETTINGS.reach} holds.`,
  );
  return DEFAULT_SETTINGS.reach;
}

function readFlag(name: 'thumb' | 'sectionLens', value: unknown, tell: (problem: string) => void): boolean {
  const usual = DEFAULT_SETTINGS[name];
  if (value === undefined || value === null) return usual;
  if (typeof value === 'boolean') return value;
  tell(`The setting pegbox.${name} was expected as true or false; ${usual} holds.`);
  return usual;
}

function readEntries<T>(
  setting: string,
  value: unknown,
  fits: (entry: unknown) => entry is T,
  expected: string,
  tell: (problem: string) => void,
): Record<string, T> {
  if (value === undefined || value === null) return {};
  if (!isRecord(value)) {
    tell(`The setting ${setting} was expected as an object of names and values; it is passed over.`);
    return {};
  }
  const entries: [string, T][] = [];
  for (const [name, entry] of Object.entries(value)) {
    if (fits(entry)) entries.push([name, entry]);
    else
      tell(`The setting ${setting} was expected to give "${name}" ${expected}; that entry is passed over.`);
  }
  // Not by assignment: a name such as `__proto__` is a name like any other.
  return Object.fromEntries(entries);
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isString(value: unknown): value is string {
  return typeof value === 'string';
}

function isSeverity(value: unknown): value is Severity | 'off' {
  return SEVERITIES.some((severity) => severity === value);
}
