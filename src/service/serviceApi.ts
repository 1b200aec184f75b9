import type { Place, Range, TabDocument, TextEdit } from '../notation/tabDocument';
import type { CompareAnswer } from './compare/compareAnswer';
import type { FoundPassage, SoundPattern, SoundWish } from './find/findAnswer';
import type { SoundIndex } from './find/soundIndex';
import type { GripAnswer } from './grip/gripAnswer';
import type { NoteNamesAnswer, NoteNamesRequest } from './reading/noteNamesAnswer';
import type { WriteChordsRequest } from './chordRow/writeChordsRequest';
import type {
  InstrumentChoice,
  LayoutRequest,
  NewTabAnswer,
  NewTabRequest,
  StartingTuning,
} from './start/startAnswer';
import type { LibraryEntry } from './library/libraryAnswer';
import type { Renamable } from './rename';
import type { StringsAnswer, StringsRequest } from './strings/stringsAnswer';
import type { WideRewrite, WideRewriteId } from './mends/wideRewrite';
import type { NeckAnswer, NeckPictureAnswer, NeckPictureRequest, NeckRequest } from './neck/neckAnswer';
import type { RingingAnswer, RingingRequest } from './ringing/ringingAnswer';
import type {
  InsertShapeRequest,
  ShapeKinAnswer,
  ShapeKinRequest,
  ShapesAnswer,
  ShapesRequest,
  SongShapesAnswer,
} from './shapes/shapesAnswer';
import type { FitRequest, SingerAnswer, SingerRequest } from './singer/singerAnswer';
import type { HandoutAnswer, SheetAnswer, SheetRequest } from './sheet/sheetAnswer';
import type {
  CompletionItem,
  Diagnostic,
  FoldingRange,
  Hover,
  InlayHint,
  Mend,
  OutlineItem,
  SectionLens,
  SemanticToken,
  Settings,
} from './records';
import type { ColumnsRequest } from './columns/columnsRequest';
import type { PutFretRequest } from './typing/putFret';
import type { WriteExerciseRequest, WriteNotesRequest } from './write/writeRequest';
import type { ChartRequest, ChordChart, FillRequest, SecondGuitarRequest } from './song/songAnswer';

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
  /** Changes of many systems on offer at a place; `wideRewrite` works one out. */
  wideRewrites(document: TabDocument, range: Range): readonly WideRewrite[];
  wideRewrite(document: TabDocument, range: Range, id: WideRewriteId): readonly TextEdit[];
  /** Mends of a diagnostic that reach beyond its system, such as new labels in the whole file. */
  widerMends(document: TabDocument, found: Diagnostic): readonly Mend[];
  /** All mends that are surely meant and change nothing that sounds, as one list of edits. */
  fixAll(document: TabDocument, settings: Settings): readonly TextEdit[];
  /** Sets the systems that a range touches in order, all of them where it is left out; nothing sounds otherwise. */
  format(document: TabDocument, range?: Range): readonly TextEdit[];
  hover(document: TabDocument, place: Place, settings: Settings): Hover | undefined;
  /** The fingers for what sounds at a place; undefined outside systems and where no string is stopped or open. */
  grip(document: TabDocument, place: Place, settings: Settings): GripAnswer | undefined;
  /** Which open strings may ring over the key and over every chord that is written. */
  ringing(document: TabDocument, request: RingingRequest, settings: Settings): RingingAnswer;
  /** Every place of the neck of the fields in force at a place, and what of it sounds there. */
  neck(
    document: TabDocument,
    place: Place,
    request: NeckRequest,
    settings: Settings,
  ): NeckAnswer | ServiceError;
  /** The same as an SVG document. */
  neckSvg(
    document: TabDocument,
    place: Place,
    request: NeckPictureRequest,
    settings: Settings,
  ): NeckPictureAnswer | ServiceError;
  /** Ways to bring a tune to a singer with all shapes in their places, best first. */
  fitSinger(document: TabDocument, request: SingerRequest, settings: Settings): SingerAnswer | ServiceError;
  /** One of those ways as a change: capo, tuning or both in one edit. */
  applyFit(document: TabDocument, request: FitRequest, settings: Settings): ChangeResult;
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
  /** Another fingering in the tuning that a passage stands in; never worse in what was asked. */
  refinger(document: TabDocument, request: RefingerRequest, settings: Settings): ChangeResult;
  /** A passage within limits for a student: tune and bass stay, inner notes go. */
  simplify(document: TabDocument, request: SimplifyRequest, settings: Settings): ChangeResult;
  /** A new tab: its fields and a first empty system. */
  newTab(request: NewTabRequest, settings: Settings): NewTabAnswer | ServiceError;
  /** Every instrument, the guitar first. */
  instruments(): readonly InstrumentChoice[];
  /** Tunings to begin with on an instrument, the nearest to its usual one first. */
  startingTunings(
    instrument: string | undefined,
    settings: Settings,
  ): readonly StartingTuning[] | ServiceError;
  /** Columns, beats or bars put in, taken out or moved on all lines and rows of a system at once. */
  columns(document: TabDocument, request: ColumnsRequest, settings: Settings): ChangeResult;
  /** The bars that a range touches, of all strings and rows, as text to paste. */
  copyBars(document: TabDocument, range: Range): { readonly text: string } | ServiceError;
  /** An empty system for the tuning in force at a place. */
  insertSystem(document: TabDocument, place: Place, request: LayoutRequest): ChangeResult;
  /** The text with note names in place of frets, line by line, and where each column went. */
  noteNames(document: TabDocument, request?: NoteNamesRequest): NoteNamesAnswer;
  /** The `chords` row, written from what sounds; a player's own names stay where they agree. */
  writeChords(document: TabDocument, request: WriteChordsRequest): ChangeResult;
  /** One line above each section that sums it up. */
  sectionLens(document: TabDocument): readonly SectionLens[];
  /** A fret on a string in the column at a place; every other note keeps its time. */
  putFret(document: TabDocument, place: Place, request: PutFretRequest, settings: Settings): ChangeResult;
  /** Notes by name or degree at a place, fingered like any passage; bars that are there are filled, others laid down. */
  writeNotes(
    document: TabDocument,
    place: Place,
    request: WriteNotesRequest,
    settings: Settings,
  ): ChangeResult;
  /** A scale or an arpeggio as an exercise of its own near a place. */
  writeExercise(
    document: TabDocument,
    place: Place,
    request: WriteExerciseRequest,
    settings: Settings,
  ): ChangeResult;
  /** Shapes under the names of chords, on string lines of their own. */
  fillChords(document: TabDocument, request: FillRequest, settings: Settings): ChangeResult;
  /** The same chords in a part of its own, out of the first player's way. */
  secondGuitar(document: TabDocument, request: SecondGuitarRequest, settings: Settings): ChangeResult;
  /** Every chord that a passage names, with its shape. */
  chordChart(document: TabDocument, request: ChartRequest, settings: Settings): ChordChart | ServiceError;
  /** Which tuning makes a passage easiest; each `next()` works some 10 ms, and not calling it again cancels. */
  suit(
    document: TabDocument,
    request: SuitRequest,
    settings: Settings,
  ): Generator<SuitStep, SuitResult | ServiceError>;
  /** Passages that can be named at a place: the selection widened to bar signs, the section, the part, the file. */
  passages(document: TabDocument, selection: Range): readonly Passage[];
  /** The name of a part at a place, which can be renamed. */
  renamable(document: TabDocument, place: Place): Renamable | undefined;
  /** Gives that part another name everywhere in the file. */
  rename(document: TabDocument, place: Place, newName: string): readonly TextEdit[] | ServiceError;
  /** What is selected as something to look for; a tune that is typed as note names. */
  soundPattern(document: TabDocument, ranges: readonly Range[]): SoundPattern | ServiceError;
  typedPattern(text: string): SoundPattern | ServiceError;
  /** What sounds in a document, ready to be searched many times. */
  soundIndex(document: TabDocument): SoundIndex;
  /** Every passage that goes by the same intervals, in any key, tuning and capo. */
  findBySound(
    pattern: SoundPattern,
    index: SoundIndex,
    wish: SoundWish,
    /** Whether it is the text that the pattern was taken from; that very passage is left out. */
    itsOwn?: boolean,
  ): readonly FoundPassage[] | ServiceError;
  /** Title, tunings, capos, keys and range of a document. */
  libraryEntry(document: TabDocument): LibraryEntry;
  /** What became of the notes from one version of a piece to a later one. */
  compare(before: TabDocument, after: TabDocument): CompareAnswer;
  /**
   * The section of `there` that answers to the one at a place of `document`, where one text came of the other by a
   * change: sections are counted. Without headings the part at that place, else the file.
   */
  counterpart(document: TabDocument, place: Place, there: TabDocument): Passage | undefined;
  notes(document: TabDocument): readonly NoteEntry[];
  /** Tunings on offer, nearest to the one in force at `place` first (for pick lists). */
  tuningChoices(document: TabDocument, place: Place, settings: Settings): readonly TuningChoice[];
  /** What the strings bear under the fields in force at a place. */
  strings(document: TabDocument, place: Place, settings: Settings): StringsAnswer;
  /** The same without a document. */
  requestedStrings(request: StringsRequest, settings: Settings): StringsAnswer | ServiceError;
  tuning(value: string, instrument: string | undefined, settings: Settings): TuningAnswer | ServiceError;
  /** Writes a shape at the cursor's moment in a system, or as a system of its own. */
  insertShape(document: TabDocument, place: Place, request: InsertShapeRequest): ChangeResult;
  /** The everyday shape of the usual tuning beside the nearest one here. */
  shapeKin(
    document: TabDocument,
    place: Place,
    request: ShapeKinRequest,
    settings: Settings,
  ): ShapeKinAnswer | ServiceError;
  /** The same for every chord of a piece; undefined is the whole document. */
  songShapes(
    document: TabDocument,
    range: Range | undefined,
    settings: Settings,
  ): SongShapesAnswer | ServiceError;
  /** Shapes of a chord in the tuning in force at a place, best first, at most twelve where nothing is said. */
  shapes(
    document: TabDocument,
    place: Place,
    request: ShapesRequest,
    settings: Settings,
  ): ShapesAnswer | ServiceError;
  /** Everything about the tuning in force at a place: strings, retuning, barres, slide places, the scale. */
  tuningSheet(
    document: TabDocument,
    place: Place,
    request: SheetRequest,
    settings: Settings,
  ): SheetAnswer | ServiceError;
  /** The sheet on one page, as a picture to print and as text, with the shapes of six everyday chords. */
  tuningHandout(
    document: TabDocument,
    place: Place,
    request: SheetRequest,
    settings: Settings,
  ): HandoutAnswer | ServiceError;
  chord(
    notes: readonly string[],
    key: string | undefined,
    tuning: string | undefined,
    settings: Settings,
  ): ChordAnswer | ServiceError;
  /** The chord's name at a place: the one of a `chords` row that the cursor touches, else the one that holds there. */
  chordAt(document: TabDocument, place: Place): string | undefined;
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
  /** What the request lacks and a client may ask the user for, to send it again. */
  readonly asks?: 'key' | 'new bars';
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
  /**
   * A tuning by name or typed. Left out, it is the usual tuning of `instrument`, where one is given, else the one in
   * force.
   */
  readonly tuning?: string;
  /**
   * `sound` (taken where nothing is said): every pitch; `shapes`: every string and fret; `function`: every degree, under
   * the key of the new tuning.
   */
  readonly keep?: 'sound' | 'shapes' | 'function';
  /** The key to go to, for `function`: `G`, `E minor`. */
  readonly key?: string;
  /** `total` (taken where nothing is said): the least cost; `hardest`: the hardest move of each section first. */
  readonly objective?: 'total' | 'hardest';
  /** How many ways are wanted in all, 1 (taken where nothing is said) to 3. */
  readonly alternatives?: number;
  /** Another instrument, by name. */
  readonly instrument?: string;
  /** The original stays, and what it becomes stands under it as a part of this name with the same bars. */
  readonly newPart?: string;
  /** No open strings. */
  readonly closed?: boolean;
  /** Half steps by which the passage is moved as a whole; not with `shapes`. */
  readonly by?: number;
  /** Another value of `capo:`, as for `moveCapo`. */
  readonly capo?: string;
  /** Notes that have no place go up or down by octaves where they have one. */
  readonly octaves?: boolean;
  /**
   * `doubled`: only inner notes that sound in another octave too are left out, so that bass, top and chord are kept; it is
   * an error where that is not enough. Left out: as few notes as can be, a doubled inner one first.
   */
  readonly leaveOut?: 'doubled';
}

