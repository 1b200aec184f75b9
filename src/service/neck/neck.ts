import { MOST_FRETS } from '../../instrument/frets';
import type { TabDocument } from '../../notation/tabDocument';
import type { Place, Settings } from '../records';
import type { ServiceError } from '../serviceApi';
import type { NeckAnswer, NeckPictureAnswer, NeckPictureRequest, NeckRequest } from './neckAnswer';
import { boardId, neckBoard } from './neckBoard';
import { neckMoment } from './neckMoment';
import { neckPicture } from './neckPicture';

/**
 * The neck of the fields in force at a place: every place that can be played, by note, degree and interval, and what of
 * it sounds in the column there. One sentence where the scale or chord asked for cannot be read.
 * @example neck(document, { line: 2, character: 4 }, { scale: 'D dorian' }, DEFAULT_SETTINGS)
 */
export function neck(
  document: TabDocument,
  place: Place,
  request: NeckRequest,
  _settings: Settings,
): NeckAnswer | ServiceError {
  const { frets } = request;
  if (frets !== undefined && !(Number.isInteger(frets) && frets >= 1 && frets <= MOST_FRETS))
    return { error: `How many frets are shown is a whole number from 1 to ${MOST_FRETS}, such as 12.` };
  const header = document.systemAt(place.line)?.header ?? document.headerAt(place.line);
  const moment = neckMoment(document, place);
  if (request.known === boardId(header, request)) return { moment };
  const board = neckBoard(header, request);
  return 'error' in board ? board : { board, moment };
}

/**
 * The same as a picture to print: an SVG document of its own.
 * @example neckSvg(document, place, { chord: 'Am7', labels: 'intervals' }, DEFAULT_SETTINGS)
 */
export function neckSvg(
  document: TabDocument,
  place: Place,
  request: NeckPictureRequest,
  settings: Settings,
): NeckPictureAnswer | ServiceError {
  const { scale, chord, frets, ...look } = request;
  const asked = {
    ...(scale === undefined ? {} : { scale }),
    ...(chord === undefined ? {} : { chord }),
    ...(frets === undefined ? {} : { frets }),
  };
  const answer = neck(document, place, asked, settings);
  if ('error' in answer) return answer;
  const { board, moment } = answer;
  // Nothing was said to be known, so the board is there.
  return board
    ? { svg: neckPicture({ ...look, board, moment }) }
    : { error: 'There is no neck to draw here.' };
}
