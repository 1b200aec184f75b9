/**
 * The neck under a cursor: plain records, numbers, texts and lists. Lines and strings are counted as players do
 * (string 1 is the top line of the tab), frets as they are written under the capo in force. `cell` and the geometry
 * count frets from the nut, since a neck does.
 */
export interface NeckRequest {
  /**
   * A scale to mark, named as played under a full capo: `D dorian`, `A minor pentatonic`; without a root that of the key
   * in force. Neither `scale` nor `chord`: the scale of the key in force, where one is written.
   */
  readonly scale?: string;
  /** A chord to mark, named as played: `G/B`. */
  readonly chord?: string;
  /** How many frets are shown, 1 to 36, from the nut or a full capo; all that the neck has where nothing is said. */
  readonly frets?: number;
  /** The `id` of the board that the asker has: where it is still the same, the answer leaves it out. */
  readonly known?: string;
}

export interface NeckAnswer {
  /** What holds as long as the fields and the request stay the same; left out when the asker has it. */
  readonly board?: NeckBoard;
  /** What changes with the cursor. */
  readonly moment: NeckMoment;
}

export interface NeckBoard {
  /** Two boards with the same id are the same. */
  readonly id: string;
  /** `DADGAD, D2 A2 D3 G3 A3 D4`. */
  readonly title: string;
  /** Short sentences, without their stop, that a reader of the neck has to know: how names count under a capo. */
  readonly facts: readonly string[];
  /** String 1 first, as the tab has them. */
  readonly strings: readonly NeckString[];
  /** The cell where the picture begins: 0, the nut, or the fret of a full capo. */
  readonly first: number;
  /** The last cell that is shown. */
  readonly last: number;
  /** What stands beside each cell from `first` on: the fret as written. */
  readonly numbers: readonly number[];
  /**
   * Where the wire of each cell lies, from `first` on, as a share of the scale length measured from the nut; the first
   * is the nut or the full capo. Cell n lies between wire n − 1 and wire n.
   */
  readonly wires: readonly number[];
  readonly capo: NeckCapo | null;
  readonly tones: NeckTones;
  /** What the degrees are counted in: `D mixolydian`; null where there is neither key nor scale. */
  readonly degreesIn: string | null;
  /** What the intervals are counted from: `D`, and why in words: `the root of D mixolydian`. */
  readonly root: { readonly note: string; readonly words: string };
}

export interface NeckCapo {
  readonly fret: number;
  /** The outermost strings under it, `from` ≥ `to`. */
  readonly from: number;
  readonly to: number;
  /** `Capo at fret 2 on strings 5, 4 and 3`. */
  readonly words: string;
}

/** What is marked on the neck. */
export interface NeckTones {
  readonly kind: 'key' | 'scale' | 'chord' | 'none';
  /** `D mixolydian`, `G/B`; under a full capo as played and as it sounds; empty for none. */
  readonly name: string;
  /** Its notes as they sound, from the root up. */
  readonly notes: readonly string[];
  /** `0 2 3 … on the A strings; 0 2 4 … on the others`, to copy; empty for none. */
  readonly sets: string;
}

export interface NeckString {
  readonly number: number;
  /** The open string by name: `D2`; `E3 and E2` for a course. */
  readonly note: string;
  readonly course: boolean;
  /** The cell at which the string begins: 0, or 5 for a banjo's fifth string. */
  readonly begins: number;
  /** Every place that can be played, from the open string up the neck. */
  readonly places: readonly NeckPlace[];
}

export interface NeckPlace {
  /** Counted from the nut: where the string is stopped; for an open string where it begins or the capo lies. */
  readonly cell: number;
  /** As it is written. */
  readonly fret: number;
  /** `F#`. */
  readonly note: string;
  /** `F#3`; `F#3 and F#2` for a course. */
  readonly pitch: string;
  /** `string 3 fret 2, A`. */
  readonly name: string;
  /** `b3` and `flat third`; null where nothing says in which key. */
  readonly degree: NeckLabel | null;
  /** `m3` and `minor third`, above the root, within an octave. */
  readonly interval: NeckLabel;
  /** Whether it is one of the marked notes; true everywhere where nothing is marked. */
  readonly marked: boolean;
  /** Whether it is the root of what is marked, in any octave. */
  readonly root: boolean;
}

export interface NeckLabel {
  readonly short: string;
  readonly words: string;
}

export interface NeckMoment {
  /** `Bar 3, beat 2 &`; empty outside the columns of a system. */
  readonly where: string;
  /** What sounds in the column under the cursor. */
  readonly sounding: readonly NeckSounding[];
  /** The same as a sentence; what to do where the cursor stands in no column. */
  readonly words: string;
  /** The note that the cursor stands on; null where it stands on none that has a pitch. */
  readonly note: NeckNote | null;
  /** Whether a fret can be put at the cursor; `words` of `writeWords` says where, or what to do. */
  readonly writable: boolean;
  readonly writeWords: string;
}

export interface NeckSounding {
  readonly string: number;
  /** As written; for a harmonic where it is touched, which may lie between frets. */
  readonly fret: number;
  readonly how: 'struck' | 'rings' | 'harmonic';
}

export interface NeckNote {
  /** `A3`. */
  readonly name: string;
  /** Every place of the neck that sounds it, string 1 first. */
  readonly places: readonly { readonly string: number; readonly fret: number }[];
  /** `A3 lies at string 3 fret 2, string 4 fret 7 and string 5 fret 12`. */
  readonly words: string;
}

/** What a picture of the neck shows, as a file. */
export interface NeckPictureRequest extends Omit<NeckRequest, 'known'> {
  /** What stands at each place; `notes` where nothing is said. */
  readonly labels?: 'notes' | 'degrees' | 'intervals';
  /** Whether places that are not marked have their label too. */
  readonly every?: boolean;
  /** Whether it is drawn for a left-handed player. */
  readonly leftHanded?: boolean;
  /** Whether the neck stands upright, the nut on top. */
  readonly upright?: boolean;
}

export interface NeckPictureAnswer {
  /** An SVG document of its own, black on white. */
  readonly svg: string;
}
