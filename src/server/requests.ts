import type { Position, ProgressToken, Range, TextEdit } from 'vscode-languageserver-protocol';
import type { ColumnsRequest } from '../service/columns/columnsRequest';
import type { CompareAnswer } from '../service/compare/compareAnswer';
import type { FoundPassage, SoundWish } from '../service/find/findAnswer';
import type { GripAnswer } from '../service/grip/gripAnswer';
import type { NoteNamesAnswer, NoteNamesRequest } from '../service/reading/noteNamesAnswer';
import type { WriteChordsRequest } from '../service/chordRow/writeChordsRequest';
import type {
  InstrumentChoice,
  LayoutRequest,
  NewTabAnswer,
  NewTabRequest,
  StartingTuning,
} from '../service/start/startAnswer';
import type { LibraryEntry } from '../service/library/libraryAnswer';
import type { StringsAnswer } from '../service/strings/stringsAnswer';
import type {
  NeckAnswer,
  NeckPictureAnswer,
  NeckPictureRequest,
  NeckRequest,
} from '../service/neck/neckAnswer';
import type { RingingAnswer } from '../service/ringing/ringingAnswer';
import type { FitRequest, SingerAnswer, SingerRequest } from '../service/singer/singerAnswer';
import type {
  InsertShapeRequest,
  ShapeKinAnswer,
  ShapeKinRequest,
  ShapesAnswer,
  ShapesRequest,
  SongShapesAnswer,
} from '../service/shapes/shapesAnswer';
import type { HandoutAnswer, SheetAnswer, SheetRequest } from '../service/sheet/sheetAnswer';
import type {
  ConvertRequest,
  MoveCapoRequest,
  Passage,
  RefingerRequest,
  Report,
  ServiceError,
  SimplifyRequest,
  SuitRequest,
  SuitResult,
  TransposeRequest,
  TuningAnswer,
  TuningChoice,
} from '../service/serviceApi';
import type { ImportAnswer, ImportGuess, ImportRequest } from '../formats/plainTab/importAnswer';
import type { WriteExerciseRequest, WriteNotesRequest } from '../service/write/writeRequest';
import type { ChartRequest, ChordChart, FillRequest, SecondGuitarRequest } from '../service/song/songAnswer';

/**
 * The requests of Pegbox beyond the protocol: names and shapes, shared by the server and its clients. Positions are
 * those of the protocol: lines from 0, UTF-16 offsets.
 */
export const REQUESTS = {
  convert: 'pegbox/convert',
  transpose: 'pegbox/transpose',
  moveCapo: 'pegbox/moveCapo',
  refinger: 'pegbox/refinger',
  simplify: 'pegbox/simplify',
  fillChords: 'pegbox/fillChords',
  secondGuitar: 'pegbox/secondGuitar',
  chordChart: 'pegbox/chordChart',
  suit: 'pegbox/suit',
  writeNotes: 'pegbox/writeNotes',
  writeExercise: 'pegbox/writeExercise',
  passages: 'pegbox/passages',
  counterpart: 'pegbox/counterpart',
  tuningChoices: 'pegbox/tuningChoices',
  readTuning: 'pegbox/readTuning',
  chordAt: 'pegbox/chordAt',
  tuningSheet: 'pegbox/tuningSheet',
  shapes: 'pegbox/shapes',
  insertShape: 'pegbox/insertShape',
  shapeKin: 'pegbox/shapeKin',
  songShapes: 'pegbox/songShapes',
  tuningHandout: 'pegbox/tuningHandout',
  grip: 'pegbox/grip',
  strings: 'pegbox/strings',
  ringing: 'pegbox/ringing',
  fitSinger: 'pegbox/fitSinger',
  applyFit: 'pegbox/applyFit',
  neck: 'pegbox/neck',
  neckSvg: 'pegbox/neckSvg',
  putFret: 'pegbox/putFret',
  importTab: 'pegbox/importTab',
  pasteTab: 'pegbox/pasteTab',
  plainText: 'pegbox/plainText',
  compare: 'pegbox/compare',
  readFiles: 'pegbox/readFiles',
  library: 'pegbox/library',
  findBySound: 'pegbox/findBySound',
  newTab: 'pegbox/newTab',
  instruments: 'pegbox/instruments',
  startingTunings: 'pegbox/startingTunings',
  columns: 'pegbox/columns',
  copyBars: 'pegbox/copyBars',
  insertSystem: 'pegbox/insertSystem',
  noteNames: 'pegbox/noteNames',
  writeChords: 'pegbox/writeChords',
} as const;

