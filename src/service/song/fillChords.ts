import type { System, TabDocument } from '../../notation/tabDocument';
import { editTo } from '../change/edits';
import { replaced } from '../change/rewrite';
import type { Settings } from '../records';
import type { ChangeResult } from '../serviceApi';
import { chordSystems } from './chordEvents';
import { chooseShapes, type PlayedChord } from './chooseShapes';
import { filledSystems } from './filledSystems';
import { fillRemarks } from './fillRemarks';
import type { FillRequest } from './songAnswer';
import { wishTrouble } from './wishTrouble';

/**
 * Writes string lines under rows that name chords: a shape where each name stands, chosen so that the hand moves least
 * over the whole passage. Systems that have tab stay as they are; a name without a shape is left empty and told.
 * @example fillChords(document, { range: undefined, strum: 'beats' }, DEFAULT_SETTINGS)
 */
export function fillChords(document: TabDocument, request: FillRequest, settings: Settings): ChangeResult {
  const trouble = wishTrouble(request);
  if (trouble !== undefined) return { error: trouble };
  const systems = chordSystems(document, request.range);
  if (systems.length === 0) return { error: NO_NAMES };
  const open = systems.filter(({ strings }) => strings === 'none' || strings === 'empty');
  const { played } = chooseShapes(open, { document, wishes: request, settings });
  const filled = filledSystems({
    document,
    systems: open.map(({ slice }) => slice.system),
    chordsOf: chordsBySystem(played),
    headerFor: ({ header }) => header,
    strum: request.strum ?? 'once',
    keeps: () => true,
    rewrite: (_system, _row, mark) => mark.text,
    joins: true,
    empty: false,
  });
  const replacements = open.flatMap(({ slice: { system } }) => {
    const block = filled.blocks.get(system);
    return block ? [{ system, blocks: [block] }] : [];
  });
  const edits = editTo(document, replaced(document, replacements).lines);
  const remarks = fillRemarks({ document, systems, open, played, filled });
  return { edits, report: { notesIn: 0, kept: 0, moved: 0, unplaced: [], remarks } };
}

/** Why nothing is written where no name of a chord stands. */
export const NO_NAMES =
  'No chords row stands here; write one, such as chords |G   D   |Em  C   |, and try again.';

/** The chords of each system, in order. */
export function chordsBySystem(played: readonly PlayedChord[]): (system: System) => readonly PlayedChord[] {
  const known = new Map<System, PlayedChord[]>();
  for (const chord of played) {
    const list = known.get(chord.system);
    if (list) list.push(chord);
    else known.set(chord.system, [chord]);
  }
  return (system) => known.get(system) ?? [];
}
