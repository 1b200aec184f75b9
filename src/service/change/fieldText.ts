import { formatKey, readKey, type Key } from '../../music/key';
import { formatPitchName } from '../../music/noteName';
import { parseLine } from '../../notation/parseLine';
import type { FieldGroup } from '../../notation/tabDocument';

/** The value written in a field line; empty when it is none. */
export function valueOf(line: string): string {
  const parsed = parseLine(line);
  return parsed.kind === 'field' ? parsed.value : '';
}

/**
 * A key as the writer of another one would write it: `D`, `Dm` or `D minor`.
 * @example keyLike({ tonic: F, mode: 'minor' }, 'Em') // 'Fm'
 */
export function keyLike(key: Key, written: string): string {
  const tonic = formatPitchName(key.tonic);
  const read = readKey(written);
  if (!read.ok) return formatKey(key);
  const mode = written.trim().replace(/^[A-G](?:[#b♯♭]|[ -]?(?:flat|sharp)\b)?[ \t-]*/i, '');
  if (key.mode === 'major' && (mode === '' || mode === 'm')) return tonic;
  if (key.mode === 'minor' && (mode === 'm' || (mode === '' && read.value.mode === 'minor')))
    return `${tonic}m`;
  return formatKey(key);
}

/** A field line with another value; its name and spaces stay. */
export function withValue(line: string, value: string): string {
  return line.replace(
    /^([^:]*:[ \t\u00a0]*).*$/,
    (_, head: string) => (/\s$/.test(head) ? head : `${head} `) + value,
  );
}

/** The column at which a group sets all its values, where it lines them up; 0 where it does not. */
export function valueColumn(group: FieldGroup | undefined): number {
  const written = group?.fields.filter(({ line }) => line.value !== '') ?? [];
  const [first] = written;
  if (!first || !written.every(({ line }) => line.valueStart === first.line.valueStart)) return 0;
  // A single field lines nothing up, unless room was left for it.
  const room = first.line.valueStart - first.line.nameEnd > 2;
  return written.length > 1 || room ? first.line.valueStart : 0;
}

/** A new field line whose value stands at a column, as far as its name leaves room. */
export function fieldLine(name: string, value: string, column: number): string {
  return `${name}:`.padEnd(Math.max(column, name.length + 2)) + value;
}
