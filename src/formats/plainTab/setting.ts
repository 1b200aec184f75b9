import { readCapo, type Capo } from '../../instrument/capo';
import { findInstrument, GUITAR, INSTRUMENTS } from '../../instrument/instruments';
import type { Instrument } from '../../instrument/instrument';
import type { Tuning } from '../../instrument/tuning';
import { nameOfTuning, sameTuning } from '../../instrument/tuningFormat';
import { readTuning } from '../../instrument/tuningValue';
import { tuningsFor } from '../../instrument/tunings';
import { formatPitchName } from '../../music/noteName';
import { usualTuning } from '../../notation/headerViews';
import { labelAgrees, placesThatFit } from '../../notation/labels';
import type { Label } from '../../notation/parsedLine';
import { parseLine } from '../../notation/parseLine';
import type { Claims, TuningClaim } from './claims';
import type { PlainSystem } from './plainSystems';

/** What a system is played on, as far as its text tells. */
export interface Setting {
  readonly instrument: Instrument;
  readonly tuning: Tuning;
  readonly capo: Capo | undefined;
  /** The lines stand with the lowest-placed string on top. */
  readonly upsideDown: boolean;
  /** For each line as it is to be written, top to bottom, the index of its string in the tuning. */
  readonly indices: readonly number[];
  /** The labels are those of the tuning. */
  readonly labelsAgree: boolean;
  readonly instrumentSaid: boolean;
  /** How the tuning was found. */
  readonly tuningBy: 'caller' | 'field' | 'words' | 'labels' | 'usual';
  readonly capoBy: 'field' | 'words' | 'nothing';
  /** The lines of text that say it all in the writing of a field: the fields take their place. */
  readonly fieldLines: readonly number[];
}

/** What the caller says. */
export interface Given {
  readonly instrument: Instrument | undefined;
  readonly tuning: string | undefined;
  readonly userTunings: Readonly<Record<string, string>>;
}

/** Works out the setting of one system after the other. */
export class Settings {
  private readonly known = new Map<string, Setting>();
  private last: Setting | undefined;
  private readonly claimLines: readonly number[];
  private passed = 0;

  /**
   * @param most the most lines that a system of the text has
   * @param end the line behind the last system
   */
  constructor(
    private readonly claims: Claims,
    private readonly given: Given,
    private readonly most: number,
    private readonly end: number,
  ) {
    const all = [...claims.tunings, ...claims.instruments, ...claims.capos];
    this.claimLines = all.map((claim) => claim.line).sort((a, b) => a - b);
  }

  of(system: PlainSystem): Setting {
    const line = system.strings[0]?.line ?? 0;
    const above = this.claimsAbove(line);
    const key = `${above} ${system.strings.map(({ label }) => label).join(' ')} ${system.strings.length}`;
    let setting = this.known.get(key);
    if (!setting) this.known.set(key, (setting = this.work(system, line)));
    return (this.last = setting);
  }

  private work(system: PlainSystem, line: number): Setting {
    const { given, claims, last } = this;
    const n = system.strings.length;
    const labels = system.labelled ? labelsOf(system) : [];
    const said = given.instrument ?? this.instrumentSaid(n, line, labels);
    const before = last && (last.tuning.strings.length === n || labels.length > 0) ? last : undefined;
    const tried = said ? [said] : (this.partOf(before, labels, n) ?? candidates(n, before));
    const found =
      first(tried, (one) => this.fitting(one, n, labels, line)) ??
      this.loose(said ?? tried[0] ?? GUITAR, n, labels, line, before);
    const [capo] = this.around(claims.capos, line);
    const upsideDown = found.upsideDown;
    return {
      ...found,
      upsideDown,
      capo: this.capoOf(capo?.value ?? 'none', found),
      capoBy: capo === undefined ? 'nothing' : capo.field ? 'field' : 'words',
      instrumentSaid: said !== undefined,
      fieldLines: [
        ...this.around(claims.instruments, line).filter(
          (claim) => claim.field && claim.instrument === found.instrument,
        ),
        ...this.around(claims.tunings, line).filter((claim) => {
          const tuning = claim.field ? this.tuningOf(claim, found.instrument, n) : undefined;
          return tuning !== undefined && sameTuning(tuning, found.tuning);
        }),
        ...this.around(claims.capos, line).filter((claim) => claim.field && claim === capo),
      ].map((claim) => claim.line),
    };
  }

  /** How many claims stand above a line, which comes after the one asked for last. */
  private claimsAbove(line: number): number {
    while ((this.claimLines[this.passed] ?? Infinity) < line) this.passed += 1;
    return this.passed;
  }

  /**
   * What is said above a line, the nearest first, then what is said behind the last system: between two systems it is
   * for the later one. Claims are in the order of their lines.
   */
  private around<T extends { readonly line: number }>(claims: readonly T[], line: number): T[] {
    const above = firstFrom(claims, line);
    const behind = Math.max(above, firstFrom(claims, this.end));
    return [
      ...claims.slice(Math.max(0, above - MOST_CLAIMS), above).reverse(),
      ...claims.slice(behind, behind + MOST_CLAIMS),
    ];
  }