/** What each request takes and answers. */
export interface RequestShapes {
  'pegbox/convert': { params: ConvertParams; answer: ChangeAnswer };
  'pegbox/transpose': { params: TransposeParams; answer: ChangeAnswer };
  'pegbox/moveCapo': { params: MoveCapoParams; answer: ChangeAnswer };
  'pegbox/refinger': { params: RefingerParams; answer: ChangeAnswer };
  'pegbox/simplify': { params: SimplifyParams; answer: ChangeAnswer };
  'pegbox/writeNotes': { params: PlaceParams & WriteNotesRequest; answer: ChangeAnswer };
  'pegbox/writeExercise': { params: PlaceParams & WriteExerciseRequest; answer: ChangeAnswer };
  'pegbox/fillChords': { params: FillParams; answer: ChangeAnswer };
  'pegbox/secondGuitar': { params: SecondGuitarParams; answer: ChangeAnswer };
  'pegbox/chordChart': { params: ChartParams; answer: ChordChart | ServiceError };
  'pegbox/suit': { params: SuitParams; answer: SuitAnswer };
  'pegbox/passages': { params: PassagesParams; answer: PassagesAnswer };
  'pegbox/counterpart': { params: CounterpartParams; answer: CounterpartAnswer };
  'pegbox/tuningChoices': { params: PlaceParams; answer: readonly TuningChoice[] };
  'pegbox/grip': { params: PlaceParams; answer: GripAnswer | null };
  'pegbox/strings': { params: PlaceParams; answer: StringsAnswer | ServiceError };
  'pegbox/ringing': { params: RingingParams; answer: RingingAnswer | ServiceError };
  'pegbox/neck': { params: PlaceParams & NeckRequest; answer: NeckAnswer | ServiceError };
  'pegbox/neckSvg': { params: PlaceParams & NeckPictureRequest; answer: NeckPictureAnswer | ServiceError };
  'pegbox/shapes': { params: PlaceParams & ShapesRequest; answer: ShapesAnswer | ServiceError };
  'pegbox/insertShape': { params: PlaceParams & InsertShapeRequest; answer: ChangeAnswer };
  'pegbox/shapeKin': { params: PlaceParams & ShapeKinRequest; answer: ShapeKinAnswer | ServiceError };
  'pegbox/songShapes': { params: SongShapesParams; answer: SongShapesAnswer | ServiceError };
  'pegbox/tuningSheet': { params: PlaceParams & SheetRequest; answer: SheetAnswer | ServiceError };
  'pegbox/chordAt': { params: PlaceParams; answer: string | null };
  'pegbox/fitSinger': { params: FitSingerParams; answer: SingerAnswer | ServiceError };
  'pegbox/applyFit': { params: ApplyFitParams; answer: ChangeAnswer };
  'pegbox/readFiles': { params: ReadFilesParams; answer: object | ServiceError };
  'pegbox/library': { params: LibraryParams; answer: LibraryAnswer | ServiceError };
  'pegbox/findBySound': { params: FindParams; answer: FindAnswer | ServiceError };
  'pegbox/compare': { params: CompareParams; answer: CompareAnswer | ServiceError };
  'pegbox/putFret': { params: PutFretParams; answer: ChangeAnswer };
  'pegbox/importTab': { params: ImportRequest; answer: ImportAnswer | ServiceError };
  'pegbox/pasteTab': { params: PasteTabParams; answer: PasteTabAnswer | ServiceError };
  'pegbox/plainText': { params: PlainTextParams; answer: PlainTextAnswer | ServiceError };
  'pegbox/newTab': { params: NewTabRequest; answer: NewTabAnswer | ServiceError };
  'pegbox/instruments': { params: object; answer: readonly InstrumentChoice[] };
  'pegbox/startingTunings': {
    params: { readonly instrument?: string };
    answer: readonly StartingTuning[] | ServiceError;
  };
  'pegbox/columns': { params: ColumnsParams; answer: ChangeAnswer };
  'pegbox/copyBars': { params: BarsParams; answer: { readonly text: string } | ServiceError };
  'pegbox/insertSystem': { params: PlaceParams & LayoutRequest; answer: ChangeAnswer };
  'pegbox/noteNames': { params: NoteNamesParams; answer: NoteNamesText | ServiceError };
  'pegbox/writeChords': { params: WriteChordsParams; answer: ChangeAnswer };
  'pegbox/tuningHandout': { params: PlaceParams & SheetRequest; answer: HandoutAnswer | ServiceError };
  'pegbox/readTuning': { params: ReadTuningParams; answer: TuningAnswer | ServiceError };
}

