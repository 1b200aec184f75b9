import type { Diagnostic, Mend, Severity } from '../checks/check';
import type { StrainLimits } from '../instrument/strings/limits';
import type { Place, Range, TextEdit } from '../notation/tabDocument';

/** Plain records in and out of the language service. One file of the server turns them into protocol types. */
export type { Place, Range, TextEdit };

export type { Diagnostic, Mend, Severity };

export interface Hover {
  /** Markdown that reads as plain text too. */
  readonly markdown: string;
  readonly range: Range;
  /** Shows what the words say as well; for editors that show pictures in a hover. */
  readonly picture?: Picture;
}

/** An SVG document of its own, readable on light and dark grounds, and what it shows in words. */
export interface Picture {
  readonly svg: string;
  readonly alt: string;
  /** Where it stands: an offset in the words, at the end of a paragraph. */
  readonly at: number;
}

export interface OutlineItem {
  readonly name: string;
  readonly detail: string;
  readonly kind: 'part' | 'section' | 'system';
  readonly range: Range;
  /** Inside `range`. */
  readonly selection: Range;
  readonly children: readonly OutlineItem[];
}

export interface FoldingRange {
  readonly startLine: number;
  readonly endLine: number;
}

export interface CompletionItem {
  readonly label: string;
  readonly detail: string;
  readonly documentation: string;
  readonly edit: TextEdit;
  /** Changes elsewhere that come with it; none overlaps `edit` or another. */
  readonly moreEdits?: readonly TextEdit[];
  /** What an editor compares with the text at the edit's place; the label where it is left out. */
  readonly filterText?: string;
  /** Sorts before others with a greater text. */
  readonly sortText: string;
  readonly kind: 'field' | 'value' | 'row' | 'system';
}

export interface InlayHint {
  readonly place: Place;
  readonly label: string;
  readonly tooltip: string;
}

/** A line of words above a line of the text. */
export interface SectionLens {
  readonly line: number;
  readonly text: string;
}

export interface SemanticToken {
  readonly line: number;
  readonly start: number;
  readonly length: number;
  readonly type: SemanticTokenType;
  readonly modifiers: readonly SemanticTokenModifier[];
}

export const SEMANTIC_TOKEN_TYPES = [
  'tabField',
  'tabValue',
  'tabSection',
  'tabLabel',
  'tabBar',
  'tabFret',
  'tabMuted',
  'tabTechnique',
  'tabHarmonic',
  'tabRow',
  'tabChord',
  'tabCount',
  'tabRemark',
] as const;
export type SemanticTokenType = (typeof SEMANTIC_TOKEN_TYPES)[number];

export const SEMANTIC_TOKEN_MODIFIERS = ['ghost', 'outOfRange'] as const;
export type SemanticTokenModifier = (typeof SEMANTIC_TOKEN_MODIFIERS)[number];

/** What the user has set; defaults in `settings.ts`. */
export interface Settings {
  /** Widest stretch of one column, in millimetres between lowest and highest stopped fret. */
  readonly reach: number;
  /** Whether the thumb may stop a string from above the neck; not in classical technique. */
  readonly thumb: boolean;
  /** The user's own tunings: name → value. */
  readonly tunings: Readonly<Record<string, string>>;
  /** Where something is told about a string's tension and strength, as shares. */
  readonly strain: StrainLimits;
  /** Whether a line above each section sums it up. */
  readonly sectionLens: boolean;
  /** A code → severity, or `off`. */
  readonly severities: Readonly<Record<string, Severity | 'off'>>;
}
