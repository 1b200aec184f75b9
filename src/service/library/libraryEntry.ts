import { formatCapo } from '../../instrument/capo';
import { formatTuning, formatTuningNotes } from '../../instrument/tuningFormat';
import { formatKey } from '../../music/key';
import { formatNoteName } from '../../music/noteName';
import type { Header } from '../../notation/header';
import type { SoundingPitch } from '../../notation/reading';
import type { TabDocument } from '../../notation/tabDocument';
import type { LibraryEntry, LibraryRange } from './libraryAnswer';

/** What the library tells of a document; of one without a system, what its fields say. */
export function libraryEntry(document: TabDocument): LibraryEntry {
  const written = [...new Set(document.systems.map(({ header }) => header))];
  const headers = written.length > 0 ? written : [document.headerAt(document.lineCount - 1)];
  const each = (tell: (header: Header) => string): readonly string[] => [
    ...new Set(headers.map(tell).filter((text) => text !== '')),
  ];
  return {
    title: each(({ title }) => title ?? '')[0] ?? '',
    parts: document.parts.flatMap((part) => (part === undefined || part === '' ? [] : [part])),
    tunings: each(({ tuning, instrument }) => formatTuning(tuning, instrument)),
    notes: each(({ tuning }) => formatTuningNotes(tuning)),
    capos: each(({ capo }) => formatCapo(capo)),
    keys: each(({ key }) => (key ? formatKey(key) : '')),
    range: rangeOf(document),
    bars: document.systems.reduce((sum, { reading }) => sum + reading.bars.length, 0),
  };
}

function rangeOf(document: TabDocument): LibraryRange | null {
  let low: SoundingPitch | undefined;
  let high: SoundingPitch | undefined;
  for (const { reading } of document.systems)
    for (const { pitches } of reading.notes)
      for (const pitch of pitches) {
        if (!low || pitch.midi < low.midi) low = pitch;
        if (!high || pitch.midi > high.midi) high = pitch;
      }
  if (!low || !high) return null;
  return {
    low: formatNoteName(low.name),
    high: formatNoteName(high.name),
    lowMidi: low.midi,
    highMidi: high.midi,
  };
}
