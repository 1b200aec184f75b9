import { failed, ok, type Result } from '../music/result';
import { writtenRange } from './frets';
import { isReentrant } from './isReentrant';
import { MILLIMETRES_PER_INCH } from './scaleLength';
import type { Tuning } from './tuning';

/** The thickness of one string, or of a course. */
export interface Gauge {
  /** Outer diameter. */
  readonly millimetres: number;
  readonly wound: boolean;
  /** As it was written, such as `46w`. */
  readonly text: string;
  /** The second string of a course, where it was written: `47w/27w`. */
  readonly partner?: Gauge;
}

/** Thinnest and thickest string that is taken for one, in millimetres: .005 in to .200 in. Common practice, no source. */
const THINNEST = 0.12;
const THICKEST = 5.1;

/** A number, a unit or none, w for wound or p for plain, in either order. */
const GAUGE = /^(\d*\.?\d+)\s*(mm|in|["”″])?\s*(w|wound|p|plain)?\s*(mm|in|["”″])?$/i;

/**
 * Reads the value of `gauges:`, low string first: thousandths of an inch (`46w`), inches (`.046w`) or millimetres
 * (`0.26 mm`, where a last `mm` stands for all); `w` is wound; the two strings of a course with a slash. Spaces,
 * commas or hyphens stand between. A list written thin to thick, on a tuning whose strings rise, is taken the other
 * way round, with the notice `gauges-reversed`.
 * Errors: `gauge`, `gauge-range` (.005 in to .200 in), `gauge-count` with what was counted.
 * @param tuning whether its strings rise; without it they are taken to
 * @example readGauges('46w 36w 26w 17 13 10', 6)
 */
export function readGauges(text: string, stringCount: number, tuning?: Tuning): Result<readonly Gauge[]> {
  const { start, end } = writtenRange(text);
  const metric = /mm\s*$/i.test(text) && (text.match(/mm/gi) ?? []).length === 1;
  const gauges: Gauge[] = [];
  for (const token of tokensOf(text)) {
    const parts: Gauge[] = [];
    for (const part of token.text.split('/')) {
      const gauge = gaugeOf(part, metric);
      if (gauge === undefined) {
        return failed(
          'gauge',
          `“${token.text}” is no string gauge. Write thousandths of an inch such as 46w, or millimetres such as 0.26 mm; w is for wound.`,
          token.start,
          token.start + token.text.length,
        );
      }
      if (gauge.millimetres < THINNEST || gauge.millimetres > THICKEST) {
        const asMetric = gauge.millimetres / MILLIMETRES_PER_INCH;
        return failed(
          'gauge-range',
          `A string of ${token.text} would be ${gauge.millimetres} mm thick; strings lie between .005 in and .200 in. Write mm after millimetres.`,
          token.start,
          token.start + token.text.length,
          asMetric >= THINNEST && asMetric <= THICKEST && !/mm/i.test(text) ? [`${text.trim()} mm`] : [],
        );
      }
      parts.push(gauge);
    }
    const [first, second, third] = parts;
    if (first === undefined || third !== undefined) {
      return failed(
        'gauge',
        'A course has two strings, such as 47w/27w.',
        token.start,
        token.start + token.text.length,
      );
    }
    gauges.push(second === undefined ? first : { ...first, text: token.text, partner: second });
  }
  if (gauges.length !== stringCount) {
    return failed(
      'gauge-count',
      `The tuning has ${stringCount} ${stringCount === 1 ? 'string' : 'strings'}, and ${gauges.length} ${gauges.length === 1 ? 'gauge is' : 'gauges are'} written. Write one for each string, the lowest-placed string first.`,
      start,
      end,
    );
  }
  if (!isThinToThick(gauges) || (tuning !== undefined && isReentrant(tuning))) return ok(gauges);
  const turned = [...gauges].reverse();
  const message =
    'The gauges are written thin to thick; they are read the other way round, the thickest for the lowest string.';
  return ok(turned, [{ kind: 'gauges-reversed', message, start, end, suggestions: [formatGauges(turned)] }]);
}

/** The list as it would be written, low string first. */
export function formatGauges(gauges: readonly Gauge[]): string {
  return gauges.map((gauge) => gauge.text).join(' ');
}

function isThinToThick(gauges: readonly Gauge[]): boolean {
  const sizes = gauges.map((gauge) => gauge.millimetres);
  const rises = sizes.every((size, index) => index === 0 || size >= (sizes[index - 1] ?? 0));
  return rises && (sizes[0] ?? 0) < (sizes.at(-1) ?? 0);
}

interface Token {
  readonly text: string;
  readonly start: number;
}

/** The gauges one by one; a unit or a `w` that stands apart belongs to the number before it. */
function tokensOf(text: string): readonly Token[] {
  const matches = text.matchAll(
    /[^\s,;–—-]+(?:\s+(?:mm|in|["”″]|wound|plain|w|p)(?=[\s,;/–—-]|$))*(?:\/[^\s,;–—-]+)*/gi,
  );
  return Array.from(matches, (match) => ({ text: match[0], start: match.index }));
}

function gaugeOf(text: string, metric: boolean): Gauge | undefined {
  const match = GAUGE.exec(text.trim());
  if (!match || (match[2] !== undefined && match[4] !== undefined)) return undefined;
  const number = Number(match[1]);
  const unit = (match[2] ?? match[4])?.toLowerCase();
  let millimetres: number;
  if (unit === 'mm' || (metric && unit === undefined)) millimetres = number;
  else if (unit !== undefined || number < 5) millimetres = number * MILLIMETRES_PER_INCH;
  else millimetres = (number / 1000) * MILLIMETRES_PER_INCH;
  const wound = (match[3] ?? '').toLowerCase().startsWith('w');
  const suffix = metric && unit === undefined ? ' mm' : '';
  return { millimetres: Math.round(millimetres * 1e5) / 1e5, wound, text: text.trim() + suffix };
}
