import assert from 'node:assert/strict';
import fc from 'fast-check';
import { Document } from '../../../../src/notation/document';
import type { Range } from '../../../../src/notation/tabDocument';
import { slicesIn, type Slice } from '../../../../src/service/change/slices';
import type { Change, ChangeResult, Variant } from '../../../../src/service/serviceApi';
import { heard, type Heard } from '../change/heard';
import { randomChords } from './randomChords';
import { randomSelection, randomSong } from '../change/randomSong';

const RUNS = Number(process.env['HAND_RUNS'] ?? 25);

/** Runs a law on random documents with a random passage that has notes. */
export function onRandomPassages(
  law: (text: string, range: Range | undefined, choice: number) => void,
  runs = RUNS,
): void {
  fc.assert(
    fc.property(randomSong, randomSelection, fc.nat(1000), (text, selection, choice) => {
      const document = new Document(text);
      const range = rangeOf(document, selection);
      if (passage(document, range).length === 0) return;
      law(text, range, choice);
    }),
    { numRuns: runs },
  );
}

/** Runs a law on random chords, the whole of them. */
export function onRandomChords(law: (text: string, choice: number) => void, runs = RUNS): void {
  fc.assert(
    fc.property(randomChords, fc.nat(1000), (text, choice) => {
      if (new Document(text).systems.some(({ reading }) => reading.notes.length > 0)) law(text, choice);
    }),
    { numRuns: runs },
  );
}

type Selection = typeof randomSelection extends fc.Arbitrary<infer T> ? T : never;

function rangeOf(document: Document, selection: Selection): Range | undefined {
  if (!selection) return undefined;
  const line = (share: number): number => Math.floor((share * document.lineCount) / 1000);
  const [start, end] = [
    { line: line(selection.from), character: selection.fromCharacter },
    { line: line(selection.to), character: selection.toCharacter },
  ].sort((a, b) => a.line - b.line || a.character - b.character);
  assert.ok(start && end);
  return { start, end };
}

/** The slices of a passage that have string lines. */
export function passage(document: Document, range: Range | undefined): Slice[] {
  return slicesIn(document, range).filter(({ system }) => system.lines.some(({ kind }) => kind === 'string'));
}

/** The text after a way is taken. */
export function taken(text: string, { edits }: Variant): Document {
  const document = new Document(text);
  document.edit(edits);
  return new Document(document.text());
}

/** A change, or undefined where it was refused with one sentence. */
export function changeOrRefusal(result: ChangeResult): Change | undefined {
  if (!('error' in result)) return result;
  assert.match(result.error, /^[A-Z“][^\n]*[.?]$/);
  return undefined;
}

export interface Told {
  readonly before: readonly Heard[];
  readonly after: readonly Heard[];
  readonly told: string;
}

/**
 * The law of every change: notes in are kept, moved or unplaced; what is kept sounds as it did, what stands outside
 * stands as it did, and as many notes are gone as are named.
 */
export function nothingIsLost(text: string, range: Range | undefined, change: Variant): Told {
  const document = new Document(text);
  const next = taken(text, change);
  const { report } = change;
  const all = heard(document, slicesIn(document, range)).map(onceACourse);
  const before = all.filter((note) => note.inside);
  const after = heard(next, []).map(onceACourse);
  const told = `${text}\n---\n${next.text()}\n${JSON.stringify(report, null, 1)}`;
  assert.equal(report.notesIn, before.length, told);
  assert.equal(report.notesIn, report.kept + report.moved + report.unplaced.length, told);
  assert.equal(after.length, all.length - report.unplaced.length, told);
  const outside = all.filter((note) => !note.inside).map(whole);
  const rest = without(after, whole, outside);
  assert.equal(rest.length, after.length - outside.length, told);
  const same =
    before.length -
    without(
      before,
      (note) => note.sound,
      rest.map((note) => note.sound),
    ).length;
  assert.ok(same >= report.kept, told);
  return { before, after: rest, told };
}

/** A double course counts once, by its first string. */
function onceACourse(note: Heard): Heard {
  return { ...note, sound: note.sound.replace(/\+[\d.]+/g, '') };
}

function whole({ sound, place }: Heard): string {
  return `${sound} at ${place}`;
}

/** The notes whose key is not in a list, each as often as it is there more. */
export function without(
  notes: readonly Heard[],
  key: (note: Heard) => string,
  those: readonly string[],
): readonly Heard[] {
  const count = new Map<string, number>();
  for (const one of those) count.set(one, (count.get(one) ?? 0) + 1);
  return notes.filter((note) => {
    const left = count.get(key(note)) ?? 0;
    count.set(key(note), left - 1);
    return left <= 0;
  });
}
