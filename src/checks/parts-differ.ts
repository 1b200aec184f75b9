import { formatMeter, type Meter } from '../music/meter';
import type { System, TabDocument } from '../notation/tabDocument';
import type { Check, Finding } from './check';
import { rangeOf } from './support/edits';
import type { Stretch } from './support/stretches';

export const partsDiffer: Check = {
  code: 'parts-differ',
  severity: 'warning',
  title: 'Parts that come apart',
  help: {
    group: 'Bars',
    meaning:
      'Two parts have the same section, or both begin the piece, and are meant to be played together, but one of them has more bars there, another meter, or other repeats. Parts count their bars apart, so all that follows stands at another time than it seems to. Parts that share no section are not compared.',
    mending:
      'Write the bars that are missing (bars of dashes where the part is silent), or take out what is too much. Where the parts are not meant to go together, give them headings of their own.',
  },
  run: {
    parts: (document, { earlier, later }) => {
      const [first, second] = [shapeOf(document, earlier), shapeOf(document, later)];
      const told = meterDiffers(first, second) ?? barsDiffer(first, second) ?? repeatsDiffer(first, second);
      const system = document.systems[later.systems[told?.system ?? 0] ?? -1];
      return told && system ? [{ ...placeAt(system), message: told.message, mends: [] }] : [];
    },
  },
  examples: {
    raises: [
      'part: lead\n[Verse]\nE|0---|2---|\n\npart: second\n[Verse]\nE|3---|\n',
      '[Verse]\npart: lead\nE|0---|2---|\n\npart: second\nE|3---|5---|\n\nE|7---|\n',
      'part: lead\nE|0---|\n\nmeter: 3/4\n\nE|2---|\n\npart: second\nE|3---|5---|\n',
      'part: lead\nE|0---|2---|\n\npart: second\nE|:3---|5---:|\n',
      'part: lead\n[Chorus] x2\nE|0---|\n\npart: second\n[Chorus]\nE|3---|\n',
      'part: lead\ncount |4 |1 2 3 4 |\nE     |0-|2-------|\n\npart: second\nE|3---|\n',
    ],
    quiet: [
      'part: lead\n[Verse]\nE|0---|2---|\n\npart: second\n[Verse]\nE|3---|\n\nE|5---|\n',
      'part: lead\n[Verse]\nE|0---|2---|\n\npart: second\n[Chorus]\nE|3---|\n',
      'part: lead\nE|0---|2---|\n\n[Verse]\nE|0---|\n\npart: second\n[Bridge]\nE|3---|\n',
      'part: lead\nE|:0---|2---:|\n\npart: second\nE|:3---|5---:|\n',
      '[Verse]\nE|0---|2---|\n\n[Chorus]\nE|3---|\n',
    ],
  },
};

interface ShapeOfStretch {
  /** As it is named to the user, with its line: `part “lead” (line 3)`. */
  readonly name: string;
  readonly nameWithLine: string;
  /** ` in [Verse]`, or nothing where the parts have no headings. */
  readonly where: string;
  /** Without a pickup. */
  readonly bars: number;
  readonly pickup: boolean;
  /** Where each meter begins: a bar counted from 1, and the place of its system in the stretch. */
  readonly meters: readonly { readonly bar: number; readonly system: number; readonly meter: Meter }[];
  /** How often what is played how often: `bars 1–4 twice`. */
  readonly repeats: readonly string[];
}

function shapeOf(document: TabDocument, { part, section, systems }: Stretch): ShapeOfStretch {
  let bars = 0;
  let pickup = false;
  const meters: { bar: number; system: number; meter: Meter }[] = [];
  const repeats: string[] = [];
  let meter: Meter | undefined;
  const all = document.systems;
  for (let i = 0; i < systems.length; i++) {
    const system = all[systems[i] ?? -1];
    if (!system) continue;
    const { reading, header } = system;
    if (header.meter !== meter) {
      if (meter?.upper !== header.meter.upper || meter.lower !== header.meter.lower)
        meters.push({ bar: bars + 1, system: i, meter: header.meter });
      meter = header.meter;
    }
    if (i === 0 && reading.bars[0]?.pickup) {
      pickup = true;
      bars = -1;
    }
    for (const { firstBar, lastBar, times } of reading.repeats)
      repeats.push(`${barRange(bars + 1 + firstBar, bars + 1 + lastBar)} ${timesInWords(times)}`);
    bars += reading.bars.length;
  }
  if (section?.times !== undefined && section.times > 1)
    repeats.push(`the whole section ${timesInWords(section.times)}`);
  const name = part === undefined || part === '' ? 'the part without a name' : `part “${part}”`;
  const line = (all[systems[0] ?? -1]?.firstLine ?? 0) + 1;
  return {
    name,
    nameWithLine: `${name} (line ${line})`,
    where: section ? ` in [${section.name}]` : '',
    bars,
    pickup,
    meters,
    repeats,
  };
}

