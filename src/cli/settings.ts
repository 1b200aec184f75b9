import type { Settings } from '../service/records';
import { DEFAULT_SETTINGS } from '../service/settings';
import type { Asked } from './command';
import { Refusal } from './refusal';
import { readTextFile } from './textFile';

/**
 * What `--tunings` and `--reach` set; the rest is as it is without settings.
 * @throws {Refusal} for a file or a number that cannot be read
 */
export async function settingsOf({ values }: Asked): Promise<Settings> {
  const file = values.get('tunings');
  const reach = values.get('reach');
  return {
    ...DEFAULT_SETTINGS,
    ...(file === undefined ? {} : { tunings: await readTunings(file) }),
    ...(reach === undefined ? {} : { reach: readReach(reach) }),
  };
}

function readReach(value: string): number {
  const match = /^\s*(\d+(?:\.\d+)?|\.\d+)\s*(?:mm)?\s*$/i.exec(value);
  const reach = Number(match?.[1]);
  if (!(reach > 0)) throw new Refusal(`--reach takes millimetres above 0, such as 130; “${value}” is none.`);
  return reach;
}

async function readTunings(name: string): Promise<Settings['tunings']> {
  const { text } = await readTextFile(name);
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    throw new Refusal(`${name} is not JSON: ${error instanceof Error ? error.message : String(error)}.`);
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw new Refusal(
      `${name} must hold one object of names and values, such as {"harbour": "C2 G2 D3 G3 B3 D4"}.`,
    );
  const entries = Object.entries(value).map(([tuning, notes]: [string, unknown]): [string, string] => {
    if (typeof notes === 'string') return [tuning, notes];
    throw new Refusal(`${name}: the value of “${tuning}” must be text, such as "C2 G2 D3 G3 B3 D4".`);
  });
  return Object.fromEntries(entries); // not by assignment: `__proto__` is a name like any other
}
