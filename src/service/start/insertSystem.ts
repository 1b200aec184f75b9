import { formatTuningNotes } from '../../instrument/tuningFormat';
import type { TabDocument } from '../../notation/tabDocument';
import type { Place } from '../records';
import type { ChangeResult } from '../serviceApi';
import { assembled } from '../write/assemble';
import { newBarsNear } from '../write/newBarsPlace';
import { prefixesAt } from '../write/newSystems';
import { emptySystem } from './emptySystem';
import { layoutOf } from './layout';
import type { LayoutRequest } from './startAnswer';

/**
 * An empty system for the tuning in force at a place: behind the system there, else on the blank line or behind the
 * paragraph, with labels as the part has them.
 */
export function insertSystem(document: TabDocument, place: Place, request: LayoutRequest): ChangeResult {
  const { canvas, at } = newBarsNear(document, place);
  const { header } = canvas;
  const layout = layoutOf(request, header.meter);
  if ('error' in layout) return layout;
  const line = 'line' in at ? at.line : place.line;
  const { lines, cell } = emptySystem(header, layout, prefixesAt(document, header, line));
  const { edits, lineOf } = assembled(document, new Map(), { at: line, paragraphs: [lines] });
  const { length } = header.tuning.strings;
  const remark = `${counted(layout.bars, 'bar')} for ${counted(length, 'string')}, ${formatTuningNotes(header.tuning)}.`;
  return {
    edits,
    report: { notesIn: 0, kept: 0, moved: 0, unplaced: [], remarks: [remark] },
    goesOn: { line: lineOf(lines) + cell.line, character: cell.character },
  };
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