/** What a player may ask of another fingering in the tuning that a passage stands in. */
export interface RefingerRequest {
  readonly range: Range | undefined;
  /**
   * `lower` on the neck (the sum of the frets), more `open` strings, as many notes as can be on given `strings`, the
   * `hardest` step easier, `closed`: no open string.
   */
  readonly objective: 'lower' | 'open' | 'strings' | 'hardest' | 'closed';
  /** String numbers, for `strings`. */
  readonly strings?: readonly number[];
  /** How many ways are wanted in all, 1 (taken where nothing is said) to 3. */
  readonly alternatives?: number;
}

/** Limits for a student; at least one. Tune (top) and bass are kept, inner notes go. */
export interface SimplifyRequest {
  readonly range: Range | undefined;
  /** Widest span of the fingers along the neck, millimetres. */
  readonly span?: number;
  /** Most notes a second, one after the other. */
  readonly speed?: number;
  /** False: no finger stops more than one string. */
  readonly barres?: boolean;
  /** Most fingers at once, 1 to 4. */
  readonly fingers?: number;
  /** Highest fret, as frets are written. */
  readonly highestFret?: number;
}

/** Which tuning makes a passage easiest? */
export interface SuitRequest {
  readonly range: Range | undefined;
  /** How far each string may be retuned, half steps up or down, 0 to 3; 2 where nothing is said. */
  readonly within?: number;
  /** Whether the passage may be transposed as well. */
  readonly anyKey?: boolean;
  /** How many of the best are kept, 1 or more; 10 where nothing is said. */
  readonly keep?: number;
}

