import type { FieldLine, RowLine } from '../../notation/parsedLine';
import type { TabDocument } from '../../notation/tabDocument';
import type { CompletionItem, Place, Settings } from '../records';
import { chordShapeItems } from './chordShapes';
import { emptySystemOffer } from './emptySystem';
import { fieldOffers } from './fieldNames';
import { valueOffers } from './fieldValues';
import { itemsOf, type Slot } from './item';
import { rowOffers, systemsAbout } from './rows';
import { sectionOffers } from './sections';

/**
 * What can be written at a place: fields, rows, headings and a whole system where a line begins, values behind a
 * field's colon, shapes at a chord's name. Whoever shows them filters them by what is written.
 */
export function completion(
  document: TabDocument,
  place: Place,
  settings: Settings,
): readonly CompletionItem[] {
  const line = document.line(place.line);
  if (line.kind === 'field' && place.character > line.nameEnd)
    return valueItems(document, place, line, settings);
  if (line.kind === 'row')
    return place.character <= line.wordEnd
      ? rowWordItems(document, place, line)
      : chordShapeItems(document, place, line, settings);
  if (line.kind === 'string' || line.kind === 'comment') return [];
  const indent = line.text.length - line.text.trimStart().length;
  if (line.text.trimStart().startsWith('[')) {
    const end = headingEnd(line.text, indent);
    if (place.character <= indent || place.character > end) return [];
    return itemsOf(sectionOffers(document, place.line), { line: place.line, start: indent, end }, 'value');
  }
  return lineStartItems(document, place, line.text);
}

/** Behind the bracket that closes a heading, or the line's end where none does. */
function headingEnd(text: string, start: number): number {
  const close = text.indexOf(']', start);
  return close < 0 ? text.length : close + 1;
}

function valueItems(
  document: TabDocument,
  place: Place,
  line: FieldLine,
  settings: Settings,
): readonly CompletionItem[] {
  const colon = line.text.indexOf(':', line.nameEnd);
  if (colon < 0 || place.character <= colon) return [];
  const header = document.headerAt(place.line);
  const empty = line.value === '';
  const start = empty ? place.character : Math.min(place.character, line.valueStart);
  const end = Math.max(place.character, empty ? 0 : line.valueStart + line.value.length);
  const gap = start === colon + 1 ? ' ' : '';
  const offers = valueOffers(line.field, { document, header, line: place.line, settings });
  return itemsOf(
    offers.map((offer) => ({ ...offer, text: gap + (offer.text ?? offer.label) })),
    { line: place.line, start, end },
    'value',
  );
}

function rowWordItems(document: TabDocument, place: Place, line: RowLine): readonly CompletionItem[] {
  const slot = { line: place.line, start: line.wordStart, end: line.bodyStart };
  if (place.character < slot.start) return [];
  return itemsOf(rowOffers(systemsAbout(document, place.line), true), slot, 'row');
}

/** One or two words, as the names of fields and rows have, and nothing but a colon behind them. */
const NAME_SO_FAR = /^(\s*)((?:\p{L}+(?: \p{L}*)?)?)(\s*:.*|\s*)$/su;

function lineStartItems(document: TabDocument, place: Place, text: string): readonly CompletionItem[] {
  const [, indent = '', name = '', rest = ''] = NAME_SO_FAR.exec(text) ?? [];
  const isName = NAME_SO_FAR.test(text);
  if (!isName || place.character > indent.length + name.length) {
    // Behind the last letter only spaces may stand, as on a blank line.
    if (!isName || name !== '' || rest.includes(':')) return [];
  }
  const start = name === '' ? Math.min(indent.length, place.character) : indent.length;
  if (place.character < start) return [];
  const slot: Slot = { line: place.line, start, end: name === '' ? text.length : start + name.length };
  const bare = rest.trimStart().startsWith(':');
  const systems = bare ? [] : systemsAbout(document, place.line);
  const inside = document.systemAt(place.line - 1) && document.systemAt(place.line + 1);
  const rows = itemsOf(rowOffers(systems, false), slot, 'row', 0);
  if (inside) return rows;
  const fields = itemsOf(fieldOffers(bare), slot, 'field', 1);
  if (text.trim() !== '' || systems.length > 0) return [...rows, ...fields];
  const header = document.headerAt(place.line);
  return [
    ...rows,
    ...fields,
    ...itemsOf(sectionOffers(document, place.line), slot, 'value', 2),
    ...itemsOf([emptySystemOffer(header)], slot, 'system', 3),
  ];
}