  private capoOf(value: string, { tuning, instrument }: Found): Capo | undefined {
    const read = readCapo(value, tuning.strings.length, instrument.frets);
    return read.ok ? read.value : undefined;
  }

  /** The instrument that the words name for so many lines, the nearest above first. */
  private instrumentSaid(n: number, line: number, labels: readonly Label[]): Instrument | undefined {
    const { instruments } = this.claims;
    for (const { instrument } of this.around(instruments, line)) {
      const fits = withStrings(instrument, n);
      if (fits) return fits;
      const part = labels.length > 0 && placesThatFit(labels, usualTuning(instrument), 1).length > 0;
      if (part && n < instrument.firstFrets.length) return instrument;
    }
    return undefined;
  }

  /** Fewer lines than the other systems have, whose labels are some of the same strings. */
  private partOf(before: Setting | undefined, labels: readonly Label[], n: number): Instrument[] | undefined {
    if (labels.length === 0) return undefined;
    const fits = (tuning: Tuning): boolean => placesThatFit(labels, tuning, 1).length > 0;
    if (before && n < before.tuning.strings.length && fits(before.tuning)) return [before.instrument];
    const usual = usualTuning(GUITAR);
    return (n < 4 || (n < this.most && this.most === 6)) && fits(usual) ? [GUITAR] : undefined;
  }

  /** An instrument whose tuning, by the words or by habit, has the labels. */
  private fitting(
    instrument: Instrument,
    n: number,
    labels: readonly Label[],
    line: number,
  ): Found | undefined {
    const { given, claims } = this;
    const usual = usualTuning(instrument);
    const told = given.tuning === undefined ? undefined : this.read(given.tuning, instrument);
    if (told) return placed(instrument, told, labels, n, 'caller', claims.upsideDown);
    const tunings = this.tuningsSaid(instrument, n, line);
    if (labels.length === 0) {
      if (usual.strings.length !== n) return undefined;
      const firm = tunings.find(({ claim }) => claim.firm);
      const tuning = firm?.tuning ?? this.lastTuning(instrument, n) ?? usual;
      return placed(instrument, tuning, labels, n, firm ? sayer(firm.claim) : 'usual', claims.upsideDown);
    }
    for (const upsideDown of [false, true]) {
      const fit = tunings.find(({ tuning }) => fits(labels, tuning, upsideDown));
      if (fit) return placed(instrument, fit.tuning, labels, n, sayer(fit.claim), upsideDown);
      if (!fits(labels, usual, upsideDown)) continue;
      const firm = tunings.find(({ claim }) => claim.firm);
      return placed(
        instrument,
        firm?.tuning ?? usual,
        labels,
        n,
        firm ? sayer(firm.claim) : 'usual',
        upsideDown,
      );
    }
    return undefined;
  }

  /** The tuning goes on where a system has no labels. */
  private lastTuning(instrument: Instrument, n: number): Tuning | undefined {
    const { last } = this;
    return last?.instrument === instrument && last.tuning.strings.length === n ? last.tuning : undefined;
  }

  /** Labels that are those of no usual tuning: a named one, either way up, else their notes. */
  private loose(
    instrument: Instrument,
    n: number,
    labels: readonly Label[],
    line: number,
    before: Setting | undefined,
  ): Found {
    const kin = [instrument, ...candidates(n, before)].filter((one) => one.firstFrets.length === n);
    if (labels.length === n && labels.every(({ notes }) => notes.length > 0)) {
      for (const upsideDown of [false, true]) {
        for (const one of kin) {
          const named = tuningsFor(one).find(({ strings }) =>
            fits(labels, { strings, name: '', text: '' }, upsideDown),
          );
          const tuning = named && this.read(named.name, one);
          if (tuning) return placed(one, tuning, labels, n, 'labels', upsideDown);
        }
      }
      const written = [...labels]
        .reverse()
        .map(({ text }) => noteOf(text))
        .join(' ');
      const owner = kin[0] ?? instrument;
      const tuning = this.read(written, owner);
      if (tuning?.strings.length === n) return placed(owner, tuning, labels, n, 'labels', false);
    }
    const firm = this.tuningsSaid(instrument, n, line).find(({ claim }) => claim.firm);
    const tuning = firm?.tuning ?? usualTuning(instrument);
    return placed(instrument, tuning, labels, n, firm ? sayer(firm.claim) : 'usual', this.claims.upsideDown);
  }

  private tuningsSaid(
    instrument: Instrument,
    n: number,
    line: number,
  ): { readonly claim: TuningClaim; readonly tuning: Tuning }[] {
    const { tunings } = this.claims;
    return this.around(tunings, line).flatMap((claim) => {
      const tuning = this.tuningOf(claim, instrument, n);
      return tuning ? [{ claim, tuning }] : [];
    });
  }

