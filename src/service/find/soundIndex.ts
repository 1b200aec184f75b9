import { add } from '../../music/fraction';
import { formatCapo } from '../../instrument/capo';
import { formatTuning } from '../../instrument/tuningFormat';
import type { Header } from '../../notation/header';
import type { NoteReading } from '../../notation/reading';
import type { System, TabDocument } from '../../notation/tabDocument';

/**
 * What sounds in a document, part by part, ready to be searched: plain numbers in rows, so that a thousand files stay
 * small. It is made for one state of the text.
 */
export interface SoundIndex {
  readonly tracks: readonly SoundTrack[];
}

/** One part. A moment is a time at which something with a pitch begins. */
export interface SoundTrack {
  readonly part: string | null;
  readonly places: readonly SystemPlace[];
  /** For each moment its first note; one entry more than there are moments. */
  readonly firstNote: Int32Array;
  /** Quarter notes from the part's start, as a fraction. */
  readonly onsetN: Int32Array;
  readonly onsetD: Int32Array;
  /** Bar number of each moment, and the index in `places`. */
  readonly bar: Int32Array;
  readonly place: Int32Array;
  /** Sounding MIDI numbers; in a moment lowest first. */
  readonly midi: Float64Array;
  /** Where each note stands: its line in the document, from there UTF-16 offsets. */
  readonly line: Int32Array;
  readonly start: Int32Array;
  readonly end: Int32Array;
}

export interface SystemPlace {
  readonly section: string | null;
  /** `DADGAD, capo 2`. */
  readonly tuning: string;
}

/** Works out what sounds in a document. Muted strokes have no pitch and are passed over. */
export function soundIndex(document: TabDocument): SoundIndex {
  const tracks = new Map<string | undefined, TrackMaker>();
  const names = new Map<Header, string>();
  for (const system of document.systems) {
    const { part, firstBar, onset } = document.placeOf(system);
    const track = tracks.get(part) ?? new TrackMaker(part ?? null);
    tracks.set(part, track);
    const tuning = names.get(system.header) ?? tuningWords(system.header);
    names.set(system.header, tuning);
    track.system({ section: system.section?.name ?? null, tuning });
    for (const moment of momentsOf(system)) {
      const [first] = moment;
      if (!first) continue;
      const { n, d } = add(onset, first.note.onset);
      track.moment(n, d, firstBar + first.note.bar);
      for (const { note, midi } of moment)
        track.note(midi, system.firstLine + note.line, note.start, note.end);
    }
  }
  return { tracks: [...tracks.values()].map((track) => track.done()) };
}

/** `DADGAD, capo 2`; without a capo the tuning alone. */
export function tuningWords({ tuning, instrument, capo }: Header): string {
  const name = formatTuning(tuning, instrument);
  return capo ? `${name}, capo ${formatCapo(capo)}` : name;
}

export interface PitchedNote {
  readonly note: NoteReading;
  readonly midi: number;
}

/**
 * The notes of a system that have a pitch, those that begin together in one list, lowest first; of a course its first
 * string, of a note that is bent before it sounds the pitch it is bent to.
 */
export function momentsOf(system: System): readonly (readonly PitchedNote[])[] {
  const moments: PitchedNote[][] = [];
  let last: NoteReading | undefined;
  for (const note of system.reading.notes) {
    const [pitch] = note.pitches;
    if (!pitch) continue;
    const bent = note.techniques.find(({ kind, to }) => kind === 'pre-bend' && to !== undefined)?.to;
    const one = { note, midi: bent ?? pitch.midi };
    const together = last?.onset.n === note.onset.n && last.onset.d === note.onset.d;
    if (together) moments.at(-1)?.push(one);
    else moments.push([one]);
    last = note;
  }
  for (const moment of moments) moment.sort((a, b) => a.midi - b.midi);
  return moments;
}

class TrackMaker {
  private readonly places: SystemPlace[] = [];
  private readonly firstNote: number[] = [];
  private readonly onsetN: number[] = [];
  private readonly onsetD: number[] = [];
  private readonly bar: number[] = [];
  private readonly place: number[] = [];
  private readonly midi: number[] = [];
  private readonly line: number[] = [];
  private readonly start: number[] = [];
  private readonly end: number[] = [];

  constructor(private readonly part: string | null) {}

  system(place: SystemPlace): void {
    this.places.push(place);
  }

  moment(n: number, d: number, bar: number): void {
    this.firstNote.push(this.midi.length);
    this.onsetN.push(n);
    this.onsetD.push(d);
    this.bar.push(bar);
    this.place.push(this.places.length - 1);
  }

  note(midi: number, line: number, start: number, end: number): void {
    this.midi.push(midi);
    this.line.push(line);
    this.start.push(start);
    this.end.push(end);
  }

  done(): SoundTrack {
    return {
      part: this.part,
      places: this.places,
      firstNote: Int32Array.from([...this.firstNote, this.midi.length]),
      onsetN: Int32Array.from(this.onsetN),
      onsetD: Int32Array.from(this.onsetD),
      bar: Int32Array.from(this.bar),
      place: Int32Array.from(this.place),
      midi: Float64Array.from(this.midi),
      line: Int32Array.from(this.line),
      start: Int32Array.from(this.start),
      end: Int32Array.from(this.end),
    };
  }
}
