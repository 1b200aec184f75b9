import type { TabDocument } from '../../notation/tabDocument';
import { alignBars, type BarPair } from './alignBars';
import type {
  CompareAnswer,
  CompareCounts,
  ComparedBar,
  ComparedChange,
  ComparedField,
} from './compareAnswer';
import { compareFields } from './compareFields';
import { barTitle, KIND_WORDS, summary, tellChange } from './compareWords';
import { matchNotes, type NoteMatch } from './matchNotes';
import { pairParts } from './pairParts';
import { barsByPart, type VersionBar } from './versionBars';

/**
 * What sets two versions of a piece apart, note by note. Parts are paired by their names, bars by what they hold, so
 * that a bar put in moves none of those behind it into the changes. What a note's neighbours make of its length is not
 * told: a note ends where the next one on its string begins.
 *
 * The same text twice gives no bars and no fields; each note of either version is counted once (`CompareCounts`).
 * @example compare(open('D4 |0-2-|'), open('D4 |0-3-|')).bars[0]?.changes[0]?.words
 * // 'beat 3: E4 on string 1, fret 2 before, now F4 on string 1, fret 3'
 */
export function compare(before: TabDocument, after: TabDocument): CompareAnswer {
  const counts = {
    before: 0,
    after: 0,
    same: 0,
    added: 0,
    lost: 0,
    retimed: 0,
    repitched: 0,
    elsewhere: 0,
    played: 0,
  };
  const bars: ComparedBar[] = [];
  const fields: ComparedField[] = [];
  const remarks: string[] = [];
  for (const { from, to, renamed } of pairParts(barsByPart(before), barsByPart(after))) {
    const part = (to ?? from)?.name;
    const several = before.parts.length + after.parts.length > 2;
    if (renamed) remarks.push(`The part ${name(from?.name)} is now called ${name(part)}.`);
    else if (several && !from && to?.bars.length) remarks.push(`The part ${name(part)} is new.`);
    else if (several && !to && from?.bars.length) remarks.push(`The part ${name(part)} is gone.`);
    const pairs = alignBars(from?.bars ?? [], to?.bars ?? []);
    const matches = matchNotes(pairs);
    count(counts, matches);
    bars.push(...barsOf(part, pairs, matches));
    fields.push(...compareFields(part, from?.bars[0]?.system.header, to?.bars[0]?.system.header));
  }
  return { counts, bars, fields, remarks: [summary(counts, fields), ...remarks] };
}

function name(part: string | undefined): string {
  return part === undefined || part === '' ? 'without a name' : part;
}

type Counts = { -readonly [Name in keyof CompareCounts]: number };

function count(counts: Counts, matches: readonly NoteMatch[]): void {
  for (const { kind, before, after } of matches) {
    counts[kind]++;
    if (before) counts.before++;
    if (after) counts.after++;
  }
}

const ORDER = KIND_WORDS.map(([kind]) => kind);

function barsOf(
  part: string | undefined,
  pairs: readonly BarPair[],
  matches: readonly NoteMatch[],
): readonly ComparedBar[] {
  const byPair = new Map<number, ComparedChange[]>();
  for (const match of matches) {
    const change = tellChange(match);
    if (!change) continue;
    const list = byPair.get(match.pair);
    if (list) list.push(change);
    else byPair.set(match.pair, [change]);
  }
  return pairs.flatMap(({ before, after }, pair): readonly ComparedBar[] => {
    const changes = byPair.get(pair) ?? [];
    if (changes.length === 0 && before && after && sameLength(before, after)) return [];
    return [
      {
        part: part ?? null,
        section: (after ?? before)?.system.section?.name ?? null,
        before: before?.number ?? null,
        after: after?.number ?? null,
        title: barTitle(before, after),
        changes: changes.sort((a, b) => ORDER.indexOf(a.kind) - ORDER.indexOf(b.kind)),
      },
    ];
  });
}

function sameLength(before: VersionBar, after: VersionBar): boolean {
  const [one, other] = [before, after].map(({ system, index }) => system.reading.bars[index]?.length);
  return one?.n === other?.n && one?.d === other?.d;
}