  private tuningOf(claim: TuningClaim, instrument: Instrument, n: number): Tuning | undefined {
    const usual = usualTuning(instrument);
    switch (claim.kind) {
      case 'name':
        return this.read(claim.value, instrument);
      case 'steps':
        return this.read(`standard ${claim.steps > 0 ? '+' : ''}${claim.steps}`, instrument);
      case 'notes': {
        const notes = claim.value.match(/[A-Ga-g](?:#|b|♯|♭)?\d?/g) ?? [];
        const low = claim.highFirst ? notes.toReversed() : notes;
        return low.length === Math.max(n, instrument.firstFrets.length)
          ? this.read(low.map(noteOf).join(' '), instrument)
          : undefined;
      }
      case 'string': {
        const at = claim.string === 0 ? 0 : usual.strings.length - claim.string;
        if (!usual.strings[at]) return undefined;
        const notes = usual.strings.map(({ pitches }, i) =>
          i === at ? claim.value : formatPitchName(pitches[0].name),
        );
        return this.read(notes.join(' '), instrument);
      }
    }
  }

  private read(value: string, instrument: Instrument): Tuning | undefined {
    const read = readTuning(value, { instrument, userTunings: this.given.userTunings });
    return read.ok ? read.value : undefined;
  }
}

type Found = Pick<Setting, 'instrument' | 'tuning' | 'upsideDown' | 'indices' | 'labelsAgree' | 'tuningBy'>;

function sayer({ field }: TuningClaim): 'field' | 'words' {
  return field ? 'field' : 'words';
}

/** `e` is E, `eb` Eb. */
function noteOf(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function labelsOf({ strings }: PlainSystem): Label[] {
  return strings.flatMap(({ label }) => {
    const line = parseLine(`${label} |---|`);
    return line.kind === 'string' ? [line.label] : [];
  });
}

function first<T, R>(list: readonly T[], find: (one: T) => R | undefined): R | undefined {
  for (const one of list) {
    const found = find(one);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** A claim farther away than so many others says nothing of a system. */
const MOST_CLAIMS = 20;

/** The index of the first claim at or behind a line. */
function firstFrom(claims: readonly { readonly line: number }[], line: number): number {
  let [low, high] = [0, claims.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((claims[middle]?.line ?? 0) < line) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The instrument, or its kin with so many strings. */
function withStrings(instrument: Instrument, n: number): Instrument | undefined {
  if (instrument.firstFrets.length === n) return instrument;
  const kin: Readonly<Record<string, readonly string[]>> = {
    bass: ['five-string bass', 'six-string bass'],
    guitar: ['seven-string guitar', 'eight-string guitar'],
  };
  return (kin[instrument.name] ?? [])
    .flatMap((name) => findInstrument(name) ?? [])
    .find(({ firstFrets }) => firstFrets.length === n);
}

/** What so many lines are most often for; common practice, no source. */
const USUAL: Readonly<Record<number, readonly string[]>> = {
  4: ['bass', 'ukulele', 'mandolin', 'baritone ukulele'],
  5: ['five-string bass', 'banjo'],
  6: ['guitar'],
};

function candidates(n: number, before: Setting | undefined): Instrument[] {
  const usual = (USUAL[n] ?? []).flatMap((name) => findInstrument(name) ?? []);
  const others = INSTRUMENTS.filter(({ firstFrets }) => firstFrets.length === n);
  const goesOn = before?.instrument.firstFrets.length === n ? [before.instrument] : [];
  const all = [...new Set([...goesOn, ...usual, ...others])];
  return all.length > 0 ? all : [GUITAR];
}

function fits(labels: readonly Label[], tuning: Tuning, upsideDown: boolean): boolean {
  const inOrder = upsideDown ? labels.toReversed() : labels;
  const n = tuning.strings.length;
  if (inOrder.length === n) return inOrder.every((label, i) => labelAgrees(label, tuning, n - 1 - i));
  return inOrder.length < n && placesThatFit(inOrder, tuning, 1).length > 0;
}

function placed(
  instrument: Instrument,
  tuning: Tuning,
  labels: readonly Label[],
  n: number,
  tuningBy: Setting['tuningBy'],
  turned: boolean,
): Found {
  const count = tuning.strings.length;
  const upright = labels.length > 0 && fits(labels, tuning, false);
  const numbered = labels.some(({ number }) => number !== undefined);
  const upsideDown = upright ? false : labels.length > 0 && fits(labels, tuning, true) ? true : turned;
  const inOrder = upsideDown ? labels.toReversed() : labels;
  const byLabels = n < count ? placesThatFit(inOrder, tuning, 1)[0] : undefined;
  const byUsual = n < count ? placesThatFit(inOrder, usualTuning(instrument), 1)[0] : undefined;
  const indices =
    byLabels ?? byUsual ?? Array.from({ length: n }, (_, i) => n - 1 - i + Math.max(0, count - n));
  const labelsAgree =
    numbered ||
    (labels.length > 0 && inOrder.every((label, i) => labelAgrees(label, tuning, indices[i] ?? -1)));
  return { instrument, tuning, upsideDown, indices, labelsAgree, tuningBy };
}

/** The name of a tuning in a sentence: the trade's, else its notes. */
export function tuningName(tuning: Tuning, instrument: Instrument): string {
  return (
    nameOfTuning(tuning, instrument) ??
    tuning.strings.map(({ pitches }) => formatPitchName(pitches[0].name)).join(' ')
  );
}
