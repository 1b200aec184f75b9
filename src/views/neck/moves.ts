import type { NeckBoard } from '../../service/neck/neckAnswer';
import type { NeckLayout } from './layout';
import type { At } from './remembered';

/** Where a key leads from a place of the grid; undefined for a key that is none of the grid's. */
export function moved(board: NeckBoard, layout: NeckLayout, at: At, event: KeyboardEvent): At | undefined {
  const { upright, leftHanded } = layout;
  const whole = event.ctrlKey || event.metaKey;
  switch (event.key) {
    case 'ArrowDown':
      return upright ? along(board, at, 1) : across(board, at, 1);
    case 'ArrowUp':
      return upright ? along(board, at, -1) : across(board, at, -1);
    case 'ArrowRight':
      return upright ? across(board, at, leftHanded ? 1 : -1) : along(board, at, leftHanded ? -1 : 1);
    case 'ArrowLeft':
      return upright ? across(board, at, leftHanded ? -1 : 1) : along(board, at, leftHanded ? 1 : -1);
    case 'Home':
      return whole ? end(board, 1, 0) : end(board, at.string, 0);
    case 'End':
      return whole ? end(board, board.strings.length, -1) : end(board, at.string, -1);
    default:
      return undefined;
  }
}

/** Up or down a string; at its end it stays. */
function along(board: NeckBoard, at: At, step: number): At {
  const places = board.strings[at.string - 1]?.places ?? [];
  const next = places[places.findIndex(({ fret }) => fret === at.fret) + step];
  return next ? { string: at.string, fret: next.fret } : at;
}

/** To another string, as near along the neck as it can be. */
function across(board: NeckBoard, at: At, step: number): At {
  const cell = board.strings[at.string - 1]?.places.find(({ fret }) => fret === at.fret)?.cell ?? board.first;
  const string = board.strings[at.string - 1 + step];
  const [first, ...others] = string?.places ?? [];
  if (!string || !first) return at;
  const nearest = others.reduce(
    (best, one) => (Math.abs(one.cell - cell) < Math.abs(best.cell - cell) ? one : best),
    first,
  );
  return { string: string.number, fret: nearest.fret };
}

function end(board: NeckBoard, string: number, at: number): At | undefined {
  const fret = board.strings[string - 1]?.places.at(at)?.fret;
  return fret === undefined ? undefined : { string, fret };
}
