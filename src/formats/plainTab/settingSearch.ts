import { readCapo, type Capo } from '../../instrument/capo';
import type { Instrument } from '../../instrument/instrument';
import { GUITAR } from '../../instrument/instruments';
import type { Tuning } from '../../instrument/tuning';
import { formatTuningNotes, sameTuning } from '../../instrument/tuningFormat';
import { usualTuning } from '../../notation/headerViews';
import { placesThatFit } from '../../notation/labels';
import type { Label } from '../../notation/parsedLine';
import type { Claims, TuningClaim } from './claims';
import { ClaimsByLine } from './claimsByLine';
import type { InForce } from './fieldsBetween';
import { likelyInstruments, withStrings } from './likelyInstruments';
import { labelsFit, labelsOf, placeLines, type Placed } from './placedLines';
import type { PlainSystem } from './plainSystems';
import type { Given, Setting } from './setting';
import { tuningOfClaim, tuningReader, type TuningReader } from './tuningOfClaim';
import { FEWEST_STRINGS, tuningOfLabels } from './tuningOfLabels';

/** The lines of a system, for one question after the other. */
interface Lines {
  readonly n: number;
  /** Line of the text that the first one stands on. */
  readonly line: number;
  /** Empty where not every line has one. */
  readonly labels: readonly Label[];
}

/** Works out the setting of one system after the other. */
export class SettingSearch {
  private readonly known = new Map<string, Setting>();
  private readonly claims: ClaimsByLine;
  private readonly read: TuningReader;
  /** What was played last; before the first system what is in force where the text is pasted. */
  private last: InForce | undefined;
  private lastKey = '';
  /** The setting of the system before, in the text itself. */
  private before: Setting | undefined;

  /**
   * @param most the most lines that a system of the text has
   * @param end the line behind the last system
   */
  constructor(
    claims: Claims,
    private readonly given: Given,
    private readonly most: number,
    end: number,
  ) {
    this.claims = new ClaimsByLine(claims, end);
    this.read = tuningReader(given.userTunings);
    this.last = given.inForce;
  }

  /** The setting of a system, which comes after the one asked for last. */
  of(system: PlainSystem): Setting {
    const line = system.strings[0]?.line ?? 0;
    const above = this.claims.countAbove(line);
    const labels = system.strings.map(({ label }) => label).join(' ');
    const key = `${above} ${system.strings.length} ${labels} ${this.lastKey}`;
    let setting = this.known.get(key);
    if (!setting) this.known.set(key, (setting = this.work(system, line)));
    if (setting !== this.before) {
      this.before = this.last = setting;
      this.lastKey = `${setting.instrument.name} ${formatTuningNotes(setting.tuning)}`;
    }
    return setting;
  }

  private work(system: PlainSystem, line: number): Setting {
    const { given, claims, last } = this;
    const n = system.strings.length;
    const lines: Lines = { n, line, labels: system.labelled ? labelsOf(system) : [] };
    const said = given.instrument ?? this.instrumentSaid(lines);
    const before = last && (last.tuning.strings.length === n || lines.labels.length > 0) ? last : undefined;
    const likely = likelyInstruments(n, before?.instrument);
    const tried = said ? [said] : (this.partOf(lines) ?? likely);
    const found =
      first(tried, (one) => this.fitting(one, lines)) ??
      this.loose(said ?? tried[0] ?? GUITAR, lines, likely);
    const { instruments, tunings, capos } = claims.all;
    const [capo] = claims.around(capos, line);
    return {
      ...found,
      capo: capoOf(capo?.value ?? 'none', found),
      capoBy: capo === undefined ? 'nothing' : capo.field ? 'field' : 'words',
      instrumentSaid: said !== undefined,
      fieldLines: [
        ...claims
          .around(instruments, line)
          .filter((claim) => claim.field && claim.instrument === found.instrument),
        ...claims.around(tunings, line).filter((claim) => {
          const tuning = claim.field ? tuningOfClaim(claim, found.instrument, n, this.read) : undefined;
          return tuning !== undefined && sameTuning(tuning, found.tuning);
        }),
        ...claims.around(capos, line).filter((claim) => claim.field && claim === capo),
      ].map((claim) => claim.line),
    };
  }

