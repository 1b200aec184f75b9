import { add, compare, subtract, type Fraction } from '../../music/fraction';
import type { System, TabDocument, TextEdit } from '../../notation/tabDocument';
import { cannotBeWritten } from '../change/change';
import { withOmitted, type OmittedNote } from '../change/omitted';
import type { ServiceError } from '../serviceApi';
import { assembled } from './assemble';
import type { Canvas } from './canvas';
import { groundsOf } from './grounds';
import { layIn, type Put } from './layIn';
import type { NewBarsPlace } from './newBarsPlace';
import { newSystems, prefixesAt } from './newSystems';
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

/**
 * Writes signs on a canvas: into the bars that are there, and into new ones behind them.
 * @param end until when bars are needed
 */
export function writeOn(
  document: TabDocument,
  canvas: Canvas,
  puts: readonly Put[],
  end: Fraction,
  at: NewBarsPlace,
  finish: Finish = {},
): TextEdit[] | ServiceError {
  const { header } = canvas;
  const replaced = new Map<System, readonly (readonly string[])[]>();
  for (const { system, start } of canvas.stretches) {
    const own = within(puts, start, add(start, system.reading.length));
    if (own.length === 0) continue;
    const laying = { header, position: system, bars: system.reading.bars, puts: own, before: system.reading };
    const lines = layIn(laying, groundsOf(system, own));
    if (!lines) return { error: cannotBeWritten(document.placeOf(system).firstBar) };
    const left = within(finish.omitted ?? [], start, add(start, system.reading.length));
    replaced.set(system, [withOmitted(lines, left, header, system)]);
  }
  if (compare(end, canvas.end) <= 0) return assembled(document, replaced, undefined);
  const line = 'line' in at ? at.line : at.system.firstLine + 1;
  const trouble = pickupTrouble(document, canvas, line);
  if (trouble) return trouble;
  const systems = newSystems({
    header,
    prefixes: prefixesAt(document, header, line),
    puts: within(puts, canvas.end, end),
    omitted: within(finish.omitted ?? [], canvas.end, end),
    end: subtract(end, canvas.end),
  });
  if (!systems)
    return { error: 'These lengths cannot be written in columns; write them with plainer lengths.' };
  const [first = [], ...others] = systems.map((lines) => finish.system?.(lines) ?? lines);
  const paragraphs = [finish.heading === undefined ? first : [finish.heading, ...first], ...others];
  if ('line' in at) return assembled(document, replaced, { at: at.line, paragraphs });
  replaced.set(at.system, [at.before, ...paragraphs, at.after]);
  return assembled(document, replaced, undefined);
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
