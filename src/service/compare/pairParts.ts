import type { VersionBar } from './versionBars';

export interface VersionPart {
  readonly name: string | undefined;
  readonly bars: readonly VersionBar[];
}

export interface PartPair {
  readonly from?: VersionPart;
  readonly to?: VersionPart;
  /** Whether it is the same part under another name. */
  readonly renamed: boolean;
}

type Parts = ReadonlyMap<string | undefined, readonly VersionBar[]>;

/** So much of the bars of the shorter part must stand in the other for it to count as renamed. An engineering value. */
const RENAMED = 0.5;

/**
 * Pairs parts by their names; of those that only one version has, the ones that share most of their bars were renamed.
 * In the order of the later version; what is gone comes last.
 */
export function pairParts(before: Parts, after: Parts): readonly PartPair[] {
  const gone = [...before].filter(([part]) => !after.has(part)).map(([name, bars]) => ({ name, bars }));
  const pairs = [...after].map(([part, bars]): PartPair => {
    const to = { name: part, bars };
    const own = before.get(part);
    if (own) return { from: { name: part, bars: own }, to, renamed: false };
    const at = mostAlike(bars, gone);
    const [from] = at < 0 ? [] : gone.splice(at, 1);
    return from ? { from, to, renamed: true } : { to, renamed: false };
  });
  return [...pairs, ...gone.map((from) => ({ from, renamed: false }))];
}

function mostAlike(bars: readonly VersionBar[], parts: readonly VersionPart[]): number {
  const shares = parts.map((part) => shareOf(bars, part.bars));
  const best = Math.max(...shares);
  return best >= RENAMED ? shares.indexOf(best) : -1;
}

/** The share of the shorter one's different bars with notes that stand in the other. */
function shareOf(one: readonly VersionBar[], other: readonly VersionBar[]): number {
  const keys = (bars: readonly VersionBar[]): Set<string> =>
    new Set(bars.filter(({ notes }) => notes.length > 0).map(({ key }) => key));
  const [a, b] = [keys(one), keys(other)];
  const least = Math.min(a.size, b.size);
  return least === 0 ? 0 : [...a].filter((key) => b.has(key)).length / least;
}
