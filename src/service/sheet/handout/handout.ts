import type { TabDocument } from '../../../notation/tabDocument';
import type { Place, Settings } from '../../records';
import type { ServiceError } from '../../serviceApi';
import type { HandoutAnswer, SheetRequest } from '../sheetAnswer';
import { tuningSheet } from '../tuningSheet';
import { handoutContent } from './handoutContent';
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
  const content = handoutContent(sheet, { heading: '', shapes: [] });
  return {
    title: content.title,
    fileName: fileNameOf(content.title),
    svg: handoutSvg(content),
    text: handoutText(content),
  };
}

/** Letters, digits and hyphens, so that any system takes it. */
function fileNameOf(title: string): string {
  return title
    .replaceAll('#', ' sharp ')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
}
