import type { TabDocument } from '../../notation/tabDocument';
import type { Settings } from '../records';
import type { ChangeResult, ConvertRequest, Report } from '../serviceApi';
import { NOTHING_THERE, wideningCuts, type Attempt } from './change';
import { goalOf, type Goal } from './convertGoal';
import { convertShapes } from './convertShapes';
import { soundWays, writeWay } from './convertSound';
import { wayTitle } from './handMeasures';
import { offersFor } from './offers';
import { hasStrings, slicesIn, type Slice } from './slices';
import type { Way } from './ways';

/** Carries a passage to another tuning, instrument or key: its sound, its shapes, or its function. */
export function convert(document: TabDocument, request: ConvertRequest, settings: Settings): ChangeResult {
  const slices = slicesIn(document, request.range);
  if (!slices.some(hasStrings)) return { error: NOTHING_THERE };
  const goal = goalOf(slices, request, settings);
  if ('error' in goal) return goal;
  if (request.keep === 'shapes')
    return wideningCuts(document, slices, (wider) => convertShapes(document, wider, goal, settings));
  return convertSound(document, slices, goal, request, settings);
}

const NOT_ENOUGH =
  'Leaving out doubled inner notes alone does not make the passage fit; leave out what has no place, or move the passage.';

function convertSound(
  document: TabDocument,
  slices: readonly Slice[],
  goal: Goal,
  request: ConvertRequest,
  settings: Settings,
): ChangeResult {
  // Cuts that cannot be written widen the passage; each width is worked out once.
  const known = new Map<readonly Slice[], readonly Way[]>();
  const waysFor = (wider: readonly Slice[]): readonly Way[] => {
    const ways = known.get(wider) ?? soundWays(document, wider, goal, request, settings) ?? [];
    known.set(wider, ways);
    return ways;
  };
  const write = (wider: readonly Slice[], which: number): Attempt => {
    const way = waysFor(wider)[which];
    return way ? writeWay(document, wider, goal, request, way, settings) : { error: NOT_ENOUGH };
  };
  const best = wideningCuts(document, slices, (wider) => write(wider, 0));
  if ('error' in best) return best;
  const few = tooFewStrings(slices, goal, best.report);
  if (few) return { error: few };
  const ways = waysFor(slices);
  const [first, ...others] = ways;
  if (!first) return best;
  const alternatives = others.flatMap((way, i) => {
    const variant = wideningCuts(document, slices, (wider) => write(wider, i + 1));
    return 'error' in variant ? [] : [{ ...variant, title: wayTitle(way, first) }];
  });
  const offers = offersFor(document, slices, goal, request, first, settings);
  return {
    ...best,
    report: { ...best.report, ...(offers.length > 0 && { offers }) },
    ...(alternatives.length > 0 && { alternatives }),
  };
}

/** Why nothing is changed where a tuning of fewer strings has no place for a single note. */
function tooFewStrings(
  slices: readonly Slice[],
  { headerFor, name }: Goal,
  { notesIn, unplaced }: Report,
): string | undefined {
  if (notesIn === 0 || unplaced.length < notesIn) return undefined;
  const fewer = slices
    .map(({ system }) => [system.header.tuning, headerFor(system.header).tuning] as const)
    .find(([before, after]) => after.strings.length < before.strings.length);
  if (!fewer) return undefined;
  const count = fewer[1].strings.length;
  return `No note of the passage has a place in ${name}, which has ${count} ${count === 1 ? 'string' : 'strings'}; choose a tuning with more strings, or one that lies nearer to the notes.`;
}
