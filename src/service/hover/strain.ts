import type { Gauge } from '../../instrument/gauges';
import { percentChange, shareWords } from '../../instrument/strings/strainWords';
import type { Header } from '../../notation/header';
import type { Settings } from '../records';
import { strainAnswer } from '../strings/strainAnswer';
import { strungNeck } from '../strings/strings';
import type { StringsAnswer, StringStrain } from '../strings/stringsAnswer';
import { lines, paragraphs } from './text';

/** What the strings bear, a line for each, string 1 first; empty where no gauges are known. */
export function strainHover(header: Header, settings: Settings): string {
  const answer = strainAnswer(strungNeck(header), settings.strain);
  if (answer.gaugesAre === 'unknown') return '';
  const sizes = sizesOf(header);
  const each = [...answer.strings]
    .sort((a, b) => a.number - b.number || a.course - b.course)
    .map((string) => `- ${stringLine(string, sizes)}`);
  return paragraphs(
    each.join('\n'),
    lines(totalLine(answer), ...answer.told),
    lines(cautionLine(answer), `Changes are counted from ${answer.against}`),
  );
}

function stringLine(string: StringStrain, sizes: ReadonlyMap<string, Gauge>): string {
  const { number, course, note, gauge, change, newtons, pounds, steel } = string;
  const size = gauge === null ? undefined : sizes.get(gauge);
  const parts = [
    ...(change ? [percentChange(change.ratio)] : []),
    ...(newtons === null || pounds === null ? [] : [pull(newtons, pounds)]),
    ...(steel ? [`${shareWords(steel.share)} of its strength`] : []),
    ...(gauge === null ? [] : [size ? `${gauge} (${size.millimetres.toFixed(2)} mm)` : gauge]),
  ];
  return `String ${number}${course === 2 ? ', second' : ''}, ${note}: ${parts.join(', ')}`;
}

/** `72.2 N (16.2 lb)`: newtons and pounds of force. */
function pull(newtons: number, pounds: number): string {
  return `${newtons.toFixed(1)} N (${pounds.toFixed(1)} lb)`;
}

function totalLine({ total }: StringsAnswer): string {
  if (!total) return '';
  const change = total.change ? `${percentChange(total.change.ratio)}, ` : '';
  return `**The whole set: ${change}${pull(total.newtons, total.pounds)}**`;
}

/** A hover is short: the cautions in full where something is told, else whose figures come first. */
function cautionLine({ told, cautions, strings }: StringsAnswer): string {
  const more = strings.some(({ change }) => change !== null && change.ratio > 1.05);
  return told.length > 0 || more
    ? cautions.join(' ')
    : 'Worked out from published unit weights; the string maker’s figures come first';
}

function sizesOf({ gauges }: Header): ReadonlyMap<string, Gauge> {
  return new Map(
    (gauges ?? []).flatMap((gauge) =>
      [gauge, ...(gauge.partner ? [gauge.partner] : [])].map((one) => [one.text.split('/')[0] ?? '', one]),
    ),
  );
}
