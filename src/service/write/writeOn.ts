import { add, compare, subtract, ZERO, type Fraction } from '../../music/fraction';
import type { Place, System, TabDocument, TextEdit } from '../../notation/tabDocument';
import { cannotBeWritten } from '../change/change';
import { withOmitted, type OmittedNote } from '../change/omitted';
import type { ServiceError } from '../serviceApi';
import { assembled, type Assembled } from './assemble';
import type { Canvas } from './canvas';
import { goesOn, type LastWritten } from './goesOn';
import { groundsOf } from './grounds';
import { layIn, type Put } from './layIn';
import type { NewBarsPlace } from './newBarsPlace';
import { newSystems, NO_PICKUP, prefixesAt } from './newSystems';
import { within } from './within';

/** What else is written. */
export interface Finish {
  /** Notes without a place, which a row names where they would stand; times are those of the canvas. */
  readonly omitted?: readonly OmittedNote[];
  /** A line above the first. */
  readonly heading?: string;
  /** The lines of a new system with what is to stand about them; asked for one system after the other. */
  readonly system?: (lines: readonly string[]) => readonly string[];
}

/** What was written. */
export interface Written {
  readonly edits: readonly TextEdit[];
  /** Where a player writes on, in the text after the edits. */
  readonly goesOn: Place;
}

/**
 * Writes signs on a canvas: into the bars that are there, and into new ones behind them.
 * @param puts at least one
 * @param end until when bars are needed
 */
export function writeOn(
  document: TabDocument,
  canvas: Canvas,
  puts: readonly Put[],
  end: Fraction,
  at: NewBarsPlace,
  finish: Finish = {},
): Written | ServiceError {
  const { header } = canvas;
  const { omitted = [] } = finish;
  const replaced = new Map<System, readonly (readonly string[])[]>();
  const string = puts.at(-1)?.string ?? 1;
  let last: LastWritten | undefined;
  for (const { system, start } of canvas.stretches) {
    const to = add(start, system.reading.length);
    const own = within(puts, start, to);
    const left = within(omitted, start, to);
    if (own.length === 0 && left.length === 0) continue;
    const laying = { header, position: system, bars: system.reading.bars, puts: own, before: system.reading };
    const laid = layIn(laying, groundsOf(system, own));
    if (!laid) return { error: cannotBeWritten(document.placeOf(system).firstBar) };
    const lines = withOmitted(laid, left, header, system);
    replaced.set(system, [lines]);
    last = { lines, header, position: system, end: subtract(end, start), string };
  }
  if (compare(end, canvas.end) <= 0) return done(assembled(document, replaced, undefined), last);
  const line = 'line' in at ? at.line : at.system.firstLine + 1;
  const trouble = pickupTrouble(document, canvas, line);
  if (trouble) return trouble;
  const systems = newSystems({
    header,
    prefixes: prefixesAt(document, header, line),
    puts: within(puts, canvas.end, end),
    omitted: within(omitted, canvas.end, end),
    end: subtract(end, canvas.end),
  });
  if (!systems)
    return { error: 'These lengths cannot be written in columns; write them with plainer lengths.' };
  const [first = [], ...others] = systems.map(({ lines }) => finish.system?.(lines) ?? lines);
  const paragraphs = [finish.heading === undefined ? first : [finish.heading, ...first], ...others];
  const begin = systems.at(-1)?.start ?? ZERO;
  const left = subtract(subtract(end, canvas.end), begin);
  last = { lines: paragraphs.at(-1) ?? [], header, position: NO_PICKUP, end: left, string };
  if ('line' in at) return done(assembled(document, replaced, { at: at.line, paragraphs }), last);
  replaced.set(at.system, [at.before, ...paragraphs, at.after]);
  return done(assembled(document, replaced, undefined), last);
}

function done({ edits, lineOf }: Assembled, last: LastWritten | undefined): Written {
  return { edits, goesOn: last ? goesOn(last, lineOf(last.lines)) : { line: 0, character: 0 } };
}

/** A pickup is one at the start of a part or section only: bars put in before it would change what it says. */
function pickupTrouble(document: TabDocument, { header }: Canvas, line: number): ServiceError | undefined {
  const next = document.systems.find(
    (system) => system.firstLine >= line && system.header.part === header.part,
  );
  if (!next || !(next.firstInPart || next.firstInSection) || next.reading.bars[0]?.pickup !== true)
    return undefined;
  if (document.sections.some((section) => section.line >= line && section.line < next.firstLine))
    return undefined;
  return {
    error:
      'The system below begins with a pickup, which is one only where a part or section begins; put the cursor behind that system.',
  };
}
