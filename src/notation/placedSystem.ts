import type { Header } from './header';
import { formatTuningNotes } from '../instrument/tuningFormat';
import { formatCapo } from '../instrument/capo';
import { formatKey } from '../music/key';
import { formatMeter } from '../music/meter';
import type { ParsedLine } from './parsedLine';
import type { SystemReading } from './reading';
import { Recent } from './recent';
import { readSystem, type SystemPosition } from './systemReading';
import type { Section, System } from './tabDocument';

/** A system in its document. `firstLine`, `section` (whose line moves too) and `ringVersion` are kept by the document alone. */
export class PlacedSystem implements System, SystemPosition {
  firstLine: number;
  ringVersion = 0;
  private known: SystemReading | undefined;

  constructor(
    firstLine: number,
    readonly lines: readonly ParsedLine[],
    readonly header: Header,
    public section: Section | undefined,
    readonly firstInPart: boolean,
    readonly firstInSection: boolean,
  ) {
    this.firstLine = firstLine;
  }

  get reading(): SystemReading {
    this.known ??= remember(this.lines, this.header, this);
    return this.known;
  }

  /** Whether it means the same as another would: the same lines at the same place under the same fields. */
  isLike(
    lines: readonly ParsedLine[],
    header: Header,
    section: Section | undefined,
    position: SystemPosition,
  ): boolean {
    return (
      this.header === header &&
      this.firstInPart === position.firstInPart &&
      this.firstInSection === position.firstInSection &&
      this.section?.name === section?.name &&
      sameLines(this.lines, lines)
    );
  }
}

interface Remembered {
  readonly lines: readonly ParsedLine[];
  readonly key: string;
  readonly reading: SystemReading;
}

/*
 * Readings are remembered by their lines and by the fields that they depend on, so that a new title re-reads nothing
 * and a repeated system is read once. Lines are shared records (parseLine), so identity is equality. A system holds its
 * own reading; this is for what was read lately, some 15 KB a reading.
 */
const readings = new Recent<ParsedLine, readonly Remembered[]>(200);
const MOST_PER_LINE = 4;

function remember(lines: readonly ParsedLine[], header: Header, position: SystemPosition): SystemReading {
  const [first] = lines;
  if (!first) return readSystem(lines, header, position);
  const key = `${soundKey(header)}${position.firstInPart ? 'p' : ''}${position.firstInSection ? 's' : ''}`;
  const list = readings.get(first) ?? [];
  const known = list.find((entry) => entry.key === key && sameLines(entry.lines, lines));
  if (known) return known.reading;
  const reading = readSystem(lines, header, position);
  readings.set(first, [...list.slice(1 - MOST_PER_LINE), { lines, key, reading }]);
  return reading;
}

function sameLines(a: readonly ParsedLine[], b: readonly ParsedLine[]): boolean {
  return a.length === b.length && a.every((line, i) => line === b[i]);
}

const soundKeys = new WeakMap<Header, string>();

/** The fields that a reading depends on, as one text. */
function soundKey(header: Header): string {
  let key = soundKeys.get(header);
  if (key === undefined) {
    const { instrument, tuning, capo, frets, meter } = header;
    key = [
      instrument.name,
      formatTuningNotes(tuning),
      tuning.strings.map((string) => string.firstFret).join(),
      capo ? formatCapo(capo) : '',
      frets,
      header.key ? formatKey(header.key) : '',
      formatMeter(meter),
      '',
    ].join('|');
    soundKeys.set(header, key);
  }
  return key;
}
