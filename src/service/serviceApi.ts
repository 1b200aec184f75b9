import type { Place, Range, TabDocument, TextEdit } from '../notation/tabDocument';
import type {
  CompletionItem,
  Diagnostic,
  FoldingRange,
  Hover,
  InlayHint,
  Mend,
  OutlineItem,
  SemanticToken,
  Settings,
} from './records';

/**
 * The language service: stateless calls on a document. Nothing here knows of a protocol or an editor.
 * Composed in `languageService.ts` by `createLanguageService()`.
 */
export interface LanguageService {
  /** Reads a text into a document that `edit` keeps up to date. */
  open(text: string, settings: Settings): EditableDocument;
  /** Every diagnostic of the document in the order of the text. The result is remembered system by system. */
  diagnostics(document: TabDocument, settings: Settings): readonly Diagnostic[];
  /** Changes on offer where nothing is wrong, such as writing the count that was worked out. */
  rewrites(document: TabDocument, range: Range): readonly Mend[];
  hover(document: TabDocument, place: Place, settings: Settings): Hover | undefined;
  outline(document: TabDocument): readonly OutlineItem[];
  folding(document: TabDocument): readonly FoldingRange[];
  /** Every place that sounds the pitch under the cursor. */
  highlights(document: TabDocument, place: Place): readonly Range[];
  completion(document: TabDocument, place: Place, settings: Settings): readonly CompletionItem[];
  inlayHints(document: TabDocument, range: Range): readonly InlayHint[];
  semanticTokens(document: TabDocument, range?: Range): readonly SemanticToken[];
  convert(document: TabDocument, request: ConvertRequest, settings: Settings): ChangeResult;
  transpose(document: TabDocument, request: TransposeRequest, settings: Settings): ChangeResult;
  moveCapo(document: TabDocument, request: MoveCapoRequest, settings: Settings): ChangeResult;
  /** Passages that can be named at a place: the selection widened to bar signs, the section, the part, the file. */
  passages(document: TabDocument, selection: Range): readonly Passage[];
  /**
   * The section of `there` that answers to the one at a place of `document`, where one text came of the other by a
   * change: sections are counted. Without headings the part at that place, else the file.
   */
  counterpart(document: TabDocument, place: Place, there: TabDocument): Passage | undefined;
  notes(document: TabDocument): readonly NoteEntry[];
  /** Tunings on offer, nearest to the one in force at `place` first (for pick lists). */
  tuningChoices(document: TabDocument, place: Place, settings: Settings): readonly TuningChoice[];
  tuning(value: string, instrument: string | undefined, settings: Settings): TuningAnswer | ServiceError;
  chord(
    notes: readonly string[],
    key: string | undefined,
    tuning: string | undefined,
    settings: Settings,
  ): ChordAnswer | ServiceError;
}

/** A document that follows edits; the only mutable thing, owned by the caller. */
export interface EditableDocument extends TabDocument {
  /** Applies edits in the order given, each to the text that the one before left. */
  edit(edits: readonly TextEdit[]): void;
  /** Takes new settings (the user's tunings change what values mean). */
  configure(settings: Settings): void;
}

export interface ServiceError {
  /** One sentence that says what was expected and how to mend it. */
  readonly error: string;
}

/** A stretch of a document that starts and ends at bar signs. */
export interface Passage {
  readonly kind: 'selection' | 'section' | 'part' | 'file' | 'lines';
  /** As shown to the user: `Verse, bars 3–6`. */
  readonly title: string;
  readonly range: Range;
}

export interface ConvertRequest {
  /** Any range; it is widened to bar signs. Undefined is the whole file. */
  readonly range: Range | undefined;
  /** A tuning by name or typed. */
  readonly tuning: string;
  readonly keep: 'sound' | 'shapes';
}

export interface TransposeRequest {
  readonly range: Range | undefined;
  /** Half steps, or a key to go to (`E minor`), the nearest way. */
  readonly by: number | string;
}

export interface MoveCapoRequest {
  readonly range: Range | undefined;
  /** The new value of `capo:`: `3`, `none`, `2 on 5 4 3`. */
  readonly capo: string;
  readonly keep: 'sound' | 'shapes';
}

/** One change of a document: its edits (one undo step) and its report; or why nothing was changed. */
export type ChangeResult = Change | ServiceError;

export interface Change extends Variant {
  /** Other ways of doing the same, the next best first; the change itself is not among them. */
  readonly alternatives?: readonly Variant[];
}

/** One way to do what was asked. */
export interface Variant {
  /** Each way's edits refer to the text as it is. */
  readonly edits: readonly TextEdit[];
  readonly report: Report;
  /** What sets it apart from the other ways, in a few words: `around fret 5`. */
  readonly title?: string;
}

/** notesIn = kept + moved + unplaced.length. A double course counts once. */
export interface Report {
  readonly notesIn: number;
  /** Same pitch, onset and technique. */
  readonly kept: number;
  /** Changed pitch because the player asked for it. */
  readonly moved: number;
  readonly unplaced: readonly UnplacedNote[];
  /** Short sentences for the user: the summary first, then what was re-spelled, what to look at. */
  readonly remarks: readonly string[];
  /** Those of the remarks that keep someone from harm; a client shows them without being asked. */
  readonly cautions?: readonly string[];
}

export interface UnplacedNote {
  /** Named where the document has several parts, which count their bars apart. */
  readonly part?: string;
  readonly bar: number;
  readonly name: string;
  readonly reason: string;
}

export interface NoteEntry {
  readonly part: string | null;
  readonly bar: number;
  /** From 1. */
  readonly line: number;
  readonly column: number;
  readonly string: number;
  readonly fret: number | null;
  /** Sounding, decimals for cents; null for `x`. */
  readonly midi: number | null;
  readonly name: string;
  /** Quarter notes from the part's start. */
  readonly onset: number;
  readonly duration: number;
  readonly onsetFraction: readonly [number, number];
  readonly durationFraction: readonly [number, number];
  readonly techniques: readonly { readonly sign: string; readonly to?: number }[];
}

export interface TuningChoice {
  readonly value: string;
  readonly notes: string;
  /** `string 6 down 2, string 1 down 2`, or `as it is`. */
  readonly steps: string;
}

export interface TuningAnswer {
  /** Low string first. */
  readonly strings: readonly {
    readonly number: number;
    readonly note: string;
    readonly midi: number;
    readonly frequency: number;
    /** Half steps from the instrument's usual tuning; null for a string it does not have. */
    readonly steps: number | null;
  }[];
  /** What the open strings make. */
  readonly chord: string;
  readonly alternatives: readonly string[];
}

export interface ChordAnswer {
  readonly kind: string;
  /** Best first. */
  readonly names: readonly {
    readonly name: string;
    readonly tones: readonly string[];
    readonly omitted: readonly string[];
  }[];
}