/** How far a search has come. */
export interface SuitStep {
  readonly done: number;
  readonly total: number;
  /** The named tunings come first. */
  readonly phase: 'named' | 'retunings';
}

/** Plain records: numbers, texts and lists, so that they can go through a worker or a file. */
export interface SuitResult {
  /** The tuning that the passage stands in, at pitch; null when a note would be left out there. */
  readonly here: SuitedTuning | null;
  /** The trade's tunings of the instrument, easiest first; those that would leave a note out stand last. */
  readonly named: readonly SuitedTuning[];
  /** The best of all retunings within the limits, easiest first. */
  readonly best: readonly SuitedTuning[];
  /** The best for each number of strings changed. */
  readonly byStringsChanged: readonly { readonly changed: number; readonly tuning: SuitedTuning }[];
  /** total = evaluated + unplayable + ruledOut: worked out, would leave a note out, shown by a bound to be no better. */
  readonly evaluated: number;
  readonly unplayable: number;
  readonly ruledOut: number;
  readonly total: number;
  /** Short sentences for the user: what the answer holds for, the share ruled out. */
  readonly remarks: readonly string[];
  /** The usual cautions about strings that go up. */
  readonly cautions: readonly string[];
}

export interface SuitedTuning {
  /** What `convert` and a `tuning:` field take. */
  readonly tuning: string;
  /** The trade's name for it; null where it has none. */
  readonly name: string | null;
  /** Its notes, low string first. */
  readonly notes: string;
  /** `string 6 down 2, string 1 down 2`, or `as it is`. */
  readonly steps: string;
  /** Half steps by which the passage is moved; 0 at pitch. */
  readonly halfSteps: number;
  /** The least cost under the table of constants; null when a note would be left out. */
  readonly cost: number | null;
  readonly stringsChanged: number;
  readonly stepsOfRetuning: number;
  readonly openStrings: number;
  /** Open notes that may ring on. */
  readonly ringing: number;
  /** Moments whose lowest note is an open string. */
  readonly bassOnOpen: number;
  /** The hardest moment in words; empty when there is none. */
  readonly hardest: string;
  /** Whether every string bears it. */
  readonly borne: boolean;
  /** Why it is where it is, in one sentence. */
  readonly why: string;
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
  /** Where a player writes on, in the text after the change. */
  readonly goesOn?: Place;
  /** What is selected in the text after the change, if not that place alone. */
  readonly selects?: readonly Range[];
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
  /** What the hand has to do, where the hand model worked the fingering out. */
  readonly measures?: ChangeMeasures;
  /** Other requests that leave out less, the first to try first; there are none when every note has a place. */
  readonly offers?: readonly Offer[];
  /** What was asked to become better, before and after; never worse. */
  readonly compared?: Compared;
}

/** What the hand has to do in a passage. */
export interface ChangeMeasures {
  /** The least cost under the table of constants. */
  readonly cost: number;
  readonly highestFret: number;
  readonly widestStretch?: MeasuredAt;
  readonly longestTravel?: MeasuredAt;
  /** Notes on open strings. */
  readonly openStrings: { readonly before: number; readonly after: number };
  readonly hardest?: { readonly part?: string; readonly bar: number; readonly why: string };
  /** Notes that should ring on and are cut short. */
  readonly cutNotes: number;
}

export interface MeasuredAt {
  readonly millimetres: number;
  /** Named where the document has several parts. */
  readonly part?: string;
  readonly bar: number;
}

export interface Offer {
  /** What the request gives: `Move the passage down 2 half steps; every note fits`. */
  readonly title: string;
  readonly request: ConvertRequest;
}

/** A figure that was to become better. */
export interface Compared {
  /** As the user reads it: `the sum of the frets`. */
  readonly what: string;
  /** Undefined where the model's hand cannot play the text as it stands. */
  readonly before?: number;
  readonly after: number;
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