interface Told {
  readonly message: string;
  /** Place of a system in the later stretch; the first where left out. */
  readonly system?: number;
}

function meterDiffers(first: ShapeOfStretch, second: ShapeOfStretch): Told | undefined {
  const bars = [...new Set([...first.meters, ...second.meters].map(({ bar }) => bar))].sort((a, b) => a - b);
  for (const bar of bars) {
    const [one, other] = [meterAt(first, bar), meterAt(second, bar)];
    if (!one || !other || (one.meter.upper === other.meter.upper && one.meter.lower === other.meter.lower))
      continue;
    // Beyond the end of one there is nothing to compare; that its bars are fewer is told instead.
    if (bar > Math.min(first.bars, second.bars)) return undefined;
    return {
      system: other.system,
      message: `${capital(second.name)} is in ${formatMeter(other.meter)} from bar ${bar}${second.where}, and ${first.nameWithLine} in ${formatMeter(one.meter)}, so the two come apart. Write the same meter in both.`,
    };
  }
  return undefined;
}

function meterAt({ meters }: ShapeOfStretch, bar: number): ShapeOfStretch['meters'][number] | undefined {
  return meters.findLast((one) => one.bar <= bar);
}

function barsDiffer(first: ShapeOfStretch, second: ShapeOfStretch): Told | undefined {
  if (first.bars === second.bars && first.pickup === second.pickup) return undefined;
  const mend =
    first.bars === second.bars
      ? 'Write the pickup in both, of dashes where a part is silent.'
      : `Write the ${missing(Math.abs(first.bars - second.bars))}, or take out what is too much.`;
  return {
    message: `${capital(second.name)} has ${barsInWords(second, first)}${second.where}, and ${first.nameWithLine} has ${barsInWords(first, second)}, so the two come apart. ${mend}`,
  };
}

function missing(count: number): string {
  return count === 1 ? 'missing bar' : `${count} missing bars`;
}

function barsInWords({ bars, pickup }: ShapeOfStretch, other: ShapeOfStretch): string {
  const count = `${bars} ${bars === 1 ? 'bar' : 'bars'}`;
  if (pickup === other.pickup) return count;
  return `${count} ${pickup ? 'and a pickup' : 'without a pickup'}`;
}

function repeatsDiffer(first: ShapeOfStretch, second: ShapeOfStretch): Told | undefined {
  if (
    first.repeats.length === second.repeats.length &&
    first.repeats.every((one, i) => one === second.repeats[i])
  )
    return undefined;
  return {
    message: `${capital(second.name)} plays ${repeatsInWords(second)}${second.where}, and ${first.nameWithLine} ${repeatsInWords(first)}, so the two come apart. Write the same repeats in both.`,
  };
}

function repeatsInWords({ repeats }: ShapeOfStretch): string {
  return repeats.length === 0 ? 'every bar once' : repeats.join(' and ');
}

function barRange(first: number, last: number): string {
  return first === last ? `bar ${first}` : `bars ${first}–${last}`;
}

function timesInWords(times: number): string {
  return times === 1 ? 'once' : times === 2 ? 'twice' : `${times} times`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** The label of a system's first line. */
function placeAt(system: System): Pick<Finding, 'range'> {
  const at = system.lines.findIndex((line) => line.kind === 'string' || line.kind === 'row');
  const line = system.lines[at];
  const number = system.firstLine + Math.max(0, at);
  if (line?.kind === 'string') return { range: rangeOf(number, line.label.start, line.label.end) };
  if (line?.kind === 'row') return { range: rangeOf(number, line.wordStart, line.wordEnd) };
  return { range: rangeOf(number, 0, line?.text.length ?? 0) };
}