interface DocumentParams {
  readonly uri: string;
}

export interface NoteNamesParams extends DocumentParams, NoteNamesRequest {}

/** For `version` of the document. */
export type NoteNamesText = NoteNamesAnswer & { readonly version: number };

export interface PlaceParams extends DocumentParams {
  readonly position: Position;
}

/** Puts a plain tab into a document; `range` is what it replaces. */
export interface PasteTabParams extends DocumentParams, ImportRequest {
  readonly range: Range;
}

/** The edits for `version`: the fields where they belong, and last what replaces the range. */
export interface PasteTabAnswer {
  readonly version: number;
  readonly edits: readonly TextEdit[];
  readonly guesses: readonly ImportGuess[];
  /** 0 where the text holds no tab; it is then put there as it is. */
  readonly systems: number;
  readonly notes: number;
}

/** The systems that a range touches, else the whole file. */
export interface PlainTextParams extends DocumentParams {
  readonly range?: Range;
}

export interface PlainTextAnswer {
  readonly text: string;
  readonly systems: number;
}

export interface BarsParams {
  readonly uri: string;
  readonly range: Range;
}

export interface ColumnsParams extends BarsParams, Omit<ColumnsRequest, 'range'> {}

export interface PutFretParams extends PlaceParams {
  /** Player's number. */
  readonly string: number;
  /** As it is written. */
  readonly fret: number;
}

/** A file of the workspace, and which state of it is meant: any text that changes when the file does. */
export interface ListedFile {
  readonly uri: string;
  readonly stamp: string;
}

/** Sends saved texts that the server does not know at these stamps yet; some at a time, so that others are answered. */
export interface ReadFilesParams {
  readonly files: readonly (ListedFile & { readonly text: string })[];
}

export interface LibraryParams {
  readonly files: readonly ListedFile[];
}

export interface LibraryAnswer {
  readonly files: readonly { readonly uri: string; readonly entry: LibraryEntry }[];
  /** Whose texts must be sent first. */
  readonly missing: readonly string[];
}

/** Looks in files for what the ranges of an open document hold. */
export interface FindParams extends DocumentParams, SoundWish {
  readonly ranges: readonly Range[];
  readonly files: readonly ListedFile[];
}

export interface FindAnswer {
  /** The tune that is looked for: `D4 E4 F#4`. */
  readonly name: string;
  /** Whether notes begin together in it. */
  readonly together: boolean;
  readonly found: readonly FileFound[];
  /** Whose texts must be sent first. */
  readonly missing: readonly string[];
}

export interface FileFound {
  readonly uri: string;
  readonly title: string;
  readonly passages: readonly FoundPassage[];
}

/** Compares an earlier text with an open document. */
export interface CompareParams extends DocumentParams {
  readonly before: string;
}

