import type { Place, System, TabDocument } from '../../notation/tabDocument';
import type { Passage } from '../serviceApi';
import { rangeOfSystems } from './passages';

/**
 * The section of `there` that answers to the one at a place of `document`, where one text came of the other by a
 * change: sections are counted, since a change may split a system but makes and takes no heading. Without headings it
 * is the part at that place, else the file. Undefined where there is no tab.
 *
 * @example counterpart(after, { line: 12, character: 0 }, before)?.title // 'Verse'
 */
export function counterpart(document: TabDocument, place: Place, there: TabDocument): Passage | undefined {
  const at = systemAt(document.systems, place);
  if (!at) return undefined;
  const { section } = at;
  const { part } = at.header;
  if (section || document.systems.some((system) => system.section))
    return passageOf('section', section?.name ?? 'Before the first section', sectionOf(document, at, there));
  if (document.parts.length > 1 && part !== undefined) {
    const own = there.systems.filter((system) => system.header.part === part);
    return passageOf('part', `Part ${part}`, own);
  }
  return passageOf('file', 'The whole file', there.systems);
}

/** The system that a line stands in, else the next one below, else the last. */
function systemAt(systems: readonly System[], { line }: Place): System | undefined {
  return systems.find(({ firstLine, lines }) => line < firstLine + lines.length) ?? systems.at(-1);
}

function sectionOf(document: TabDocument, at: System, there: TabDocument): readonly System[] {
  const number = numbered(document.systems).get(at) ?? 0;
  const numbers = numbered(there.systems);
  return there.systems.filter((system) => numbers.get(system) === number);
}

/** Systems above the first heading are 0, those below it 1, and so on; two sections may have one name. */
function numbered(systems: readonly System[]): ReadonlyMap<System, number> {
  const numbers = new Map<System, number>();
  let section: System['section'];
  let number = 0;
  for (const system of systems) {
    if (system.section !== section) number += 1;
    section = system.section;
    numbers.set(system, number);
  }
  return numbers;
}

function passageOf(kind: Passage['kind'], title: string, systems: readonly System[]): Passage | undefined {
  return systems.length === 0 ? undefined : { kind, title, range: rangeOfSystems(systems) };
}
