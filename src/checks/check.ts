import type { Header } from '../notation/header';
import type { Problem, SystemReading } from '../notation/reading';
import type { StrainLimits } from '../instrument/strings/limits';
import type { FieldGroup, Range, RingingNote, System, TabDocument, TextEdit } from '../notation/tabDocument';
import type { StretchPair } from './support/stretches';

/**
 * How grave a finding is: `error` what cannot be resolved, `warning` what was surely not meant, `information` what is
 * good to know, `hint` what could be written better.
 */
export type Severity = 'error' | 'warning' | 'information' | 'hint';

/** A repair that the user can take: one edit, one undo step. Edits count in the text as it is and stand last place first. */
export interface Mend {
  readonly title: string;
  readonly edits: readonly TextEdit[];
  /** Whether it does what was surely meant and harms nothing. */
  readonly preferred: boolean;
  /** Whether no note, no onset and no repeat changes by it, so that it may be taken with all others of its kind. */
  readonly harmless?: boolean;
}

/** Something a check has found, at its place in the document. */
export interface Finding {
  readonly range: Range;
  /** One clear sentence: what was expected, where, and a mend. */
  readonly message: string;
  readonly mends: readonly Mend[];
  /** Where it is graver or milder than the check is by default; what the user has set comes before it. */
  readonly severity?: Severity;
}

/** A finding as it is shown. */
export interface Diagnostic extends Finding {
  readonly severity: Severity;
  /** Stable, in kebab case; also the anchor of its paragraph in the help page. */
  readonly code: string;
}

/** What checks depend on beside the document. */
export interface CheckSettings {
  /** Widest stretch of one column, in millimetres between lowest and highest stopped fret. */
  readonly reach: number;
  /** Where something is told about a string's strength and tension; `USUAL_LIMITS` where it is left out. */
  readonly strain?: StrainLimits;
  /** A code → severity, or `off`. */
  readonly severities: Readonly<Record<string, Severity | 'off'>>;
}

// ---- inside a system: everything counts from its first line, so that it stays true while the system moves

/** A replacement inside one line of a system; a line break in `text` makes lines. */
export interface LineEdit {
  /** Counts from the system's first line. */
  readonly line: number;
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

export interface SystemMend {
  readonly title: string;
  readonly preferred?: boolean;
  /** As for a `Mend`. */
  readonly harmless?: boolean;
  /** Edits of the system, or of the document around it; undefined where there is nothing to offer. */
  readonly edits:
    readonly LineEdit[] | ((document: TabDocument, system: System) => readonly TextEdit[] | undefined);
}

export interface SystemFinding {
  readonly line: number;
  readonly start: number;
  readonly end: number;
  readonly message: string;
  readonly mends?: readonly SystemMend[];
}

/** What a check sees of a system. */
export interface Scene {
  readonly system: System;
  readonly reading: SystemReading;
  readonly header: Header;
  /** What rings into the system. */
  readonly ringing: readonly RingingNote[];
  /** Millimetres. */
  readonly reach: number;
}

// ---- a check

/** What a check looks at decides when it runs again. */
export interface Runs {
  /** A line outside all systems that was nearly something else. */
  readonly nearMiss?: (document: TabDocument, line: number) => readonly Finding[];
  /** Fields that stand together. */
  readonly fields?: (group: FieldGroup, document: TabDocument, settings: CheckSettings) => readonly Finding[];
  /** One system, with what rings into it. */
  readonly system?: (scene: Scene) => readonly SystemFinding[];
  /** A system and the one before it. */
  readonly neighbours?: (document: TabDocument, before: System, system: System) => readonly Finding[];
  /** What two parts have of a section that they share; asked where bars, meter or repeats of either have changed. */
  readonly parts?: (document: TabDocument, pair: StretchPair) => readonly Finding[];
}

export type HelpGroup =
  'Fields' | 'Lines' | 'Labels and strings' | 'Bars' | 'Signs' | 'Rows' | 'Chords' | 'The hand';

export interface Check {
  /** Stable, in kebab case; the user's settings and the help page go by it. */
  readonly code: string;
  readonly severity: Severity;
  /** A few words for lists. */
  readonly title: string;
  readonly help: {
    readonly group: HelpGroup;
    /** What it means and why it is told. */
    readonly meaning: string;
    readonly mending: string;
  };
  readonly run: Runs;
  /** Whole small documents. The first that raises it is the help page's example. */
  readonly examples: {
    readonly raises: readonly string[];
    /** Near ones that must not raise it. */
    readonly quiet: readonly string[];
  };
}

/** The problems of one kind that the reading of a system has met. */
export function problemsOf(scene: Scene, ...kinds: readonly string[]): readonly Problem[] {
  const { problems } = scene.reading;
  return problems.length === 0 ? problems : problems.filter(({ kind }) => kinds.includes(kind));
}

/** A fact of a problem as text. */
export function textFact(problem: Problem, name: string): string {
  const value = problem.facts[name];
  return typeof value === 'string' ? value : typeof value === 'number' ? String(value) : '';
}

/** A fact of a problem as a number; NaN when it is none. */
export function numberFact(problem: Problem, name: string): number {
  const value = problem.facts[name];
  return typeof value === 'number' ? value : NaN;
}

/** A fact of a problem as a list of numbers. */
export function numbersFact(problem: Problem, name: string): readonly number[] {
  const value = problem.facts[name];
  return Array.isArray(value) ? value.filter((item): item is number => typeof item === 'number') : [];
}

/** A finding where a problem stands. */
export function findingAt(
  problem: Problem,
  message: string,
  mends: readonly SystemMend[] = [],
): SystemFinding {
  return { line: problem.line, start: problem.start, end: problem.end, message, mends };
}