/** For a range, else for the part at a position, else for the whole file. */
export interface RingingParams extends DocumentParams {
  readonly position?: Position;
  readonly range?: Range;
}

/** For the chords of a range, else of the whole file. */
export interface SongShapesParams extends DocumentParams {
  readonly range?: Range;
}

/** A request of the service as it is asked over the wire: the document by its address. */
type Asked<Request> = DocumentParams &
  Omit<Request, 'range'> & {
    /** Widened to bar signs by the server; left out for the whole file. */
    readonly range?: Range | undefined;
  };

export type ConvertParams = Asked<ConvertRequest>;
export type TransposeParams = Asked<TransposeRequest>;
export type MoveCapoParams = Asked<MoveCapoRequest>;
export type RefingerParams = Asked<RefingerRequest>;
export type SimplifyParams = Asked<SimplifyRequest>;
export type FillParams = Asked<FillRequest>;
export type SecondGuitarParams = Asked<SecondGuitarRequest>;
export type ChartParams = Asked<ChartRequest>;
export type WriteChordsParams = Asked<WriteChordsRequest>;
export type FitSingerParams = Asked<SingerRequest>;
export type ApplyFitParams = Asked<FitRequest>;

/**
 * Others are answered while it is at work. It tells how far it has come under the token, by `$/progress`, and stops
 * when it is cancelled.
 */
export interface SuitParams extends Asked<SuitRequest> {
  readonly workDoneToken?: ProgressToken | undefined;
}

/** For `version` of the document. */
export type SuitAnswer = (SuitResult & { readonly version: number }) | ServiceError;

export interface PassagesParams extends DocumentParams {
  readonly selection: Range;
}

export interface PassagesAnswer {
  readonly passages: readonly Passage[];
}

/** Asks for the section of another open document that answers to the one at a place of this one. */
export interface CounterpartParams extends PlaceParams {
  readonly there: string;
}

export interface CounterpartAnswer {
  /** Left out where there is no tab. */
  readonly passage?: Passage;
}

export interface ReadTuningParams extends PlaceParams {
  readonly value: string;
}

/** A change to apply as one edit, made for `version` of the document; or the sentence that says why there is none. */
export type ChangeAnswer = MadeChange | ServiceError;

export interface MadeChange extends ChangeVariant {
  readonly version: number;
  /** Other ways of doing the same, the next best first; the change itself is not among them. */
  readonly alternatives?: readonly ChangeVariant[];
  /** Where a player writes on, in the text after the change. */
  readonly goesOn?: Position;
  /** What is selected in the text after the change, if not that place alone. */
  readonly selects?: readonly Range[];
}

/** One way to do what was asked. */
export interface ChangeVariant {
  /** All of them refer to the text as it is, as in the protocol; none overlap. */
  readonly edits: readonly TextEdit[];
  readonly report: Report;
  /** What sets it apart from the other ways, in a few words. */
  readonly title?: string;
}

/** What a client may tell in `initializationOptions`; the server works without any of it. */
export interface ClientOptions {
  /** The settings under `pegbox`, so that the first diagnostics already follow them. */
  readonly settings?: unknown;
  /** Where a diagnostic's link leads: an address with `{code}` in it, such as `https://host/help.html#{code}`. */
  readonly helpLink?: string;
  /** Whether the client has the commands of `COMMAND_ACTIONS`. */
  readonly commands?: boolean;
  /** Whether it asks for semantic tokens by what is visible only, so that a keystroke costs no pass over the file. */
  readonly tokensByRange?: boolean;
  /** Whether its hovers show SVG images from data addresses; without it they have words only. */
  readonly pictures?: boolean;
}

/** The argument of the commands that change a passage: where to work; what is left out is asked for. */
export interface CommandTarget {
  readonly uri?: string;
  readonly range?: Range;
  /**
   * Whether the change is shown before it is made. Left out, a command that is told all it needs makes it at once, and
   * one that asks goes by the setting `pegbox.preview`.
   */
  readonly preview?: boolean;
}
