import type { TabDocument } from '../../../notation/tabDocument';
import type { Place, Settings } from '../../records';
import type { ServiceError } from '../../serviceApi';
import { shapes } from '../../shapes/shapes';
import type { HandoutAnswer, SheetRequest } from '../sheetAnswer';
import { tuningSheet } from '../tuningSheet';
import { everydayChords } from './everydayChords';
import { handoutContent, type HandoutShape } from './handoutContent';
import { handoutSvg } from './handoutSvg';
import { handoutText } from './handoutText';

/**
 * The tuning sheet on one page, as a picture to print and as text: strings, retuning with cautions, straight barres,
 * the frets of the scale, and the easiest shape of six everyday chords. Errors are those of `tuningSheet`.
 * @example tuningHandout(document, place, {}, settings).text
 */
export function tuningHandout(
  document: TabDocument,
  place: Place,
  request: SheetRequest,
  settings: Settings,
): HandoutAnswer | ServiceError {
  const sheet = tuningSheet(document, place, request, settings);
  if ('error' in sheet) return sheet;
  const { key, written, chords } = everydayChords(document.headerAt(place.line));
  const content = handoutContent(sheet, {
    heading: written ? `Six shapes in ${key}` : `Six shapes in ${key}, the key of the open strings`,
    shapes: chords.map((chord) => easiestShape(document, place, chord, settings)),
  });
  return {
    title: content.title,
    fileName: fileNameOf(content.title),
    svg: handoutSvg(content),
    text: handoutText(content),
  };
}

/** The first of the shapes that the finder gives; it ranks the easiest first. */
function easiestShape(document: TabDocument, place: Place, chord: string, settings: Settings): HandoutShape {
  const found = shapes(document, place, { chord, limit: 1 }, settings);
  const [shape] = 'error' in found ? [] : found.shapes;
  return shape ? { chord, text: shape.text, svg: shape.svg } : { chord, text: 'no shape', svg: undefined };
}

/** Letters, digits and hyphens, so that any system takes it. */
function fileNameOf(title: string): string {
  return title
    .replaceAll('#', ' sharp ')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
}