  /** The instrument that the words name for so many lines, the nearest above first. */
  private instrumentSaid({ n, line, labels }: Lines): Instrument | undefined {
    for (const { instrument } of this.claims.around(this.claims.all.instruments, line)) {
      const fits = withStrings(instrument, n);
      if (fits) return fits;
      const part = labels.length > 0 && placesThatFit(labels, usualTuning(instrument), 1).length > 0;
      if (part && n < instrument.firstFrets.length) return instrument;
    }
    return undefined;
  }

  /** Fewer lines than the other systems have, whose labels are some of the same strings. */
  private partOf({ n, labels }: Lines): Instrument[] | undefined {
    if (labels.length === 0) return undefined;
    const { before, given } = this;
    const fits = (tuning: Tuning): boolean => placesThatFit(labels, tuning, 1).length > 0;
    if (before && n < before.tuning.strings.length && fits(before.tuning)) return [before.instrument];
    const few = n < FEWEST_STRINGS;
    if (few && given.inForce && fits(given.inForce.tuning)) return [given.inForce.instrument];
    return (few || (n < this.most && this.most === 6)) && fits(usualTuning(GUITAR)) ? [GUITAR] : undefined;
  }

  /** An instrument whose tuning, by the words, by what is in force or by habit, has the labels. */
  private fitting(instrument: Instrument, { n, labels, line }: Lines): Placed | undefined {
    const { given, claims } = this;
    const turned = claims.all.upsideDown;
    const usual = usualTuning(instrument);
    const place = (tuning: Tuning, by: Setting['tuningBy'], upsideDown = turned): Placed =>
      placeLines(instrument, tuning, labels, n, by, upsideDown);
    const told = given.tuning === undefined ? undefined : this.read(given.tuning, instrument);
    if (told) return place(told, 'caller');
    const said = this.tuningsSaid(instrument, n, line);
    const firm = said.find(({ claim }) => claim.firm);
    const last = this.last?.instrument === instrument ? this.last.tuning : undefined;
    const lastBy = this.before ? 'usual' : 'there';
    if (labels.length === 0) {
      const goesOn = last?.strings.length === n ? last : undefined;
      if (usual.strings.length !== n && !goesOn) return undefined;
      if (firm) return place(firm.tuning, sayer(firm.claim));
      return goesOn ? place(goesOn, lastBy) : place(usual, 'usual');
    }
    for (const upsideDown of [false, true]) {
      const fit = said.find(({ tuning }) => labelsFit(labels, tuning, upsideDown));
      if (fit) return place(fit.tuning, sayer(fit.claim), upsideDown);
      const habit = labelsFit(labels, usual, upsideDown);
      if (firm && habit) return place(firm.tuning, sayer(firm.claim), upsideDown);
      const there = given.inForce?.instrument === instrument ? given.inForce.tuning : undefined;
      if (there && labelsFit(labels, there, upsideDown)) return place(there, 'there', upsideDown);
      if (habit) return place(usual, 'usual', upsideDown);
    }
    return undefined;
  }

  /** No tuning that is said or usual has the labels: they tell it themselves, else it is as the words or habit have it. */
  private loose(instrument: Instrument, { n, labels, line }: Lines, likely: readonly Instrument[]): Placed {
    const kin = [instrument, ...likely].filter((one) => one.firstFrets.length === n);
    const told = labels.length === n ? tuningOfLabels(labels, kin, instrument, this.read) : undefined;
    if (told) return told;
    const turned = this.claims.all.upsideDown;
    const firm = this.tuningsSaid(instrument, n, line).find(({ claim }) => claim.firm);
    if (firm) return placeLines(instrument, firm.tuning, labels, n, sayer(firm.claim), turned);
    return placeLines(instrument, usualTuning(instrument), labels, n, 'usual', turned);
  }

  private tuningsSaid(
    instrument: Instrument,
    n: number,
    line: number,
  ): { readonly claim: TuningClaim; readonly tuning: Tuning }[] {
    return this.claims.around(this.claims.all.tunings, line).flatMap((claim) => {
      const tuning = tuningOfClaim(claim, instrument, n, this.read);
      return tuning ? [{ claim, tuning }] : [];
    });
  }
}

function capoOf(value: string, { tuning, instrument }: Placed): Capo | undefined {
  const read = readCapo(value, tuning.strings.length, instrument.frets);
  return read.ok ? read.value : undefined;
}

function sayer({ field }: TuningClaim): 'field' | 'words' {
  return field ? 'field' : 'words';
}

function first<T, R>(list: readonly T[], find: (one: T) => R | undefined): R | undefined {
  for (const one of list) {
    const found = find(one);
    if (found !== undefined) return found;
  }
  return undefined;
}
